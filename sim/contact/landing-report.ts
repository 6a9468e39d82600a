/**
 * What a landing did to the athlete, from the columns of a run. Braking lasts from touchdown to the moment the mass centre stops
 * sinking. Over it the mean ground force is one body weight more than the mean deceleration in g, exactly. The filtered
 * peak is that of a running mean over WINDOW: -3 dB at 0.443 / WINDOW.
 *
 * A peak is an upper bound where something in it does not give as an athlete or a mat would, and it is said what: a mat pressed in
 * to its bottom, a surface as hard as a plate under rigid feet (Gruber, Ruder, Denoth & Schneider 1998, J Biomech 31:439:
 * rigid segments have no soft tissue), or a joint against its stop.
 */
import { placeIn } from '../math/sorted.ts';
import { SETTLE } from './balance-action.ts';
import type { PlanarJointName } from './chain.ts';
import type { LandingEnding } from './ending.ts';
import { type LandingRun, type LandingSetup, runLanding } from './landing.ts';
import type { Asymmetry, LandingEntry } from './landing-entry.ts';
import { isBottomed, isHard } from './mat.ts';

const WINDOW = 0.01;

interface ForcePeak {
  /** N, and body weights */
  readonly force: number;
  readonly bodyWeights: number;
  readonly t: number;
}

export type BoundCause = 'bottomedMat' | 'hardSurface' | 'jointStop';

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

/** From touchdown to the end of braking, J: arrived = joints + mat + soles + left, but for what is missed. */
interface LandingEnergy {
  /** moving at touchdown, and the height lost since */
  readonly arrived: number;
  readonly joints: number;
  readonly matLost: number;
  readonly matHeld: number;
  /** heel pads and soft tissue (soles.ts) */
  readonly solesLost: number;
  readonly solesHeld: number;
  /** still moving */
  readonly left: number;
  /** error of the computation */
  readonly missed: number;
}

/** The extrapolated mass centre at the end of braking, from the middle of the soles, m, + forward: a screen, not the verdict. */
interface BalanceScreen {
  /** without turning; turning stopped at once; taken out over SETTLE */
  readonly plain: number;
  readonly stopped: number;
  readonly decaying: number;
  /** middle to toe and to heel */
  readonly half: number;
}

export interface LandingReport {
  /** speed of sinking at touchdown, m/s */
  readonly speed: number;
  readonly peak: ForcePeak;
  /** why the peak is an upper bound, if it is */
  readonly bound?: BoundCause;
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
  readonly energy: LandingEnergy;
  /** what is left at the end of braking: turning about the mass centre, + backward, and speed forward */
  readonly h: number;
  readonly vx: number;
  readonly screen: BalanceScreen;
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
  const { entry, n, braked } = run;
  const { gravity, chain } = entry;
  const weight = chain.mass * gravity;
  const isBraked = Number.isFinite(braked);
  const tb = isBraked ? braked : run.t[n - 1];
  // first row at or after the end of braking
  let end = 0;
  while (end < n - 1 && run.t[end] < tb) end++;
  const speed = -run.vy[0];
  const at = (values: Float64Array, k: number): ForcePeak => ({
    force: values[k],
    bodyWeights: values[k] / weight,
    t: run.t[k],
  });
  const peak = at(run.fy, top(run.fy, n));
  const smooth = runningMean(run.t, run.fy, n);
  const meanDeceleration = isBraked ? speed / tb : (speed + run.vy[end]) / tb;
  const joints = chain.joints.map(({ name }, j): JointLoad => {
    const k = top(run.torque[j], end + 1);
    let limited = 0;
    let furthest = run.q[j][0];
    for (let i = 0; i <= end; i++) {
      if (i < end && run.limited[j][i]) limited += run.t[i + 1] - run.t[i];
      if (Math.abs(run.q[j][i]) > Math.abs(furthest)) furthest = run.q[j][i];
    }
    return {
      joint: name,
      torque: run.torque[j][k],
      t: run.t[k],
      absorbed: 0 - run.jointWork[j][end],
      limitedShare: limited / run.t[end],
      furthest,
    };
  });
  const bound = boundOf(run, top(run.fy, n));
  return {
    speed,
    peak,
    ...(bound ? { bound } : {}),
    filteredPeak: at(smooth, top(smooth, n)),
    horizontalPeak: at(run.fx, top(run.fx, n)),
    riseTime: peak.t,
    ...(isBraked ? { brakeTime: tb } : {}),
    meanDeceleration,
    meanG: meanDeceleration / gravity,
    meanBodyWeights: meanDeceleration / gravity + 1,
    sinkage: run.sink.reduce((a, b) => Math.max(a, b), 0),
    joints,
    energy: energyUpTo(run, end),
    h: run.h[end],
    vx: run.vx[end],
    screen: screenAt(run, end),
    ending: run.ending,
  };
}

function energyUpTo(run: LandingRun, end: number): LandingEnergy {
  const parts = {
    arrived: run.kinetic[0] + run.potential[0] - run.potential[end],
    joints: run.jointWork.reduce((sum, w) => sum - w[end], 0),
    matLost: run.matLoss[end],
    matHeld: run.matHeld[end],
    solesLost: run.solesLoss[end],
    solesHeld: run.solesHeld[end],
    left: run.kinetic[end],
  };
  const { arrived, ...taken } = parts;
  return { ...parts, missed: Object.values(taken).reduce((a, b) => a - b, arrived) };
}

function screenAt(run: LandingRun, end: number): BalanceScreen {
  const { gravity, chain } = run.entry;
  const middle = (run.heel[end] + run.toe[end]) / 2;
  const height = Math.max(0.1, run.y[end] - run.spec.mat.surfaceY + run.sink[end]);
  const w0 = Math.sqrt(gravity / height);
  const plain = run.x[end] + run.vx[end] / w0 - middle;
  const turning = run.h[end] / (chain.mass * height * w0);
  return {
    plain,
    stopped: plain - turning,
    decaying: plain - turning / (1 + w0 * SETTLE),
    half: (run.toe[end] - run.heel[end]) / 2,
  };
}

function boundOf(run: LandingRun, k: number): BoundCause | undefined {
  const { mat } = run.spec;
  if (isBottomed(mat, run.sink[k])) return 'bottomedMat';
  if (isHard(mat)) return 'hardSurface';
  return run.stopped[k] ? 'jointStop' : undefined;
}

function top(values: Float64Array, count: number): number {
  let best = 0;
  for (let k = 1; k < count; k++) if (Math.abs(values[k]) > Math.abs(values[best])) best = k;
  return best;
}

/** Mean over WINDOW around each row; before touchdown the force is nothing, after the last row it is left out. */
function runningMean(t: Float64Array, values: Float64Array, n: number): Float64Array {
  const sum = new Float64Array(n);
  for (let k = 1; k < n; k++) sum[k] = sum[k - 1] + ((values[k] + values[k - 1]) / 2) * (t[k] - t[k - 1]);
  const upTo = (s: number): number => {
    const { i, share } = placeIn(t, s, n);
    return n > 1 ? sum[i] + share * (sum[i + 1] - sum[i]) : 0;
  };
  return values.map((_, k) => (upTo(t[k] + WINDOW / 2) - upTo(t[k] - WINDOW / 2)) / WINDOW);
}
