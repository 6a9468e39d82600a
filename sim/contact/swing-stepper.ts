/**
 * Takes a swing forward: the classical Runge-Kutta method at a fixed step (order 4), cut where a key is met, where a joint
 * comes to its limit and where it leaves it, so that what is integrated is smooth within a step. No step depends on when the
 * hands let go: swings that differ in that alone share one record.
 */
import { DrivenJoints } from './driven-joints.ts';
import { directionOf, type Hang, makeAsked, startOf } from './hang.ts';
import { LimitedJoints } from './limited-joints.ts';
import type { SwingEquations } from './swing-equations.ts';
import { makeRunRow, type RunRow, SwingRun } from './swing-run.ts';

/** s; measured in docs/numerics.md */
export const STEP = 2e-3;

export class SwingStepper {
  readonly run: SwingRun;
  private readonly hang: Hang;
  private readonly step: number;
  private readonly row: RunRow;
  private readonly driven: DrivenJoints;
  private limited?: LimitedJoints;
  /** one of the two */
  private equations: SwingEquations;
  /** excess at the start of a step */
  private slack = 0;
  /** piece of what is integrated at the start of a step */
  private piece = 0;
  private phi: number;
  private size = 0;
  /** derivatives: at the start of a step, within it, and the state it starts from */
  private first: Float64Array = new Float64Array(0);
  private k2: Float64Array = this.first;
  private k3: Float64Array = this.first;
  private k4: Float64Array = this.first;
  private mid: Float64Array = this.first;
  private saved: Float64Array = this.first;

  constructor(hang: Hang) {
    const joints = hang.chain.joints.length;
    this.hang = hang;
    this.step = hang.spec.step ?? STEP;
    this.run = new SwingRun(joints);
    this.row = makeRunRow(joints);
    const asked = makeAsked(joints);
    const start = startOf(hang, asked);
    this.phi = start.phi;
    this.driven = new DrivenJoints(hang, start, asked);
    this.equations = this.driven;
    this.resize();
    this.equations.derive(0, this.equations.state, this.first);
    if (this.equations.excess() > 0) this.change(0);
    this.keep(0);
  }

  /** Follows the swing until its record reaches t. */
  advanceTo(t: number): SwingRun {
    while (this.run.last < t) this.next();
    return this.run;
  }

  /** One step more; where the moves cannot be followed, the same error each time it is asked for. */
  next(): void {
    if (this.failure !== undefined) throw this.failure;
    try {
      this.takeStep();
    } catch (error) {
      this.failure = error;
      throw error;
    }
  }
  private failure: unknown;

  private takeStep(): void {
    const { hang, step, saved, first } = this;
    const { moves, sense } = hang;
    const t = this.run.last;
    saved.set(this.equations.state);
    // a strength that goes by angle and speed bends more within a step than moves do
    let h = this.limited ? step / 2 : step;
    // steps end at the keys, where q'' has a kink: across one the method would fall to order 2
    if (moves.over === 'time') {
      for (const b of moves.breaks) if (b > t + NEAREST && b < t + h) h = b - t;
      this.advance(t, h);
    } else {
      this.advance(t, h);
      const [u0, u1] = [sense * this.phi, sense * this.equations.direction(t + h, this.phi)];
      const key = firstBetween(moves.breaks, u0, u1);
      if (key !== undefined) {
        h = hit(h, u0 - key, u1 - key, (x) => {
          this.advance(t, x);
          return sense * this.equations.direction(t + x, this.phi) - key;
        });
      }
    }
    const { state } = this.equations;
    this.equations.derive(t + h, state, this.k4);
    if (this.equations.piece() !== this.piece) h = this.endPiece(t, h);
    const beyond = this.equations.excess();
    if (beyond > LEAST_EXCESS) {
      h = hit(h, Math.min(this.slack, -LEAST_EXCESS), beyond, (x) => {
        this.advance(t, x);
        this.equations.derive(t + x, state, this.k4);
        return this.equations.excess();
      });
      if (h < SHORTEST) {
        h = SHORTEST;
        this.advance(t, h);
        this.equations.derive(t + h, state, this.k4);
      }
      this.change(t + h);
    } else first.set(this.k4);
    this.keep(t + h);
  }

  /** The strength of a joint at its limit has come to another smooth piece within h: the step that ends just beyond, taken. */
  private endPiece(t: number, h: number): number {
    const go = (x: number): boolean => {
      this.advance(t, x);
      this.equations.derive(t + x, this.equations.state, this.k4);
      return this.equations.piece() !== this.piece;
    };
    let [lo, hi] = [0, h];
    while (hi - lo > SHORTEST / 100) {
      const x = (lo + hi) / 2;
      if (go(x)) hi = x;
      else lo = x;
    }
    const end = Math.min(h, Math.max(hi, SHORTEST));
    go(end);
    return end;
  }

  /** From `saved` and `first` by h, into the state. */
  private advance(t: number, h: number): void {
    const { equations, saved, first, k2, k3, k4, mid, size } = this;
    const y = equations.state;
    for (let d = 0; d < size; d++) mid[d] = saved[d] + (h / 2) * first[d];
    equations.derive(t + h / 2, mid, k2);
    for (let d = 0; d < size; d++) mid[d] = saved[d] + (h / 2) * k2[d];
    equations.derive(t + h / 2, mid, k3);
    for (let d = 0; d < size; d++) mid[d] = saved[d] + h * k3[d];
    equations.derive(t + h, mid, k4);
    for (let d = 0; d < size; d++) y[d] = saved[d] + (h / 6) * (first[d] + 2 * (k2[d] + k3[d]) + k4[d]);
  }

  /** A joint has come to its limit or leaves it, at t: from here on what is integrated is another. Fills `first`. */
  private change(t: number): void {
    if (!this.limited) {
      this.limited = new LimitedJoints(this.hang);
      this.limited.begin(this.driven, this.phi);
      this.equations = this.limited;
      this.run.limitedFrom = t;
      this.resize();
    }
    this.limited.change(t, this.first);
  }

  private keep(t: number): void {
    const { row, hang, run } = this;
    this.equations.rowInto(this.first, row);
    this.phi = directionOf(hang, this.phi);
    this.slack = this.equations.excess();
    this.piece = this.equations.piece();
    run.add(t, row, hang.sense * this.phi);
  }

  private resize(): void {
    this.size = this.equations.state.length;
    const f = (): Float64Array => new Float64Array(this.size);
    [this.first, this.k2, this.k3, this.k4, this.mid, this.saved] = [f(), f(), f(), f(), f(), f()];
  }
}

/** s or rad: a key this near is where the step has come to already */
const NEAREST = 1e-9;
/** N m, or rad/s^2: less is rounding */
const LEAST_EXCESS = 1e-7;
/** s: a step to the next change of a joint is this long at least */
const SHORTEST = 1e-7;

/** The key first met on the way from u0 to u1. */
function firstBetween(keys: readonly number[], u0: number, u1: number): number | undefined {
  let found: number | undefined;
  for (const k of keys) {
    const isBetween = u1 > u0 ? k > u0 + NEAREST && k < u1 : k < u0 - NEAREST && k > u1;
    if (isBetween && (found === undefined || Math.abs(k - u0) < Math.abs(found - u0))) found = k;
  }
  return found;
}

/** Root of f on (0, h), by regula falsi with halving; f has been called last at the root. */
function hit(h: number, f0: number, f1: number, f: (x: number) => number): number {
  let [lo, hi, fl, fh] = [0, h, f0, f1];
  let x = h;
  for (let i = 0; i < 50; i++) {
    x = i % 4 === 3 ? (lo + hi) / 2 : lo - (fl * (hi - lo)) / (fh - fl);
    const v = f(x);
    if (Math.abs(v) < NEAREST / 10) break;
    if (v > 0 === fl > 0) [lo, fl] = [x, v];
    else [hi, fh] = [x, v];
  }
  return x;
}
