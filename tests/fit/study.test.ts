// A recording from its file to the test of the model: our own flights, written, read and set beside themselves.
import { expect, test } from 'vitest';
import type { HumanAthlete } from '../../sim/files/athlete-schema.ts';
import { studyRecording } from '../../sim/fit/study.ts';
import { RAD, REV } from '../../sim/math/angles.ts';
import { posedOfFlight } from '../../sim/recording/posed-flight.ts';
import { formatBvh } from '../../sim/recording/write-bvh.ts';
import { athleteOfReady, drain, evenTimes, film, flyReady, trcOf } from '../recording/filmed.ts';

const OPTIONS = { smoothing: { kind: 'gcv' }, longestGap: 0.1 } as const;
const bytes = (pieces: Iterable<string>): Uint8Array => new TextEncoder().encode([...pieces].join(''));

const flight = flyReady('back-straight-full');
const athlete = athleteOfReady('back-straight-full') as HumanAthlete;

test('a flight written as BVH is a flight again, with its g, its momentum and its twist', () => {
  const posed = posedOfFlight(flight, evenTimes(0, flight.duration, 240));
  const study = drain(studyRecording({ name: 'full.bvh', bytes: bytes(formatBvh(posed)) }, athlete, OPTIONS));
  expect(study.quality?.refusals).toEqual([]);
  // measured: 1e-7
  expect(Math.abs((study.quality?.g ?? 0) - 9.81)).toBeLessThan(1e-4);
  // measured: 6e-7 rev, of the twist
  for (const off of study.test?.worst ?? [1]) expect(off).toBeLessThan(1e-4 * REV);
  const h = Math.hypot(...flight.h_Scm_W);
  expect(Math.abs((study.momentum[100] ?? 0) / h - 1)).toBeLessThan(1e-4);
  // counted as our conventions have it, whatever the axes of the file
  const twist = study.test?.measured.twist ?? [];
  expect(Math.abs(twist[twist.length - 1] - twist[0]) / REV).toBeCloseTo(1, 1);
});

test('markers with 3 mm of noise, 8 mm off their places: under the best published', () => {
  const { frames, points } = film(flight, { rateHz: 120, noise: 0.003, off: 0.008, seed: 3 });
  const study = drain(studyRecording({ name: 'full.trc', bytes: trcOf(points, frames.t, 120) }, athlete, OPTIONS));
  expect(study.quality?.refusals).toEqual([]);
  const [somersault, tilt, twist] = study.test?.worst ?? [9, 9, 9];
  // measured: 0.004 rev, 1.6 deg, 0.03 rev
  expect(somersault).toBeLessThan(0.02 * REV);
  expect(tilt).toBeLessThan(4 * RAD);
  expect(twist).toBeLessThan(0.08 * REV);
});

test('a recording played 1.3 times as fast is no test: its g says so, and nothing is flown', () => {
  const times = evenTimes(0, flight.duration, 120);
  const posed = posedOfFlight(flight, times);
  const fast = { ...posed, t: times.map((t) => t / 1.3), rateHz: 156 };
  const study = drain(studyRecording({ name: 'fast.bvh', bytes: bytes(formatBvh(fast)) }, athlete, OPTIONS));
  expect(study.quality?.refusals.map((r) => r.reason)).toEqual(['gravity']);
  expect(study.quality?.g).toBeCloseTo(9.81 * 1.69, 2);
  expect(study.test).toBeUndefined();
});
