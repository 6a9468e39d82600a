/**
 * Whole-body moments by a forward kinematics of its own, so that it can judge the engine's: rotations composed as
 * matrices by Rodrigues' formula, sums by the parallel axis theorem. Frames as in sim/body/body.ts.
 */
import type { Body, Sym3, Vec3 } from '../../sim/body/body.ts';

export type Mat = readonly (readonly number[])[];

export const times = (A: Mat, B: Mat): number[][] =>
  A.map((row) => B[0].map((_, j) => row.reduce((s, a, k) => s + a * B[k][j], 0)));
export const turned = (A: Mat, x: readonly number[]): number[] =>
  A.map((row) => row.reduce((s, a, k) => s + a * x[k], 0));
const transposed = (A: Mat): number[][] => A[0].map((_, j) => A.map((row) => row[j]));

/** Rotation about a unit axis: c 1 + s [a]x + (1 - c) a a^T. */
export function about(a: Vec3, angle: number): number[][] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const cross = [
    [0, -a[2], a[1]],
    [a[2], 0, -a[0]],
    [-a[1], a[0], 0],
  ];
  return cross.map((row, i) => row.map((x, j) => (i === j ? c : 0) + s * x + (1 - c) * a[i] * a[j]));
}

export interface Whole {
  readonly mass: number;
  readonly centre: readonly number[]; // in the root frame
  readonly inertia: Mat; // about the centre, axes of the root
  readonly origins: readonly (readonly number[])[];
  readonly turns: readonly Mat[];
}

/** Named angles in deg, both sides by the bare name; `hingesRad` instead sets hinge coordinates. */
export function wholeBody(body: Body, deg: Readonly<Record<string, number>>, hingesRad?: readonly number[]): Whole {
  for (const name of Object.keys(deg))
    if (!body.angles.some((x) => x.name === name || x.name.replace(/[LR]$/, '') === name))
      throw new Error(`no angle ${name}`);
  const angles = body.angles.map((a) => ((deg[a.name] ?? deg[a.name.replace(/[LR]$/, '')] ?? 0) * Math.PI) / 180);
  const turns: number[][][] = [];
  const origins: number[][] = [];
  let k = 0;
  for (const s of body.segments) {
    let R: number[][] = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    let p: number[] = [0, 0, 0];
    if (s.parent >= 0) {
      const d = turned(turns[s.parent], s.p_PoBo_P);
      p = origins[s.parent].map((x, i) => x + d[i]);
      R = turns[s.parent];
    }
    for (const h of s.hinges) {
      const q = hingesRad ? hingesRad[k] : h.terms.reduce((sum, t) => sum + t.coef * angles[t.angle], 0);
      R = times(R, about(h.axis, q));
      k++;
    }
    turns.push(R);
    origins.push(p);
  }
  const centres = body.segments.map((s, i) => {
    const d = turned(turns[i], s.p_BoBcm_B);
    return origins[i].map((x, j) => x + d[j]);
  });
  const mass = body.segments.reduce((sum, s) => sum + s.mass, 0);
  const centre = [0, 1, 2].map((j) => body.segments.reduce((sum, s, i) => sum + s.mass * centres[i][j], 0) / mass);
  const inertia = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  body.segments.forEach((s, i) => {
    const own = times(times(turns[i], square(s.I_BBcm_B)), transposed(turns[i]));
    const r = centres[i].map((x, j) => x - centre[j]);
    const rr = r[0] * r[0] + r[1] * r[1] + r[2] * r[2];
    for (let a = 0; a < 3; a++)
      for (let b = 0; b < 3; b++) inertia[a][b] += own[a][b] + s.mass * ((a === b ? rr : 0) - r[a] * r[b]);
  });
  return { mass, centre, inertia, origins, turns };
}

export const square = (I: Sym3): number[][] => [
  [I[0], I[3], I[4]],
  [I[3], I[1], I[5]],
  [I[4], I[5], I[2]],
];

/** Lateral, front-back and long moment in the axes of the root: A, B, C of docs/conventions.md. */
export function namedMoments(whole: Whole): { A: number; B: number; C: number } {
  return { A: whole.inertia[2][2], B: whole.inertia[0][0], C: whole.inertia[1][1] };
}
