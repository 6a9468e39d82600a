/**
 * What a film of a flight could be known to: the flight is filmed, its joints are marked with a known error, and what comes of it goes through the
 * project's own reading: posed, smoothed, momentum summed. Again and again with other draws; what is read against what was flown. Each number
 * is twice the root mean square error: about nineteen of twenty are nearer.
 */
import { bodyFramesOf, courseOf } from '../fit/attitude-course.ts';
import type { Flight } from '../flight/flight.ts';
import { uniformsInto } from '../math/random.ts';
import type { Triple } from '../math/vec3.ts';
import { spanBetween } from '../recording/air-span.ts';
import { conditionMotion } from '../recording/condition.ts';
import { posePoints } from '../recording/pose-points.ts';
import { posedOfFlight } from '../recording/posed-flight.ts';
import { calcRecordedMomentum } from '../recording/recorded-momentum.ts';
import { type Marked, markedPoints, markPoints } from './digitised.ts';

/** m, of each coordinate of a marked point, and share of a frame that every instant may be off to each side (judgement). */
const MARKING = { noise: 0.01, frame: 0.5 } as const;
const USUAL_SEEDS = 10;

/** NaN: not known, or not defined. Twice the root mean square. */
interface AttitudeErrors {
  readonly somersault: number; // rad
  readonly tilt: number;
  readonly twist: number;
  /** of the angular momentum, share of its size */
  readonly momentum: number;
}

export interface ExpectedErrors {
  /** s: take-off and touchdown, each anywhere in a frame */
  readonly airTime: number;
  readonly one: AttitudeErrors;
  readonly two: AttitudeErrors;
  /** films that were read for each; 0: none, of a body that is no human or in a flight too short */
  readonly seeds: number;
}

const UNKNOWN: AttitudeErrors = { somersault: NaN, tilt: NaN, twist: NaN, momentum: NaN };
/** Rows in which nothing would be gained by more: a faster camera is read at so many a second. */
const MOST_HZ = 120;
/** A recording of so few rows is not read. */
const FEWEST = 16;

interface Sums {
  rows: number;
  somersault: number;
  tilt: number;
  twist: number;
  runs: number;
  momentum: number;
}

/** What a film by one camera at `eye` (in W) would be known to, and one by two. Yields the share done. */
export function* expectErrors(
  flight: Flight,
  framesHz: number,
  eye: Triple,
  seeds = USUAL_SEEDS,
): Generator<number, ExpectedErrors> {
  // two times anywhere in a frame differ by sqrt(1/6) of it, root mean square
  const airTime = (2 * Math.sqrt(1 / 6)) / framesHz;
  const marked = markedPoints(flight.body);
  const rateHz = framesHz / Math.max(1, Math.round(framesHz / MOST_HZ));
  const n = Math.floor(flight.duration * rateHz);
  if (!marked || n < FEWEST) return { airTime, one: UNKNOWN, two: UNKNOWN, seeds: 0 };
  const sums = { one: fresh(), two: fresh() };
  for (let seed = 1; seed <= seeds; seed++)
    for (const [k, kind] of (['one', 'two'] as const).entries()) {
      const run = readOnce(
        flight,
        marked,
        { rateHz, framesHz, n, seed: 2 * seed + k, ...(kind === 'one' ? { eye } : {}) },
        sums[kind],
      );
      let step = run.next();
      while (!step.done) {
        yield (seed - 1 + (k + step.value) / 2) / seeds;
        step = run.next();
      }
    }
  const two = errorsOf(sums.two);
  // its own reading of the tilt is that of a depth from foreshortened limbs: not what anybody would go by
  return { airTime, one: { ...errorsOf(sums.one), tilt: NaN }, two, seeds };
}

const fresh = (): Sums => ({ rows: 0, somersault: 0, tilt: 0, twist: 0, runs: 0, momentum: 0 });

const errorsOf = ({ rows, runs, ...sum }: Sums): AttitudeErrors => ({
  somersault: 2 * Math.sqrt(sum.somersault / rows),
  tilt: 2 * Math.sqrt(sum.tilt / rows),
  twist: 2 * Math.sqrt(sum.twist / rows),
  momentum: 2 * Math.sqrt(sum.momentum / runs),
});

interface Draw {
  readonly rateHz: number;
  readonly framesHz: number;
  readonly n: number;
  readonly seed: number;
  readonly eye?: Triple;
}

/** One film of it, read. */
function* readOnce(flight: Flight, marked: readonly Marked[], draw: Draw, sums: Sums): Generator<number, void> {
  const { rateHz, framesHz, n, seed, eye } = draw;
  const u = new Float64Array(1);
  uniformsInto(seed, 1e6, u);
  const phase = (2 * u[0] - 1) * (MARKING.frame / framesHz);
  const t = Float64Array.from({ length: n - 1 }, (_, i) => (i + 1) / rateHz);
  const { points } = markPoints(flight, marked, { t, phase, noise: MARKING.noise, seed, ...(eye ? { eye } : {}) });
  const posing = posePoints(flight.body, marked, points, t, rateHz);
  let step = posing.next();
  while (!step.done) {
    yield 0.9 * step.value;
    step = posing.next();
  }
  const { posed } = step.value.rows;
  const motion = conditionMotion(posed, spanBetween(posed, t[0], t[t.length - 1]), {
    smoothing: { kind: 'gcv' },
    longestGap: 0.1,
  });
  yield 0.95;
  const read = courseOf(bodyFramesOf(flight.body, motion.quat_WB, motion.angles));
  const flown = posedOfFlight(flight, t);
  const truth = courseOf(bodyFramesOf(flight.body, flown.quat_WB, flown.angles));
  const size = Math.hypot(...flight.h_Scm_W);
  for (let i = 0; i < t.length; i++) {
    const off = [
      read.somersault[i] - truth.somersault[i],
      read.tilt[i] - truth.tilt[i],
      read.twist[i] - truth.twist[i],
    ];
    if (off.some(Number.isNaN)) continue;
    sums.rows++;
    sums.somersault += off[0] ** 2;
    sums.tilt += off[1] ** 2;
    sums.twist += off[2] ** 2;
  }
  const { mean } = calcRecordedMomentum(motion);
  sums.runs++;
  sums.momentum += (Math.hypot(...mean.map((v, k) => v - flight.h_Scm_W[k])) / size) ** 2;
}
