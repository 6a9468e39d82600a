/**
 * Random trees of 2 to 6 segments with random masses, tensors and hinges, random keys and take-offs, built from a list
 * of thousandths in [-1, 1] ("genes") so that fast-check can shrink them. Every tensor is that of a solid box, turned.
 */
import fc from 'fast-check';
import type { Body, Hinge, NamedAngle, Segment, Sym3, Vec3 } from '../../sim/body/body.ts';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import type { AngleKey, Schedule } from '../../sim/schedule/schedule.ts';
import { type Quaternion, turned } from '../oracles/chain.ts';

/** Length of every random flight, s. */
export const T = 0.6;
const MOST = 6;
const GENES = 12 + MOST * 30 + MOST * 3 * 6;

export interface Case {
  readonly body: Body;
  readonly keys: readonly AngleKey[];
  readonly attitude: Vec3;
  readonly h: Vec3;
  /** a random turn of the world */
  readonly turn: Quaternion;
  readonly velocity: Vec3;
}

export const cases = fc
  .tuple(
    fc.integer({ min: 2, max: MOST }),
    fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: GENES, maxLength: GENES }),
  )
  .map(([n, genes]) => build(n, genes));

function build(n: number, genes: readonly number[]): Case {
  let at = 0;
  const gene = (): number => genes[at++] / 1000;
  const within = (low: number, high: number): number => low + ((gene() + 1) / 2) * (high - low);
  const vector = (size: number): Vec3 => [size * gene(), size * gene(), size * gene()];
  const attitude: Vec3 = [3 * gene(), 1.2 * gene(), 3 * gene()];
  const push = vector(0.2);
  const turn = unitQuaternion(vector(1), within(-3, 3));
  const velocity = vector(4);
  const segments: Segment[] = [];
  const angles: NamedAngle[] = [];
  const keys: AngleKey[] = [];
  for (let i = 0; i < n; i++) {
    const parent = i === 0 ? -1 : Math.min(i - 1, Math.floor(within(0, i)));
    const mass = within(1, 15);
    const box = [within(0.05, 0.5), within(0.05, 0.5), within(0.05, 0.5)] as const;
    const hinges: Hinge[] = [];
    const wanted = i === 0 ? 0 : 1 + Math.min(2, Math.floor(within(0, 3)));
    for (let k = 0; k < wanted; k++) {
      const angle = angles.length;
      hinges.push({ name: `q${angle}`, axis: unit(vector(1)), terms: [{ angle, coef: 1 }] });
      angles.push(freeAngle(`q${angle}`, angle));
      keys.push(...someKeys(angle, gene));
    }
    segments.push({
      name: `s${i}`,
      parent,
      p_PoBo_P: i === 0 ? [0, 0, 0] : vector(0.4),
      hinges,
      mass,
      p_BoBcm_B: vector(0.2),
      I_BBcm_B: boxTensor(mass, box, unitQuaternion(vector(1), within(-3, 3))),
      group: 'whole',
      side: 'centre',
      shapes: [],
    });
  }
  const body: Body = {
    name: 'random',
    mass: segments.reduce((sum, s) => sum + s.mass, 0),
    segments,
    angles,
    contacts: [],
    shoulders: [],
    neutralHuman: false,
  };
  // about the turning of an athlete: angular momentum in proportion to mass
  const h: Vec3 = [push[0] * body.mass, push[1] * body.mass, push[2] * body.mass];
  return { body, keys, attitude, h, turn, velocity };
}

/** Four keys, some to be passed through, some before take-off and after the end. */
function someKeys(angle: number, gene: () => number): AngleKey[] {
  let s = 0.2 * gene() - 0.05;
  return [0, 1, 2, 3].map((k): AngleKey => {
    const key: AngleKey = {
      angle,
      at: { anchor: 'takeoff', s },
      value: 1.5 * gene(),
      kind: k % 2 === 1 && angle % 2 === 0 ? 'pass' : 'stop',
    };
    s += 0.14 + 0.06 * (angle % 3);
    return key;
  });
}

export const scheduleOf = (body: Body, keys: readonly AngleKey[]): Schedule =>
  compileSchedule(
    body,
    { base: body.angles.map(() => 0), blocks: [], keys, sampled: [], smoothing: { kind: 'gcv' } },
    { apex: 0, touchdown: 0 },
  );

/** The same motion run backwards from T. */
export const reversed = (keys: readonly AngleKey[]): AngleKey[] =>
  keys.map((k) => ({ ...k, at: { anchor: 'takeoff', s: T - k.at.s } as const })).reverse();

/** Left for right: points in Z = 0, axes (which are axial) so that the same coordinate is the mirrored turn. */
export function mirrored(body: Body): Body {
  const point = (p: Vec3): Vec3 => [p[0], p[1], -p[2]];
  const tensor = (I: Sym3): Sym3 => [I[0], I[1], I[2], I[3], -I[4], -I[5]];
  return {
    ...body,
    segments: body.segments.map((s) => ({
      ...s,
      p_PoBo_P: point(s.p_PoBo_P),
      p_BoBcm_B: point(s.p_BoBcm_B),
      I_BBcm_B: tensor(s.I_BBcm_B),
      hinges: s.hinges.map((h) => ({ ...h, axis: [-h.axis[0], -h.axis[1], h.axis[2]] as const })),
    })),
  };
}

const freeAngle = (name: string, k: number): NamedAngle => ({
  name,
  mirror: k,
  mirrorSign: 1,
  range: [-9, 9],
  limitSource: 'none',
});

function unit(v: Vec3): Vec3 {
  const n = Math.hypot(...v);
  return n > 1e-3 ? [v[0] / n, v[1] / n, v[2] / n] : [0, 0, 1];
}

function unitQuaternion(about: Vec3, angle: number): Quaternion {
  const [x, y, z] = unit(about);
  const s = Math.sin(angle / 2);
  return [Math.cos(angle / 2), s * x, s * y, s * z];
}

/** Solid box of edges a, b, c turned by q: J = sum of principal moments times e e^T. */
function boxTensor(m: number, [a, b, c]: readonly [number, number, number], q: Quaternion): Sym3 {
  const moments = [(m / 12) * (b * b + c * c), (m / 12) * (a * a + c * c), (m / 12) * (a * a + b * b)];
  const e = [turned(q, [1, 0, 0]), turned(q, [0, 1, 0]), turned(q, [0, 0, 1])];
  const sum = (i: number, j: number): number => moments.reduce((s, J, k) => s + J * e[k][i] * e[k][j], 0);
  return [sum(0, 0), sum(1, 1), sum(2, 2), sum(0, 1), sum(0, 2), sum(1, 2)];
}
