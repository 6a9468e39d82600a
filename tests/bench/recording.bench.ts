// 10 s at 240 a second and 50 markers: read, mapped, posed, its flight found and flown, as `shapeflight fit` does before it fits.
import { bench, describe } from 'vitest';
import type { HumanAthlete } from '../../sim/files/athlete-schema.ts';
import { prepareRecording, studyOf } from '../../sim/fit/study.ts';
import { athleteOfReady, drain, film, flyReady, MARKERS, trcOf } from '../recording/filmed.ts';

const RATE = 240;
const ROWS = 10 * RATE;

const athlete = athleteOfReady('back-straight-full') as HumanAthlete;
const more = ['LGTR', 'RGTR', 'SACR'];
const { frames, points } = film(flyReady('back-straight-full'), {
  rateHz: RATE,
  noise: 0.001,
  off: 0.008,
  seed: 7,
  names: [...MARKERS, ...more].slice(0, 50),
});
// the flight between two stretches of standing still, as long as it takes
const before = Math.floor((ROWS - frames.n) / 2);
const times = Float64Array.from({ length: ROWS }, (_, i) => i / RATE);
const held = points.map(({ name, p }) => ({
  name,
  p: Float64Array.from({ length: 3 * ROWS }, (_, i) => {
    const row = Math.min(frames.n - 1, Math.max(0, Math.floor(i / 3) - before));
    return p[3 * row + (i % 3)];
  }),
}));
const bytes = trcOf(held, times, RATE);

describe('a recording of 10 s at 240 Hz and 50 markers', () => {
  bench(
    'read, posed, its flight found, smoothed and flown',
    () => {
      const prepared = drain(
        prepareRecording({ name: 'ten.trc', bytes }, athlete, { smoothing: { kind: 'gcv' }, longestGap: 0.1 }),
      );
      studyOf('ten.trc', prepared);
    },
    { iterations: 3, warmupIterations: 1, time: 0, warmupTime: 0 },
  );
});
