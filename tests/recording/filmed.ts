/** A ready skill as a camera system would have it: markers stuck on its body, a little off their usual places, seen with noise. Truth known. */
import { athletes, shapes, skills } from '../../presets/index.ts';
import {
  type Athlete,
  buildSkill,
  calcSegmentFrames,
  checkSkillFile,
  type Flight,
  flySkill,
  launch,
  parseSkill,
} from '../../sim/index.ts';
import { normalQuantile } from '../../sim/math/normal.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import { applyInto, matOfQuatInto } from '../../sim/math/rot.ts';
import type { SegmentFrames } from '../../sim/measure/segment-frames.ts';
import { placeOfMarker } from '../../sim/recording/marker-places.ts';
import type { RecordedPoint } from '../../sim/recording/recording.ts';

const FULL_SET =
  'LFHD RFHD LBHD RBHD C7 T10 CLAV STRN RBAK LSHO LUPA LELB LELM LFRM LWRA LWRB LFIN RSHO RUPA RELB RELM RFRM RWRA RWRB RFIN LASI RASI LPSI RPSI LTHI LKNE LKNM LTIB LANK LANM LHEE LTOE RTHI RKNE RKNM RTIB RANK RANM RHEE RTOE LMT5 RMT5';
export const MARKERS = FULL_SET.split(' ');

export function athleteOfReady(id: keyof typeof skills): Athlete {
  const { athlete } = checkSkillFile(skills[id]);
  return 'ref' in athlete ? athletes[athlete.ref] : athlete;
}

export const flyReady = (id: keyof typeof skills): Flight =>
  flySkill(launch(buildSkill(parseSkill(checkSkillFile(skills[id]), { athletes, shapes }))));

export function evenTimes(from: number, to: number, rateHz: number): Float64Array {
  return Float64Array.from({ length: Math.floor((to - from) * rateHz + 1e-9) + 1 }, (_, i) => from + i / rateHz);
}

/** Numbers of mean 0 and deviation 1. */
export function normals(seed: number, index: number, n: number): Float64Array {
  const u = new Float64Array(n);
  uniformsInto(seed, index, u);
  return u.map(normalQuantile);
}

interface Film {
  readonly rateHz: number;
  /** m, of every coordinate of every row */
  readonly noise: number;
  /** m, of every marker's place on its segment, constant */
  readonly off: number;
  readonly seed: number;
  readonly names?: readonly string[];
}

export interface Filmed {
  readonly frames: SegmentFrames;
  readonly points: readonly RecordedPoint[];
}

/** Markers in W, m. */
export function film(flight: Flight, { rateHz, noise, off, seed, names = MARKERS }: Film): Filmed {
  const { body } = flight;
  const frames = calcSegmentFrames(flight, evenTimes(0, flight.duration, rateHz));
  const ns = body.segments.length;
  const R = new Float64Array(9);
  const points = names.map((name, m) => {
    const place = placeOfMarker(name, body);
    if (!place) throw new Error(`no place of ${name}`);
    const s = body.segments.findIndex((g) => g.name === place.segment);
    const shift = normals(seed, 100000 + m, 3);
    const at = place.at_B.map((v, k) => v + off * shift[k]);
    const p = new Float64Array(3 * frames.n);
    const e = normals(seed, m, 3 * frames.n);
    for (let i = 0; i < frames.n; i++) {
      matOfQuatInto(frames.quat_WB, 4 * (ns * i + s), R, 0);
      applyInto(R, 0, at, 0, p, 3 * i);
      for (let k = 0; k < 3; k++) p[3 * i + k] += frames.p_WBo_W[3 * (ns * i + s) + k] + noise * e[3 * i + k];
    }
    return { name, p };
  });
  return { frames, points };
}

export function drain<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Points in W, m, as a TRC file in mm. */
export function trcOf(points: readonly RecordedPoint[], t: ArrayLike<number>, rateHz: number): Uint8Array {
  const n = t.length;
  const lines = [
    'PathFileType\t4\t(X/Y/Z)\tfilmed.trc',
    'DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\tOrigDataStartFrame\tOrigNumFrames',
    [rateHz, rateHz, n, points.length, 'mm', rateHz, 1, n].join('\t'),
    `Frame#\tTime\t${points.map(({ name }) => name).join('\t\t\t')}\t\t`,
    `\t\t${points.map((_, k) => `X${k + 1}\tY${k + 1}\tZ${k + 1}`).join('\t')}`,
    '',
  ];
  for (let i = 0; i < n; i++)
    lines.push([i + 1, t[i], ...points.flatMap(({ p }) => [0, 1, 2].map((k) => 1000 * p[3 * i + k]))].join('\t'));
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}
