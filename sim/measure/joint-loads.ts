/**
 * Torques against the strength known at their angle and speed. Up to 240 deg/s, what was measured, each instant counts. Faster,
 * strength is extrapolated, and when within a move the torque is needed follows from the curve laid between keys, not from the
 * keys: there a drive, torque in the sense of the motion without a break, counts as a whole. What it asks for in the mean is held
 * against what is known in the mean along it: a limb that is given at least the known torque all along is at the end as fast.
 */
import { type ActionStrength, FAST, leastStrengthAt, strengthAt } from '../body/action-strength.ts';
import type { Body } from '../body/body.ts';
import type { Frames } from './frames.ts';
import { type HingeStrength, rateOf, strengthOfHinges } from './known-strength.ts';

type LoadColumns = Pick<Frames, 'n' | 'angles' | 'qd' | 'tau'>;

interface JointLoad {
  readonly hinge: HingeStrength;
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
export function listLoads(body: Body, c: LoadColumns, share: number, at?: number): JointLoad[] {
  const out: JointLoad[] = [];
  strengthOfHinges(body).forEach((hinge, k) => {
    if (hinge.strength) new HingeLoads(body, c, hinge, hinge.strength, k, share, out).run(at);
  });
  return out;
}

class HingeLoads {
  private readonly na: number;
  private readonly nq: number;
  private readonly c: LoadColumns;
  private readonly hinge: HingeStrength;
  private readonly pair: readonly [ActionStrength, ActionStrength];
  private readonly k: number;
  private readonly share: number;
  private readonly out: JointLoad[];

  constructor(
    body: Body,
    c: LoadColumns,
    hinge: HingeStrength,
    pair: readonly [ActionStrength, ActionStrength],
    k: number,
    share: number,
    out: JointLoad[],
  ) {
    this.na = body.angles.length;
    this.nq = strengthOfHinges(body).length;
    this.c = c;
    this.hinge = hinge;
    this.pair = pair;
    this.k = k;
    this.share = share;
    this.out = out;
  }

  run(at?: number): void {
    const [first, last] = at === undefined ? [0, this.c.n - 1] : this.around(at);
    let from = first;
    while (from <= last) {
      let to = from;
      while (to < last && this.isDriven(from) && this.isOneDrive(from, to + 1)) to++;
      if (at === undefined) for (let i = from; i <= to; i++) this.instant(i);
      if (this.isDriven(from)) this.drive(from, to);
      from = to + 1;
    }
    if (at !== undefined) this.instant(at);
  }

  /** Rows of the drive that a row belongs to. */
  private around(at: number): [number, number] {
    let [from, to] = [at, at];
    if (this.isDriven(at)) {
      while (from > 0 && this.isOneDrive(at, from - 1)) from--;
      while (to < this.c.n - 1 && this.isOneDrive(at, to + 1)) to++;
    }
    return [from, to];
  }

  private torqueAt = (i: number): number => this.c.tau[this.nq * i + this.k];
  private strengthOf = (i: number): ActionStrength => this.pair[this.torqueAt(i) >= 0 ? 0 : 1];
  private rateAt = (i: number): number => rateOf(this.hinge, this.k, this.c, this.na * i, this.nq * i);
  private knownAt = (i: number, s: ActionStrength): number =>
    strengthAt(s, this.c.angles[this.na * i + this.hinge.angle], this.rateAt(i));
  private isDriven = (i: number): boolean => this.torqueAt(i) * this.rateAt(i) > 0;
  private isOneDrive = (a: number, b: number): boolean => this.isDriven(b) && this.strengthOf(a) === this.strengthOf(b);

  private instant(i: number): void {
    const torque = this.torqueAt(i);
    const s = this.strengthOf(i);
    const rate = this.rateAt(i);
    if (s.towards * rate > FAST || Math.abs(torque) <= this.share * leastStrengthAt(s, rate)) return;
    this.out.push({
      hinge: this.hinge,
      strength: s,
      row: i,
      from: i,
      to: i,
      torque,
      known: this.knownAt(i, s),
    });
  }

  private drive(from: number, to: number): void {
    const s = this.strengthOf(from);
    let [sum, least, row, fastest] = [0, 0, from, 0];
    for (let i = from; i <= to; i++) {
      const rate = this.rateAt(i);
      sum += this.torqueAt(i);
      least += leastStrengthAt(s, rate);
      if (Math.abs(this.torqueAt(i)) > Math.abs(this.torqueAt(row))) row = i;
      fastest = Math.max(fastest, s.towards * rate);
    }
    if (fastest <= FAST || Math.abs(sum) <= this.share * least) return;
    let known = 0;
    for (let i = from; i <= to; i++) known += this.knownAt(i, s);
    const n = to - from + 1;
    this.out.push({ hinge: this.hinge, strength: s, row, from, to, torque: sum / n, known: known / n });
  }
}
