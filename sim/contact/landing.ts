/**
 * A landing in the plane, followed until it has ended (landing-watch.ts): the chain on the springs of a mat (feet.ts), its joints
 * set before touchdown and led by balance from the time of reaction on. x forward as the athlete faces, y up, t = 0 at touchdown.
 *
 * Measured errors: docs/numerics.md.
 */

import { BalanceAction } from './balance-action.ts';
import { jointsInto } from './chain-motion.ts';
import type { EndingReason, LandingEnding } from './ending.ts';
import { FootSpring, footPoints } from './feet.ts';
import { type LandingEntry, placeEntry } from './landing-entry.ts';
import { LandingEquations } from './landing-equations.ts';
import { checkAction, JointAction, LEGS, type LegAction, type Legs } from './landing-joints.ts';
import { type LandingColumns, LandingRows } from './landing-rows.ts';
import { type LandingStepper, PlanckLanding, RungeKuttaLanding } from './landing-stepper.ts';
import { LandingWatch } from './landing-watch.ts';
import { checkMat, type MatSpec } from './mat.ts';
import { Planar } from './planar.ts';
import { onSoles } from './soles.ts';

export interface LandingSetup {
  readonly mat: MatSpec;
  readonly action: LegAction;
  /** s at most; DURATION if left out */
  readonly duration?: number;
  /** s; STEP if left out */
  readonly step?: number;
  /** by Runge-Kutta in place of the engine: for batches */
  readonly isBatch?: boolean;
}

/** s, chosen from the measured convergence in docs/numerics.md. */
export const STEP = 0.00025;
/** Rows are a step apart until then, s; after it so many. */
const ROWS = { until: 0.15, times: 2 };
const DURATION = 4;

export interface LandingRun extends LandingColumns {
  readonly entry: LandingEntry;
  readonly spec: LandingSetup;
  readonly ending: LandingEnding;
  /** end of braking: the mass centre stops sinking, s; NaN: it never does */
  readonly braked: number;
}

export function runLanding(entry: LandingEntry, spec: LandingSetup, legs = LEGS): LandingRun {
  const action = checkAction(spec.action);
  const { chain, gravity } = entry;
  const isMuscled = chain.joints.length > 0;
  const mat = onSoles(checkMat(spec.mat), isMuscled ? legs.soles : undefined, chain.mass);
  const points = footPoints(chain);
  const planar = new Planar(chain, points[0].at);
  const joints = chain.joints.map((j, i) => new JointAction(j, action, chain.body, entry.q[i], legs));
  const balance = isMuscled
    ? new BalanceAction(planar, points, gravity, entry.q, plannedBend(legs.bend, -entry.vy, action.stiffness))
    : undefined;
  const feet = points.map((p) => new FootSpring(p, mat));
  const equations = new LandingEquations(planar, feet, joints, balance, gravity);
  const start = placeEntry(entry);
  const q = new Float64Array(joints.length);
  const qd = new Float64Array(joints.length);
  jointsInto(chain, start, q, qd);
  equations.begin(start, q, qd, mat.surfaceY);

  const h = spec.step ?? STEP;
  const fast = turnsFast(entry);
  const duration = Math.min(spec.duration ?? DURATION, fast ? IMPACT : Number.POSITIVE_INFINITY);
  const stepper: LandingStepper = spec.isBatch
    ? new RungeKuttaLanding(equations, h)
    : new PlanckLanding(equations, start, gravity, h);
  const rows = new LandingRows(equations, entry, mat);
  const watch = new LandingWatch(equations, entry, mat, action.delay);
  let t = 0;
  for (let row = 0; ; ) {
    stepper.show(t);
    if (t > row - h / 16) {
      rows.keep(t);
      if (watch.see(t) || t >= duration - h / 2) break;
      row += t < ROWS.until - h / 2 ? h : ROWS.times * h;
    }
    const after = t + stepper.stepAt(t);
    stepper.advance(t);
    t = after;
  }
  return {
    entry,
    spec,
    ending: fast ? { kind: 'tooFast', t, reasons: [fast] } : watch.ending(t),
    braked: watch.braked,
    ...rows.columns(),
  };
}

/**
 * kg m^2/s for each kg m^2 of m h^2 (h the stature): judgement. No run of ours that turned faster was held, and gymnasts hold double straights
 * at 0.6 (docs/landing.md): of those nothing is said. Straight singles come down at 0.3 to 0.4.
 */
export const MOST_JUDGED_TURNING = 0.4;

/** s of such a landing that are run: its impact, and until the athlete can have reacted. */
const IMPACT = 0.1;

function turnsFast(entry: LandingEntry): (EndingReason & { kind: 'turnsFast' }) | undefined {
  const limit = MOST_JUDGED_TURNING * entry.chain.mass * entry.stature ** 2;
  const turning = Math.abs(entry.h);
  return turning > limit ? { kind: 'turnsFast', turning, limit } : undefined;
}

/** Stiffer legs bend less. */
function plannedBend([at, perSpeed]: Legs['bend'], speed: number, stiffness: number): number {
  return Math.min(MOST_BEND, at + (perSpeed * Math.max(0, speed)) / Math.sqrt(stiffness));
}
const MOST_BEND = 2.2;
