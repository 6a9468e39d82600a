/**
 * What a landing did to the athlete and how it ends, from the columns of a run. Braking lasts from touchdown to the moment the
 * mass centre stops sinking. Over it the mean ground force is one body weight more than the mean deceleration in g, exactly.
 * Force peaks within FIRST of touchdown are upper bounds: rigid segments have no soft tissue to give way (Gruber, Ruder,
 * Denoth & Schneider 1998, J Biomech 31:439). The filtered peak is that of a running mean over WINDOW: -3 dB at 0.443 / WINDOW.
 */
import type { PlanarJointName } from './chain.ts';
import { endingOf, type LandingEnding } from './ending.ts';
import { type LandingRun, type LandingSetup, runLanding } from './landing.ts';
import type { Asymmetry, LandingEntry } from './landing-entry.ts';
import { calcVerdict, type Verdict } from './verdict.ts';

export const FIRST = 0.03;
const WINDOW = 0.01;

interface ForcePeak {
  /** N, and body weights */
  readonly force: number;
  readonly bodyWeights: number;
  readonly t: number;
}

interface JointLoad {
  readonly joint: PlanarJointName;
  /** strongest torque of both sides, in the sense of the named angle, N m, and when */
  readonly torque: number;
  readonly t: number;
  /** taken out of the body up to the end of braking, J (negative: put in) */
  readonly absorbed: number;
  /** share of braking in which the muscles were at their strength */
  readonly limitedShare: number;
  /** furthest bent up to the end of braking, in the sense of the named angle, rad */
  readonly furthest: number;
}

export interface LandingReport {
  /** speed of sinking at touchdown, m/s */
  readonly speed: number;
  readonly peak: ForcePeak;
  /** the peak lies in the first 30 ms: an upper bound */
  readonly isUpperBound: boolean;
  readonly filteredPeak: ForcePeak;
  /** strongest horizontal force, + forward as the athlete faces */
  readonly horizontalPeak: ForcePeak;
  /** touchdown to the peak of the vertical force, s */
  readonly riseTime: number;
  /** undefined: never braked while on its feet */
  readonly brakeTime?: number;
  /** mean over braking, m/s2; in g; and the mean ground force in body weights */
  readonly meanDeceleration: number;
  readonly meanG: number;
  readonly meanBodyWeights: number;
  readonly sinkage: number;
  readonly joints: readonly JointLoad[];
  /** up to the end of braking, J: turned to heat in the mat, and held by it still */
  readonly matLost: number;
  readonly matHeld: number;
  /** what is left at the end of braking: turning about the mass centre, + backward, and speed forward */
  readonly h: number;
  readonly vx: number;
  /** energy that the account misses over the run, J: the engine's own error */
  readonly energyError: number;
  readonly verdict: Verdict;
  readonly ending: LandingEnding;
}

export type LandingResult =
  | { readonly kind: 'asymmetric'; readonly asymmetry: readonly Asymmetry[] }
  | { readonly kind: 'landed'; readonly run: LandingRun; readonly report: LandingReport };

/** Lands, unless the state is too asymmetric for a planar model: then it says why not. */
export function land(entry: LandingEntry, spec: LandingSetup): LandingResult {
  if (entry.asymmetry.length > 0) return { kind: 'asymmetric', asymmetry: entry.asymmetry };
  const run = runLanding(entry, spec);
  return { kind: 'landed', run, report: reportLanding(run) };
}

function reportLanding(run: LandingRun): LandingReport {
  const { entry, spec, dt, n } = run;
  const { gravity, chain } = entry;
  const weight = chain.mass * gravity;
  let end = 0;
  while (end < n - 1 && run.vy[end] < 0) end++;
  const isBraked = run.vy[end] >= 0;
  // crossing between rows
  const tb =
    isBraked && end > 0 ? run.t[end - 1] + (dt * run.vy[end - 1]) / (run.vy[end - 1] - run.vy[end]) : run.t[end];
  const speed = -run.vy[0];
  const at = (values: Float64Array, k: number): ForcePeak => ({
    force: values[k],
    bodyWeights: values[k] / weight,
    t: run.t[k],
  });
  const top = (values: Float64Array, count: number): number => {
    let best = 0;
    for (let k = 1; k < count; k++) if (Math.abs(values[k]) > Math.abs(values[best])) best = k;
    return best;
  };
  const peak = at(run.fy, top(run.fy, n));
  const smooth = runningMean(run.fy, n, Math.round(WINDOW / dt));
  const meanDeceleration = (speed + run.vy[end]) / run.t[end];
  const joints = chain.joints.map(({ name }, j): JointLoad => {
    const k = top(run.torque[j], end + 1);
    let limited = 0;
    let furthest = run.q[j][0];
    for (let i = 0; i <= end; i++) {
      limited += run.limited[j][i];
      if (Math.abs(run.q[j][i]) > Math.abs(furthest)) furthest = run.q[j][i];
    }
    return {
      joint: name,
      torque: run.torque[j][k],
      t: run.t[k],
      absorbed: 0 - run.jointWork[j][end],
      limitedShare: limited / (end + 1),
      furthest,
    };
  });
  const last = n - 1;
  const work = run.jointWork.reduce((sum, w) => sum + w[last], 0);
  const fell = run.touched && run.touched.t <= tb + dt ? run.touched : undefined;
  const verdict = calcVerdict(
    {
      x: run.x[end],
      height: run.y[end] - spec.mat.surfaceY + run.sink[end],
      vx: run.vx[end],
      heel: run.heel[end],
      toe: run.toe[end],
      gravity,
      stature: entry.stature,
    },
    fell,
    isBraked,
  );
  return {
    speed,
    peak,
    isUpperBound: peak.t <= FIRST,
    filteredPeak: at(smooth, top(smooth, n)),
    horizontalPeak: at(run.fx, top(run.fx, n)),
    riseTime: peak.t,
    ...(isBraked ? { brakeTime: tb } : {}),
    meanDeceleration,
    meanG: meanDeceleration / gravity,
    meanBodyWeights: meanDeceleration / gravity + 1,
    sinkage: run.sink.subarray(0, n).reduce((a, b) => Math.max(a, b), 0),
    joints,
    matLost: run.matLoss[end],
    matHeld: run.matHeld[end],
    h: run.h[end],
    vx: run.vx[end],
    energyError: run.energy[last] + run.matHeld[last] + run.matLoss[last] - work - run.energy[0],
    verdict,
    ending: endingOf(verdict, tb),
  };
}

/** Mean over the `width` rows around each; before touchdown the force is nothing. */
function runningMean(values: Float64Array, n: number, width: number): Float64Array {
  const out = new Float64Array(n);
  const half = Math.floor(width / 2);
  const span = 2 * half + 1;
  let sum = 0;
  for (let k = -half; k < n; k++) {
    if (k + half < n) sum += values[k + half];
    if (k - half - 1 >= 0) sum -= values[k - half - 1];
    if (k >= 0) out[k] = sum / span;
  }
  return out;
}
