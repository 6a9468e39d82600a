/** Errors of what a swing reports, by case and step: how they are measured, and what was measured. */
import { makeSwing } from '../../sim/contact/make-swing.ts';
import type { Swing } from '../../sim/contact/swing.ts';
import type { SwingSpec } from '../../sim/contact/swing-spec.ts';
import { DEG, twoGiants } from './swings.ts';

export interface Errors {
  /** share */
  readonly grip: number;
  readonly head: number;
  readonly bend: number;
  /** s */
  readonly time: number;
  /** at the release, shares */
  readonly speed: number;
  readonly rate: number;
  readonly momentum: number;
  /** largest over the swing, deg */
  readonly joints: number;
  /** share of 2 m g r: difference of energies; and the run's own account */
  readonly energy: number;
  readonly account: number;
  /** share of the largest */
  readonly torque: number;
}

const last = (x: Float64Array, s: Swing): number => x[s.shown - 1];

function errorsOf(s: Swing, best: Swing): Errors {
  const share = (a: number, b: number): number => Math.abs(a / b - 1);
  const scale = 2 * s.body.mass * s.spec.gravity * best.radius;
  let account = 0;
  const c = s.columns;
  for (let i = 0; i < s.shown; i++)
    account = Math.max(account, Math.abs(c.energy[i] - c.energy[0] - c.work[i] + c.loss[i]) / scale);
  let joints = 0;
  s.joints.forEach((joint, j) => {
    // both grids end at the release
    for (let i = 0; i < Math.min(s.shown, best.shown) - 2; i++)
      joints = Math.max(joints, Math.abs(joint.q[s.shown - 1 - i] - best.joints[j].q[best.shown - 1 - i]) / DEG);
  });
  const top = (x: Swing): number =>
    Math.max(...x.joints.map((j) => j.torque.subarray(0, x.shown).reduce((a, v) => Math.max(a, Math.abs(v)), 0)));
  return {
    grip: share(s.peaks.grip.value, best.peaks.grip.value),
    head: share(s.peaks.feltHead.value, best.peaks.feltHead.value),
    bend: share(s.peaks.bend.value, best.peaks.bend.value),
    time: Math.abs(s.duration - best.duration),
    speed: share(last(c.speed, s), last(best.columns.speed, best)),
    rate: share(last(c.rate, s), last(best.columns.rate, best)),
    momentum: share(last(c.hCentre, s), last(best.columns.hCentre, best)),
    joints,
    energy: Math.abs(last(c.energy, s) - last(best.columns.energy, best)) / scale,
    account,
    torque: share(top(s), top(best)),
  };
}

export type Case = 'driven' | 'limited';
export const STEPS = [2e-3, 1e-3, 5e-4, 2.5e-4] as const;
/** s: what the others are compared with */
const FINE = 1e-4;

/** Two giants, driven whatever it takes and with 0.9 of the strength. */
export function measureErrors(steps: readonly number[] = STEPS): { of: Case; step: number; errors: Errors }[] {
  const cases: readonly (readonly [Case, SwingSpec])[] = [
    ['driven', twoGiants],
    ['limited', { ...twoGiants, strength: 0.9 }],
  ];
  return cases.flatMap(([of, spec]) => {
    const fine = makeSwing({ ...spec, step: FINE });
    return steps.map((step) => ({ of, step, errors: errorsOf(makeSwing({ ...spec, step }), fine) }));
  });
}

/** In the order of the columns of MEASURED. */
export const MEASURES: readonly (keyof Errors)[] = [
  'grip', 'head', 'bend', 'time', 'speed', 'rate', 'momentum', 'joints', 'energy', 'account', 'torque',
]; // biome-ignore format: one row of the table

/** The errors as measured, by case and step (s); docs/numerics.md prints them. */
// biome-ignore format: a table
export const MEASURED: Readonly<Record<Case, readonly (readonly [step: number, ...errors: number[]])[]>> = {
  driven: [
    [0.002, 6.3e-8, 3.2e-7, 7.1e-8, 9.4e-8, 4.4e-9, 1.4e-7, 1.4e-7, 3.4e-5, 2.2e-10, 1.2e-8, 5.2e-7],
    [0.001, 3.7e-9, 2.1e-8, 4.2e-9, 5.5e-9, 2.4e-10, 9.0e-9, 8.7e-9, 2.0e-6, 2.4e-11, 8.1e-10, 3.4e-8],
    [0.0005, 2.3e-10, 1.4e-9, 2.6e-10, 3.5e-10, 5.2e-11, 6.1e-10, 5.8e-10, 1.3e-7, 4.6e-11, 8.4e-11, 2.2e-9],
    [0.00025, 1.7e-11, 8.4e-11, 1.9e-11, 2.0e-11, 2.0e-12, 3.5e-11, 3.4e-11, 7.0e-9, 7.4e-13, 1.4e-11, 1.3e-10],
  ],
  limited: [
    [0.002, 3.6e-8, 5.5e-7, 3.5e-8, 3.8e-8, 3.4e-10, 3.1e-8, 1.1e-8, 1.3e-5, 9.7e-10, 4.8e-9, 6.5e-9],
    [0.001, 2.3e-9, 3.5e-8, 2.2e-9, 2.4e-9, 2.4e-11, 2.0e-9, 7.4e-10, 8.0e-7, 6.0e-11, 3.0e-10, 4.3e-10],
    [0.0005, 2.4e-10, 3.9e-9, 2.4e-10, 2.7e-10, 8.9e-14, 1.2e-10, 1.9e-10, 8.9e-8, 6.9e-12, 2.0e-11, 5.2e-11],
    [0.00025, 1.2e-10, 2.0e-9, 1.2e-10, 1.4e-10, 1.7e-12, 5.9e-12, 1.5e-10, 4.6e-8, 3.6e-12, 1.4e-12, 2.4e-11],
  ],
};
