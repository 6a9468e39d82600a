/**
 * A torque over time against the strength known at its angle and speed. Up to 240 deg/s, what was measured, each instant counts.
 * Faster, strength is extrapolated, and when within a move the torque is needed follows from the curve laid between keys, not from the
 * keys: there a drive, torque in the sense of the motion without a break, counts as a whole. What it asks for in the mean is held
 * against what is known in the mean along it: a limb that is given at least the known torque all along is at the end as fast.
 */
import { type ActionStrength, FAST, leastStrengthAt, strengthAt } from '../body/action-strength.ts';

/** One joint over evenly spaced rows. */
interface TorqueCourse {
  readonly rows: number;
  /** of one limb, towards + and - */
  readonly strength: readonly [ActionStrength, ActionStrength];
  /** limbs that act as one */
  readonly limbs: number;
  torqueAt(row: number): number;
  angleAt(row: number): number;
  rateAt(row: number): number;
}

export interface TorqueLoad {
  readonly strength: ActionStrength;
  /** row of the instant, or of the largest torque of a drive */
  readonly row: number;
  /** rows of a drive, both included; the same row twice for an instant */
  readonly from: number;
  readonly to: number;
  /** at `row`, rad/s, + towards larger values of the angle */
  readonly rate: number;
  /** N m asked for, signed; N m known */
  readonly torque: number;
  readonly known: number;
}

/** Share of the still torque that a fit of such curves leaves open: 4 to 5 % (Forrester 2011, abstract). Less is never warned of. */
export const OPEN = 0.05;

/** Each load that may be more than `share` of what is known; all of them for 0. `at`: those of one row alone. */
export function listTorqueLoads(course: TorqueCourse, share: number, at?: number): TorqueLoad[] {
  const out: TorqueLoad[] = [];
  if (at === undefined) {
    seeRows(course, share, 0, course.rows - 1, true, out);
    return out;
  }
  const isOneDrive = (i: number): boolean =>
    course.torqueAt(i) * course.rateAt(i) > 0 && course.torqueAt(i) * course.torqueAt(at) > 0;
  let [from, to] = [at, at];
  while (from > 0 && isOneDrive(at) && isOneDrive(from - 1)) from--;
  while (to < course.rows - 1 && isOneDrive(at) && isOneDrive(to + 1)) to++;
  seeRows(course, share, from, to, false, out);
  seeInstant(course, share, at, course.torqueAt(at), course.rateAt(at), out);
  return out;
}

function seeRows(
  course: TorqueCourse,
  share: number,
  first: number,
  last: number,
  instants: boolean,
  out: TorqueLoad[],
): void {
  let from = -1;
  let sign = 0;
  for (let i = first; i <= last; i++) {
    const torque = course.torqueAt(i);
    const rate = course.rateAt(i);
    const isDriven = torque * rate > 0;
    if (from >= 0 && !(isDriven && torque * sign > 0)) {
      seeDrive(course, share, from, i - 1, out);
      from = -1;
    }
    if (isDriven && from < 0) {
      from = i;
      sign = torque;
    }
    if (instants) seeInstant(course, share, i, torque, rate, out);
  }
  if (from >= 0) seeDrive(course, share, from, last, out);
}

const knownAt = (course: TorqueCourse, s: ActionStrength, i: number): number =>
  course.limbs * strengthAt(s, course.angleAt(i), course.rateAt(i));

function seeInstant(
  course: TorqueCourse,
  share: number,
  i: number,
  torque: number,
  rate: number,
  out: TorqueLoad[],
): void {
  const s = course.strength[torque >= 0 ? 0 : 1];
  const size = Math.abs(torque) / course.limbs;
  if (share > 0 && (size <= OPEN * s.still || size <= share * leastStrengthAt(s, rate))) return;
  if (s.towards * rate <= FAST)
    out.push({ strength: s, row: i, from: i, to: i, rate, torque, known: knownAt(course, s, i) });
}

function seeDrive(course: TorqueCourse, share: number, from: number, to: number, out: TorqueLoad[]): void {
  const s = course.strength[course.torqueAt(from) >= 0 ? 0 : 1];
  let [sum, row, fastest] = [0, from, 0];
  for (let i = from; i <= to; i++) {
    const torque = course.torqueAt(i);
    sum += torque;
    if (Math.abs(torque) > Math.abs(course.torqueAt(row))) row = i;
    fastest = Math.max(fastest, s.towards * course.rateAt(i));
  }
  const n = to - from + 1;
  if (fastest <= FAST || (share > 0 && Math.abs(sum) <= n * course.limbs * OPEN * s.still)) return;
  let known = 0;
  for (let i = from; i <= to; i++) known += knownAt(course, s, i);
  if (Math.abs(sum) > share * known)
    out.push({ strength: s, row, from, to, rate: course.rateAt(row), torque: sum / n, known: known / n });
}
