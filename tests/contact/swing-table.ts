/** The rows of the table "Swing" in docs/numerics.md: errors of what a swing reports, by kind and step. */
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

/** Two giants, driven whatever it takes and with 0.6 of the strength. */
export function measureErrors(steps: readonly number[] = STEPS): { of: Case; step: number; errors: Errors }[] {
  const cases: readonly (readonly [Case, SwingSpec])[] = [
    ['driven', twoGiants],
    ['limited', { ...twoGiants, strength: 0.6 }],
  ];
  return cases.flatMap(([of, spec]) => {
    const fine = makeSwing({ ...spec, step: FINE });
    return steps.map((step) => ({ of, step, errors: errorsOf(makeSwing({ ...spec, step }), fine) }));
  });
}
