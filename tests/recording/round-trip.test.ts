// A flight written as BVH, TRC and CSV and read again: attitudes within 1e-6 rad, places within 1e-6 m.
import { expect, test } from 'vitest';
import { calcSegmentFrames } from '../../sim/index.ts';
import { applyInto, mulInto, mulTInto, vectorOfMatInto } from '../../sim/math/rot.ts';
import { guessColumns } from '../../sim/recording/column-meanings.ts';
import type { PosedMotion } from '../../sim/recording/posed.ts';
import { posedOfFlight } from '../../sim/recording/posed-flight.ts';
import { makePosedReader } from '../../sim/recording/posed-reader.ts';
import { formatBvh } from '../../sim/recording/write-bvh.ts';
import { formatRecorded } from '../../sim/recording/write-recorded-csv.ts';
import { formatTrc } from '../../sim/recording/write-trc.ts';
import { flight, flown } from './flown.ts';
import { readText } from './parts.ts';

const posed = flown(60);
const { body, n } = posed;
/** rad and m; measured: BVH 2.5e-10 and 1.6e-10, TRC 1e-8 and 5e-10 */
const CLOSE = 1e-6;

const turnBetween = (A: ArrayLike<number>, B: ArrayLike<number>): number => {
  const C = new Float64Array(9);
  const v = [0, 0, 0];
  mulTInto(A, 0, B, 0, C, 0);
  vectorOfMatInto(C, 0, v);
  return Math.hypot(...v);
};

test('a posed flight has the poses of the flight itself', () => {
  const frames = calcSegmentFrames(flight, posed.t);
  const reader = makePosedReader(posed);
  reader.read(n - 1);
  const last = frames.p_WBo_W.subarray(3 * body.segments.length * (n - 1));
  last.forEach((x, k) => {
    expect(reader.p_WSo_W[k]).toBeCloseTo(x, 12);
  });
  expect(posed.isSeen.every(Boolean)).toBe(true);
  expect(() => posedOfFlight(flight, [0, 0.1, 0.3])).toThrow('times[1]');
});

/** Attitudes and places in the world of every joint of a file, by chaining parent to child. */
function chain(text: string, row: number): { R: Float64Array[]; p: number[][]; names: string[] } {
  const { joints } = readText('a.bvh', text);
  const R: Float64Array[] = [];
  const p: number[][] = [];
  for (const joint of joints) {
    const own = joint.R.subarray(9 * row, 9 * row + 9);
    const place = joint.p ? joint.p.subarray(3 * row, 3 * row + 3) : joint.offset;
    if (joint.parent < 0) {
      R.push(own);
      p.push([...place]);
      continue;
    }
    const turned = new Float64Array(9);
    const at = [0, 0, 0];
    mulInto(R[joint.parent], 0, own, 0, turned, 0);
    applyInto(R[joint.parent], 0, place, 0, at, 0);
    R.push(turned);
    p.push(at.map((x, k) => x + p[joint.parent][k]));
  }
  return { R, p, names: joints.map(({ name }) => name) };
}

test('BVH: attitude and place of every segment', () => {
  const text = [...formatBvh(posed)].join('');
  const reader = makePosedReader(posed);
  for (let i = 0; i < n; i += 7) {
    const { R, p, names } = chain(text, i);
    reader.read(i);
    body.segments.forEach(({ name }, s) => {
      const at = names.indexOf(name);
      expect(turnBetween(R[at], reader.R_WS.subarray(9 * s, 9 * s + 9))).toBeLessThan(CLOSE);
      for (let k = 0; k < 3; k++) expect(Math.abs(p[at][k] / 100 - reader.p_WSo_W[3 * s + k])).toBeLessThan(CLOSE);
    });
  }
  expect(readText('a.bvh', text).rateHz).toBeCloseTo(60, 9);
});

test('BVH: a joint at a right angle of the middle rotation keeps its attitude', () => {
  const k = body.angles.findIndex(({ name }) => name === 'hipAbductionL');
  const plain = (value: number): PosedMotion => {
    const angles = new Float64Array(2 * body.angles.length).fill(0.3);
    for (let i = 0; i < 2; i++) angles[i * body.angles.length + k] = value;
    return {
      body,
      n: 2,
      t: Float64Array.of(0, 0.1),
      rateHz: 10,
      p_WBo_W: new Float64Array(6),
      quat_WB: Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0),
      angles,
      isSeen: posed.isSeen,
    };
  };
  for (const off of [0, 1e-12, 1e-9, 1e-7, -1e-5]) {
    const motion = plain(Math.PI / 2 + off);
    const { R, names } = chain([...formatBvh(motion)].join(''), 1);
    const reader = makePosedReader(motion);
    reader.read(1);
    body.segments.forEach(({ name }, s) => {
      const own = R[names.indexOf(name)];
      expect(turnBetween(own, reader.R_WS.subarray(9 * s, 9 * s + 9))).toBeLessThan(CLOSE);
    });
  }
});

test('TRC: origin of every segment and 0.1 m along its X and Y', () => {
  const r = readText('a.trc', [...formatTrc(posed, 'a.trc')].join(''));
  expect([r.unitM, r.rateHz, r.notes]).toEqual([0.001, 60, []]);
  const reader = makePosedReader(posed);
  for (let i = 0; i < n; i += 7) {
    reader.read(i);
    body.segments.forEach(({ name }, s) => {
      const at = (end: string): Float64Array | undefined =>
        r.points.find((point) => point.name === `${name}.${end}`)?.p.subarray(3 * i, 3 * i + 3);
      const [o, x, y] = [at('o'), at('x'), at('y')];
      if (!o || !x || !y) throw new Error(name);
      for (let k = 0; k < 3; k++) {
        expect(Math.abs(o[k] / 1000 - reader.p_WSo_W[3 * s + k])).toBeLessThan(CLOSE);
        expect(Math.abs((x[k] - o[k]) / 100 - reader.R_WS[9 * s + 3 * k])).toBeLessThan(CLOSE);
        expect(Math.abs((y[k] - o[k]) / 100 - reader.R_WS[9 * s + 3 * k + 1])).toBeLessThan(CLOSE);
      }
    });
  }
});

test('CSV: the same numbers to the last bit, gaps blank', () => {
  const angles = posed.angles.slice();
  angles[body.angles.length + 2] = Number.NaN;
  const r = readText('a.csv', [...formatRecorded({ ...posed, angles })].join(''));
  for (const { from, means } of guessColumns(r, body)) {
    const values = r.columns.find(({ name }) => name === from)?.values ?? new Float64Array();
    if (means.kind === 'quaternion')
      expect([...values]).toEqual(Array.from({ length: n }, (_, i) => posed.quat_WB[4 * i + means.part]));
    if (means.kind !== 'angle') continue;
    const a = body.angles.findIndex(({ name }) => name === means.angle);
    expect([...values]).toEqual(Array.from({ length: n }, (_, i) => angles[body.angles.length * i + a]));
  }
  expect(r.columns.length).toBe(7 + body.angles.length);
});

test('what is not known is blank in TRC and held in BVH', () => {
  const angles = posed.angles.slice();
  const knee = body.angles.findIndex(({ name }) => name === 'kneeFlexionL');
  angles[body.angles.length + knee] = Number.NaN;
  const gapped = { ...posed, angles };
  const shank = readText('a.trc', [...formatTrc(gapped, 'a')].join('')).points.find((p) => p.name === 'shankL.y');
  expect([...(shank?.p.subarray(0, 9) ?? [])].map(Number.isNaN)).toEqual([
    false,
    false,
    false,
    true,
    true,
    true,
    false,
    false,
    false,
  ]);
  const held = readText('a.bvh', [...formatBvh(gapped)].join('')).joints.find((j) => j.name === 'shankL');
  expect([...(held?.R.subarray(9, 18) ?? [])]).toEqual([...(held?.R.subarray(0, 9) ?? [])]);
});
