// Segment poses as they are written: angular momentum from them alone is the one stated; quaternions keep their sign; derivatives are those of the angles.
import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import {
  buildSkill,
  calcSegmentFrames,
  checkSkillFile,
  flySkill,
  formatSegments,
  launch,
  parseSkill,
} from '../../sim/index.ts';
import { compose, conjugate, type Point, type Quaternion, turned } from '../oracles/chain.ts';

const file = checkSkillFile(skills['back-straight-full']);
const flight = flySkill(launch(buildSkill(parseSkill(file, { athletes, shapes }))));
const { body, schedule, duration } = flight;

/** The table as a reader has it: columns by name. */
function read(times: readonly number[]): { rows: number; at: (name: string, row: number) => number } {
  const text = [...formatSegments(calcSegmentFrames(flight, times), body, { isNumeric: true })].join('');
  const [head, ...lines] = text.trimEnd().split('\n');
  const names = new Map(head.split(',').map((name, k) => [name, k]));
  const cells = lines.map((line) => line.split(',').map(Number));
  return {
    rows: lines.length,
    at: (name, row) => {
      const k = names.get(name);
      if (k === undefined) throw new Error(`no column ${name}`);
      return cells[row][k];
    },
  };
}

/** Central, of 4th order: error (turn d)^4 / 30 of the rate, with d = 0.5 ms some 1e-9 of it. */
const D = 5e-4;
const WEIGHTS = [1 / 12, -2 / 3, 0, 2 / 3, -1 / 12];
/** share of |h|; measured: 2.3e-9 */
const CLOSES = 2e-8;

test('angular momentum from poses, masses and moments by differences is the one that the flight states', () => {
  // away from the ends of spans, where third derivatives jump
  const breaks = schedule.breaks.filter((t) => t > 0 && t < duration);
  const edges = [0, ...breaks, duration];
  const middles = edges.slice(1).flatMap((to, i) => (to - edges[i] > 8 * D ? [(to + edges[i]) / 2] : []));
  expect(middles.length).toBeGreaterThan(5);
  const size = Math.hypot(...flight.h_Scm_W);
  const times = middles.flatMap((t) => [-2, -1, 0, 1, 2].map((k) => t + k * D));
  const { at } = read(times);
  const quatAt = (name: string, row: number): Quaternion => [
    at(`${name}_qw`, row),
    at(`${name}_qx`, row),
    at(`${name}_qy`, row),
    at(`${name}_qz`, row),
  ];
  let worst = 0;
  middles.forEach((_, m) => {
    const row = 5 * m + 2;
    const rate = (name: string): number => WEIGHTS.reduce((sum, w, k) => sum + (w / D) * at(name, 5 * m + k), 0);
    const h = [0, 0, 0];
    for (const {
      name,
      mass,
      I_BBcm_B: [xx, yy, zz, xy, xz, yz],
    } of body.segments) {
      const axes = ['x', 'y', 'z'];
      const r = axes.map((k) => at(`${name}_com${k}`, row) - at(`com${k}`, row));
      const v = axes.map((k) => rate(`${name}_com${k}`) - rate(`com${k}`));
      const e = quatAt(name, row);
      const turning = compose(
        ['w', 'x', 'y', 'z'].map((k) => rate(`${name}_q${k}`)) as unknown as Quaternion,
        conjugate(e),
      );
      const b = turned(conjugate(e), [2 * turning[1], 2 * turning[2], 2 * turning[3]]);
      const spin: Point = turned(e, [
        xx * b[0] + xy * b[1] + xz * b[2],
        xy * b[0] + yy * b[1] + yz * b[2],
        xz * b[0] + yz * b[1] + zz * b[2],
      ]);
      h[0] += spin[0] + mass * (r[1] * v[2] - r[2] * v[1]);
      h[1] += spin[1] + mass * (r[2] * v[0] - r[0] * v[2]);
      h[2] += spin[2] + mass * (r[0] * v[1] - r[1] * v[0]);
    }
    worst = Math.max(worst, Math.hypot(...h.map((x, k) => x - flight.h_Scm_W[k])) / size);
  });
  expect(worst).toBeLessThan(CLOSES);
});

const even = Array.from({ length: 60 }, (_, i) => (duration * i) / 59);

test('a quaternion has length 1 and the sign nearer to the one before; joint centres hold their segments together', () => {
  const { at, rows } = read(even);
  let flips = 0;
  for (const { name, parent, p_PoBo_P } of body.segments)
    for (let i = 0; i < rows; i++) {
      const q = ['w', 'x', 'y', 'z'].map((k) => at(`${name}_q${k}`, i));
      expect(Math.abs(Math.hypot(...q) - 1)).toBeLessThan(1e-12);
      if (i > 0) {
        const before = ['w', 'x', 'y', 'z'].map((k) => at(`${name}_q${k}`, i - 1));
        expect(q.reduce((sum, x, k) => sum + x * before[k], 0)).toBeGreaterThan(0);
        if (q[0] < 0) flips++;
      }
      if (parent < 0) continue;
      const of = body.segments[parent].name;
      const e = ['w', 'x', 'y', 'z'].map((k) => at(`${of}_q${k}`, i)) as unknown as Quaternion;
      const d = turned(e, p_PoBo_P);
      for (const [k, axis] of ['x', 'y', 'z'].entries())
        expect(Math.abs(at(`${name}_p${axis}`, i) - at(`${of}_p${axis}`, i) - d[k])).toBeLessThan(1e-12);
    }
  // of a whole somersault some pass through w = 0: kept to w >= 0 they would jump
  expect(flips).toBeGreaterThan(0);
});

test('second derivatives are those of the written first ones', () => {
  const t = even.filter((x) => x > 0.01 && x < duration - 0.01 && schedule.breaks.every((b) => Math.abs(b - x) > 3e-3));
  const { at } = read(t.flatMap((x) => [x - 1e-4, x, x + 1e-4]));
  let largest = 0;
  t.forEach((_, i) => {
    for (const { name } of body.angles) {
      const found = at(`angle_acceleration_${name}_rad_s2`, 3 * i + 1);
      const rate = (k: number): number => at(`angle_rate_${name}_rad_s`, 3 * i + k);
      const differenced = (rate(2) - rate(0)) / 2e-4;
      largest = Math.max(largest, Math.abs(found));
      // of a jerk of some 1e5 rad/s^3 and what follows it
      expect(Math.abs(found - differenced), name).toBeLessThan(0.05 + 1e-4 * Math.abs(found));
    }
  });
  expect(largest).toBeGreaterThan(10);
});

test('the points are those of the body, on their segments', () => {
  const { at } = read([0, duration / 2]);
  for (const { name, segment, p_BoC_B } of body.contacts) {
    const of = body.segments[segment].name;
    const e = ['w', 'x', 'y', 'z'].map((k) => at(`${of}_q${k}`, 1)) as unknown as Quaternion;
    const d = turned(e, p_BoC_B);
    for (const [k, axis] of ['x', 'y', 'z'].entries())
      expect(Math.abs(at(`point_${name}_${axis}`, 1) - at(`${of}_p${axis}`, 1) - d[k])).toBeLessThan(1e-12);
  }
});
