/**
 * The start of a recorded flight by least squares: the momentum and the attitude from which the model, with the measured angles, comes nearest to
 * the attitudes measured in every row; if asked, also how the mass is shared out, which several recordings of one athlete have in
 * common. Speed and place of the mass centre are those of its parabola of 9.81 m/s2.
 *
 * What it is known to. Joint angles are measured too, and their noise makes the flight drift: errors that go together all along it, which
 * what is left over does not show. So every recording is drawn again many times with its own noise (redrawn.ts), one step of the search is
 * made from the answer, and the spread of the answers is taken. Not in it: a body that is another's, smoothing that took movement away, noise
 * that repeats from sample to sample: there no interval is given (NaN).
 */
import { DEG, turnedTo } from '../math/angles.ts';
import { calcDifferences, fitSteps } from '../math/least-squares.ts';
import { solveInPlace } from '../math/linear-solve.ts';
import { norm } from '../math/vec3.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';
import { type BodyShares, hasShares, sharesOf } from './body-shares.ts';
import { FittedRecording, type StartGuess } from './fitted-recording.ts';
import { testModel } from './model-test.ts';
import { placeErrors } from './place-errors.ts';
import type { FittedValue, RecordedStart, TakeoffFit } from './recording-study.ts';
import { redraw } from './redrawn.ts';

/** Recordings drawn again for a spread: known to a tenth of itself. */
const DRAWS = 40;
/** 97.5 % point of Student's t with DRAWS - 1 degrees of freedom. */
const WIDE = 2.02;
/** Box of the search: share of the momentum (and kg m2/s at least), rad, and times a share of the mass. */
const MOMENTUM_BOX = 0.5;
const LEAST_BOX = 5;
const TURN_BOX = 0.6;
const SHARE_BOX = 0.5;
/** Step of a difference, of the box. */
const STEP = 1e-3;
const ROUNDS = 12;
/** Parts of the flight that are fitted one after the other, each from the last one's answer: from a start that is far off the whole of a twist leads astray. */
const PARTS = [0.3, 0.6, 1];

interface FitProgress {
  readonly phase: 'search' | 'spread';
  readonly done: number;
  readonly of: number;
}

interface FittedFlight {
  readonly motion: ConditionedMotion;
  readonly start: RecordedStart;
}

interface FitOptions {
  /** all recordings are of one athlete, whose shares of mass are found too */
  readonly isShared?: boolean;
  /** recordings drawn again for what the answer is known to */
  readonly draws?: number;
}

/** One fit for each recording, in their order. A step at a time: who runs it may stop. */
export function* fitTakeoffSteps(
  flights: readonly FittedFlight[],
  { isShared = false, draws = DRAWS }: FitOptions = {},
): Generator<FitProgress, readonly TakeoffFit[]> {
  const recordings = flights.map(({ motion, start }) => new FittedRecording(motion, start));
  const body = flights[0].motion.posed.body;
  const shares = isShared && hasShares(body) ? sharesOf(body) : undefined;
  const box = new SearchBox(recordings, shares);
  const steps = box.middle().map(() => STEP);
  const restOf =
    (part: number) =>
    (x: readonly number[]): readonly number[] =>
      recordings.flatMap((r, k) => r.rest(box.guess(x, k), box.shares(x), part));
  const rest = restOf(1);
  let x: readonly number[] = box.middle();
  let rounds = 0;
  for (const part of PARTS) {
    const search = fitSteps(x, restOf(part), { rounds: ROUNDS, steps });
    let step = search.next();
    for (; !step.done; step = search.next()) {
      rounds++;
      yield { phase: 'search', done: rounds, of: ROUNDS * PARTS.length };
    }
    if (!step.value) throw new RangeError('the start of a search is always flown');
    x = step.value.x;
  }
  const J = calcDifferences(x, rest(x), rest, steps);
  const valuesAt = (y: readonly number[]): readonly number[] => recordings.flatMap((r, k) => box.values(r, y, k));
  const from = valuesAt(box.middle());
  const to = valuesAt(x);
  const squares = to.map(() => 0);
  for (let draw = 1; draw <= draws; draw++) {
    const again = recordings.flatMap(({ motion, start, quat }, k) => {
      const drawn = redraw(motion, quat, draw * recordings.length + k);
      return new FittedRecording(drawn.motion, start, drawn.quat).rest(box.guess(x, k), box.shares(x));
    });
    valuesAt(stepFrom(x, J, again)).forEach((v, i) => {
      squares[i] += (v - to[i]) ** 2;
    });
    yield { phase: 'spread', done: draw, of: draws };
  }
  // drawn noise does not repeat: where the recording's does, the spread would be several times too small
  const isKnown = !recordings.some((r) => isRepeating(r.motion));
  const spread = squares.map((s) => (isKnown ? WIDE * Math.sqrt(s / draws) : Number.NaN));
  const perRecording = to.length / recordings.length;
  return recordings.map((r, k) => {
    const at = perRecording * k;
    const start = r.startAt(box.guess(x, k), box.shares(x));
    const part = <T>(all: readonly T[]): readonly T[] => all.slice(at, at + perRecording);
    const wider = r.misfit(box.guess(x, k), box.shares(x));
    const known = part(spread).map((s) => wider * s);
    return {
      values: [...nameValues(part(from), part(to), known), ...placeErrors(r.motion)],
      ...r.left(box.guess(x, k), box.shares(x)),
      rounds,
      start,
      test: testModel(r.motion, start).test,
    };
  });
}

/** Share of the angles that move, in which noise that repeats is found, from which on it is the recording's: single series give false alarms. */
const REPEATING = 0.25;

function isRepeating({ reports, attitudeReport }: ConditionedMotion): boolean {
  const moved = reports.filter((report) => report.weight > 0);
  return attitudeReport.isCorrelated || moved.filter((r) => r.isCorrelated).length > REPEATING * moved.length;
}

/** Where in [0, 1] the unknowns of a search are. */
class SearchBox {
  private readonly recordings: readonly FittedRecording[];
  private readonly was: BodyShares | undefined;

  constructor(recordings: readonly FittedRecording[], was: BodyShares | undefined) {
    this.recordings = recordings;
    this.was = was;
  }

  middle(): number[] {
    return new Array<number>(6 * this.recordings.length + (this.was ? 2 : 0)).fill(0.5);
  }

  guess(x: readonly number[], k: number): StartGuess {
    const { h_Scm_W } = this.recordings[k].start;
    const size = Math.max(LEAST_BOX, MOMENTUM_BOX * norm(h_Scm_W));
    const at = (i: number): number => 2 * x[6 * k + i] - 1;
    return {
      h: [h_Scm_W[0] + size * at(0), h_Scm_W[1] + size * at(1), h_Scm_W[2] + size * at(2)],
      turn: [TURN_BOX * at(3), TURN_BOX * at(4), TURN_BOX * at(5)],
    };
  }

  shares(x: readonly number[]): BodyShares | undefined {
    if (!this.was) return undefined;
    const [arms, legs] = x.slice(-2).map((v) => 1 + SHARE_BOX * (2 * v - 1));
    return { arms: this.was.arms * arms, legs: this.was.legs * legs };
  }

  /** Momentum, attitude, and shares where they are found, as people read them. */
  values(r: FittedRecording, x: readonly number[], k: number): number[] {
    const guess = this.guess(x, k);
    const shares = this.shares(x);
    const { attitude } = r.startAt(guess, shares);
    return [
      ...guess.h,
      ...attitude.map((v, i) => turnedTo(v, r.start.attitude[i]) * DEG),
      ...(shares ? [shares.arms, shares.legs, 1 - shares.arms - shares.legs] : []),
    ];
  }
}

const NAMES: readonly Pick<FittedValue, 'name' | 'unit'>[] = [
  { name: 'momentumX', unit: 'kg·m²/s' },
  { name: 'momentumY', unit: 'kg·m²/s' },
  { name: 'momentumZ', unit: 'kg·m²/s' },
  { name: 'somersault', unit: 'deg' },
  { name: 'tilt', unit: 'deg' },
  { name: 'twist', unit: 'deg' },
  { name: 'arms', unit: 'share' },
  { name: 'legs', unit: 'share' },
  { name: 'trunk', unit: 'share' },
];

const nameValues = (from: readonly number[], to: readonly number[], spread: readonly number[]): FittedValue[] =>
  to.map((v, i) => ({ ...NAMES[i], from: from[i], to: v, plusMinus: spread[i] }));

/** One step of Gauss and Newton; J by columns. */
function stepFrom(x: readonly number[], J: readonly (readonly number[])[], rest: readonly number[]): number[] {
  const m = x.length;
  const N = new Float64Array(m * m);
  const right = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b < m; b++) for (let i = 0; i < rest.length; i++) N[a * m + b] += J[a][i] * J[b][i];
    for (let i = 0; i < rest.length; i++) right[a] += J[a][i] * rest[i];
  }
  // a body without moments about some axis leaves that turn open: no step then
  return solveInPlace(N, right, m) ? x.map((v, a) => v - right[a]) : [...x];
}
