/** Momentum and attitude at take-off by least squares over the posed frames, and what the momentum is known to. */
import type { TakeoffSpec } from '../flight/flight.ts';
import { RAD } from '../math/angles.ts';
import { calcDifferences, fitSteps } from '../math/least-squares.ts';
import { solveInPlace } from '../math/linear-solve.ts';
import { normalQuantile } from '../math/normal.ts';
import { uniformsInto } from '../math/random.ts';
import { calcShapeMoments } from '../measure/shape-moments.ts';
import { type Flyer, makeFlyer } from '../skill/flyer.ts';
import { type LaunchedSkill, relaunch } from '../skill/launch.ts';
import type { PosedFrame } from './clip-pose.ts';
import { attitudesAt, type FlownAttitude } from './first-pose.ts';

/** What a hand is off, rad, nineteen of twenty (judgement, near to what the filming plan expects of one camera). */
const POSED_ERRORS = { somersault: 3 * RAD, tilt: 10 * RAD, twist: 12 * RAD, joint: 5 * RAD } as const;
/** From how much twist between its frames on a flight twists, rad (judgement: twice what twist is off). */
const TWISTS = 24 * RAD;
/** Less somersault between the frames than this, rad, is none (judgement). */
const UPRIGHT = 45 * RAD;

/** Box of the search: the momentum is at most so many times a first guess, or this, kg m2/s; rad. */
const MOMENTUM_BOX = 1.6;
const LEAST_BOX = 10;
const SPIN_BOX = 2;
const SOMERSAULT_BOX = 50 * RAD;
const TILT_BOX = 30 * RAD;
const TWIST_BOX = 60 * RAD;
const STEP = 1e-3;
const ROUNDS = 15;
/** A flight in a fit is integrated this well: far below what a hand is off. */
const TOLERANCE = 1e-7;
/** Where the search for a twisting take-off begins, rad of tilt beside the posed one: it has several valleys. */
const STARTS = [0, 5 * RAD, -5 * RAD];
/** Frames drawn again, and the 97.5 % point of Student's t with one less. */
const DRAWS = 20;
const WIDE = 2.09;
const SEED = 51;
/** Share of the momentum that the moments of a posed body are off by what no joint is led by, a spine that is rounded (measured with a hand that is known: tests/clip). */
const SHAPE = 0.025;
/** An attitude that is not defined: as far off as can be. */
const UNDEFINED = 3;

interface PosedFit {
  readonly takeoff: TakeoffSpec;
  readonly momentumPlusMinus: number;
  readonly isTwisting: boolean;
}

/** `skill`: with the schedule of the poses; `start`: its take-off, whose momentum and attitude are found. */
export function* fitPosedSteps(
  skill: LaunchedSkill,
  posed: readonly PosedFrame[],
  start: TakeoffSpec,
): Generator<{ readonly done: number; readonly of: number }, PosedFit> {
  const isTwisting = isTwist(posed);
  const first = posed[0];
  // a body that turns about its long axis without a somersault has its momentum along the vertical
  const isUpright = isTwisting && spanOf(posed.map((p) => p.somersault)) < UPRIGHT;
  const unknowns = isTwisting ? (isUpright ? 5 : 4) : 2;
  const steps = new Array<number>(unknowns).fill(STEP);
  const guess = guessMomentum(skill, posed, 'somersault');
  const spin = isUpright ? guessMomentum(skill, posed, 'twist') : 0;
  const box = Math.max(LEAST_BOX, MOMENTUM_BOX * Math.abs(guess));
  const untwisted = Math.round(first.twist / Math.PI) * Math.PI;
  const takeoffOf = (x: readonly number[]): TakeoffSpec => ({
    ...start,
    somersault: first.somersault + SOMERSAULT_BOX * (2 * x[0] - 1),
    tilt: isTwisting ? TILT_BOX * (2 * x[2] - 1) : 0,
    twist: isTwisting ? first.twist + TWIST_BOX * (2 * x[3] - 1) : untwisted,
    momentum: {
      kind: 'vector',
      h_Scm_W: [
        0,
        isUpright ? spin + Math.max(SPIN_BOX, Math.abs(spin)) * (2 * x[4] - 1) : 0,
        guess + box * (2 * x[1] - 1),
      ],
    },
  });
  const residualsOf = (of: Draw) => (x: readonly number[]) => {
    const takeoff = takeoffOf(x);
    const flight = of.flyer.fly(relaunch(of.skill, { takeoff }));
    const at = attitudesAt(
      flight,
      takeoff as FlownAttitude,
      of.posed.map((p) => p.t),
    );
    const off = of.posed.flatMap((p, i) => [
      over(at[i].somersault - p.somersault, POSED_ERRORS.somersault),
      ...(isTwisting
        ? [over(at[i].twist - p.twist, POSED_ERRORS.twist), over(at[i].tilt - p.tilt, POSED_ERRORS.tilt)]
        : []),
    ]);
    // a take-off is hardly tilted or turned, unless the poses ask for it
    return isTwisting
      ? [
          ...off,
          over(takeoff.tilt - clampTilt(first), POSED_ERRORS.tilt),
          over(takeoff.twist - first.twist, POSED_ERRORS.twist),
        ]
      : off;
  };
  const own = drawOf(skill, posed, posed[posed.length - 1].t);
  const rest = residualsOf(own);
  const starts = isTwisting ? STARTS : [0];
  const of = starts.length * ROUNDS + DRAWS;
  let done = 0;
  let best: { readonly x: readonly number[]; readonly cost: number } | undefined;
  for (const [k, tilt] of starts.entries()) {
    const x = [0.5, 0.5, 0.5 + (clampTilt(first) + tilt) / (2 * TILT_BOX), 0.5, 0.5].slice(0, unknowns);
    const search = fitSteps(x, rest, { rounds: ROUNDS, steps });
    let step = search.next();
    for (; !step.done; step = search.next()) yield { done: ++done, of };
    if (step.value && !(best && best.cost <= step.value.cost)) best = step.value;
    done = (k + 1) * ROUNDS;
    yield { done, of };
  }
  if (!best) throw new RangeError('the start of a search is always flown');
  const { x, cost } = best;
  const r = rest(x);
  const J = calcDifferences(x, r, rest, steps);
  let squares = 0;
  for (let k = 1; k <= DRAWS; k++) {
    const moved = residualsOf(redraw(skill, posed, k))(x);
    const by = stepOf(
      J,
      moved.map((v, i) => v - r[i]),
    );
    squares += (2 * box * by[1]) ** 2;
    done = starts.length * ROUNDS + k;
    yield { done, of };
  }
  const free = r.length - unknowns;
  // residuals are over twice a standard deviation
  const misfit = free > 0 ? Math.max(1, Math.sqrt((4 * cost) / free)) : 1;
  const takeoff = takeoffOf(x);
  const drawn = misfit * WIDE * Math.sqrt(squares / DRAWS);
  const momentum = guess + box * (2 * x[1] - 1);
  return { takeoff, momentumPlusMinus: Math.hypot(drawn, SHAPE * momentum), isTwisting };
}

export const isTwist = (posed: readonly PosedFrame[]): boolean => spanOf(posed.map((p) => p.twist)) > TWISTS;

const over = (v: number, error: number): number => (Number.isFinite(v) ? v : UNDEFINED) / error;
const spanOf = (v: readonly number[]): number => Math.max(...v) - Math.min(...v);
const clampTilt = ({ tilt }: PosedFrame): number => Math.max(-0.8 * TILT_BOX, Math.min(0.8 * TILT_BOX, tilt));

interface Draw {
  readonly skill: LaunchedSkill;
  readonly posed: readonly PosedFrame[];
  readonly flyer: Flyer;
}

/** Flown as far as the last frame: where it comes down says nothing of how it turns. */
const drawOf = (skill: LaunchedSkill, posed: readonly PosedFrame[], until: number): Draw => ({
  skill: relaunch(skill, { end: { kind: 'duration', duration: Math.max(0.05, until) } }),
  posed,
  flyer: makeFlyer({ tolerance: TOLERANCE, shapeTolerance: TOLERANCE }),
});

/** The frames as another hand would have posed them: what moves in the body, and how it lies. */
function redraw(skill: LaunchedSkill, posed: readonly PosedFrame[], draw: number): Draw {
  const { body, schedule } = skill;
  const { blocks, keys } = schedule;
  const moved = body.angles.map((_, a) => blocks.some((b) => b.pose[a] !== 0) || keys.some((k) => k.angle === a));
  const u = new Float64Array(posed.length * 3 + blocks.length * body.angles.length + keys.length);
  uniformsInto(SEED, draw, u);
  let at = 0;
  const off = (error: number): number => (error / 2) * normalQuantile(u[at++]);
  const turned = posed.map((p) => ({
    ...p,
    somersault: p.somersault + off(POSED_ERRORS.somersault),
    tilt: p.tilt + off(POSED_ERRORS.tilt),
    twist: p.twist + off(POSED_ERRORS.twist),
  }));
  const again = {
    ...schedule,
    blocks: blocks.map((b) => ({ ...b, pose: b.pose.map((v, a) => (moved[a] ? v + off(POSED_ERRORS.joint) : v)) })),
    keys: keys.map((k) => ({ ...k, value: k.value + off(POSED_ERRORS.joint) })),
  };
  return drawOf(relaunch(skill, { schedule: again }), turned, posed[posed.length - 1].t);
}

/** Of the turn that is posed, as if each shape were held from the middle of one frame to the next. */
function guessMomentum({ body }: LaunchedSkill, posed: readonly PosedFrame[], of: 'somersault' | 'twist'): number {
  const moment = (i: number): number =>
    calcShapeMoments(body, posed[i].angles)[of === 'somersault' ? 'lateral' : 'long'];
  let time = 0;
  for (let i = 1; i < posed.length; i++)
    time += ((posed[i].t - posed[i - 1].t) / 2) * (1 / moment(i) + 1 / moment(i - 1));
  const turned = posed[posed.length - 1][of] - posed[0][of];
  return turned / time;
}

/** The step of Gauss and Newton that takes `r` out; J by columns. */
function stepOf(J: readonly (readonly number[])[], r: readonly number[]): number[] {
  const m = J.length;
  const N = new Float64Array(m * m);
  const right = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b < m; b++) for (let i = 0; i < r.length; i++) N[a * m + b] += J[a][i] * J[b][i];
    for (let i = 0; i < r.length; i++) right[a] += J[a][i] * r[i];
  }
  return solveInPlace(N, right, m)
    ? Array.from(right, (v) => -v)
    : (right.map(() => Number.NaN) as unknown as number[]);
}
