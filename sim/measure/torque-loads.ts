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
  /** N m asked for, signed; N m known */
  readonly torque: number;
  readonly known: number;
}

/** Each load that may be more than `share` of what is known; all of them for 0. `at`: those of one row alone. */
export function listTorqueLoads(course: TorqueCourse, share: number, at?: number): TorqueLoad[] {
  const { rows, limbs, strength: pair } = course;
  const out: TorqueLoad[] = [];
  const strengthOf = (i: number): ActionStrength => pair[course.torqueAt(i) >= 0 ? 0 : 1];
  const knownAt = (i: number, s: ActionStrength): number => limbs * strengthAt(s, course.angleAt(i), course.rateAt(i));
  const isDriven = (i: number): boolean => course.torqueAt(i) * course.rateAt(i) > 0;
  const isOneDrive = (a: number, b: number): boolean => isDriven(b) && strengthOf(a) === strengthOf(b);

  const seeInstant = (i: number): void => {
    const torque = course.torqueAt(i);
    const s = strengthOf(i);
    const rate = course.rateAt(i);
    if (s.towards * rate > FAST || Math.abs(torque) <= share * limbs * leastStrengthAt(s, rate)) return;
    out.push({ strength: s, row: i, from: i, to: i, torque, known: knownAt(i, s) });
  };
  const seeDrive = (from: number, to: number): void => {
    const s = strengthOf(from);
    let [sum, least, row, fastest] = [0, 0, from, 0];
    for (let i = from; i <= to; i++) {
      const rate = course.rateAt(i);
      const torque = course.torqueAt(i);
      sum += torque;
      least += limbs * leastStrengthAt(s, rate);
      if (Math.abs(torque) > Math.abs(course.torqueAt(row))) row = i;
      fastest = Math.max(fastest, s.towards * rate);
    }
    if (fastest <= FAST || Math.abs(sum) <= share * least) return;
    let known = 0;
    for (let i = from; i <= to; i++) known += knownAt(i, s);
    const n = to - from + 1;
    out.push({ strength: s, row, from, to, torque: sum / n, known: known / n });
  };

  if (at !== undefined) {
    let [from, to] = [at, at];
    while (from > 0 && isDriven(at) && isOneDrive(at, from - 1)) from--;
    while (to < rows - 1 && isDriven(at) && isOneDrive(at, to + 1)) to++;
    if (isDriven(at)) seeDrive(from, to);
    seeInstant(at);
    return out;
  }
  for (let from = 0; from < rows; ) {
    let to = from;
    const isDrive = isDriven(from);
    while (isDrive && to < rows - 1 && isOneDrive(from, to + 1)) to++;
    for (let i = from; i <= to; i++) seeInstant(i);
    if (isDrive) seeDrive(from, to);
    from = to + 1;
  }
  return out;
}
