/**
 * The raw record of a swing: coordinates with their rates and accelerations at every step, joint torques, and the running
 * work of joints and loss of the rail. Coordinates: rail x, y from its rest place; angle of the grip link; joint angles.
 * Between steps cubic Hermite: coordinates from rates, rates from accelerations.
 */
import { lastUpTo } from '../math/sorted.ts';

/** One row, or what lies between two. */
export interface RunRow {
  readonly x: Float64Array; // (3 + joints) coordinates
  readonly v: Float64Array; // their rates
  readonly a: Float64Array; // their accelerations; at a row only
  readonly torque: Float64Array; // (joints)
  work: number; // done by the joints since the start, J
  loss: number; // taken by the rail's damping since the start, J
  power: number; // rates of the two, W
  losing: number;
}

export function makeRunRow(joints: number): RunRow {
  const f = (n: number): Float64Array => new Float64Array(n);
  const D = 3 + joints;
  return { x: f(D), v: f(D), a: f(D), torque: f(joints), work: 0, loss: 0, power: 0, losing: 0 };
}

/** Columns that grow: only the first `count` rows hold anything. */
export class SwingRun {
  readonly joints: number;
  count = 0;
  /** s from the start, ascending */
  times: Float64Array = new Float64Array(ROOM);
  /** swing angle, counted on */
  angle: Float64Array = new Float64Array(ROOM);
  x: Float64Array; // (count x (3 + joints))
  v: Float64Array; // the same
  a: Float64Array; // the same
  torque: Float64Array; // (count x joints)
  work: Float64Array = new Float64Array(ROOM);
  loss: Float64Array = new Float64Array(ROOM);
  power: Float64Array = new Float64Array(ROOM);
  losing: Float64Array = new Float64Array(ROOM);
  /** s from which on some joint has been at its limit */
  limitedFrom = Number.POSITIVE_INFINITY;

  constructor(joints: number) {
    this.joints = joints;
    const width = ROOM * (3 + joints);
    [this.x, this.v, this.a] = [new Float64Array(width), new Float64Array(width), new Float64Array(width)];
    this.torque = new Float64Array(ROOM * joints);
  }

  get last(): number {
    return this.times[this.count - 1];
  }

  add(t: number, row: RunRow, angle: number): void {
    const n = this.count;
    if (n === this.times.length) this.grow();
    const D = 3 + this.joints;
    this.x.set(row.x, n * D);
    this.v.set(row.v, n * D);
    this.a.set(row.a, n * D);
    this.torque.set(row.torque, n * this.joints);
    this.work[n] = row.work;
    this.loss[n] = row.loss;
    this.power[n] = row.power;
    this.losing[n] = row.losing;
    this.times[n] = t;
    this.angle[n] = angle;
    this.count++;
  }

  private grow(): void {
    const twice = (old: Float64Array): Float64Array => {
      const made = new Float64Array(2 * old.length);
      made.set(old);
      return made;
    };
    [this.x, this.v, this.a, this.torque] = [twice(this.x), twice(this.v), twice(this.a), twice(this.torque)];
    [this.times, this.angle] = [twice(this.times), twice(this.angle)];
    [this.work, this.loss] = [twice(this.work), twice(this.loss)];
    [this.power, this.losing] = [twice(this.power), twice(this.losing)];
  }
}
const ROOM = 1024;

/** Index of the step at or before t (the last but one at most). */
const stepAt = (run: SwingRun, t: number): number => lastUpTo(run.times, t, run.count - 1);

/** The record at time t, but for accelerations; at a step's end it is that step's own. Returns the index of the step. */
export function readRun(run: SwingRun, t: number, out: RunRow): number {
  const i = readCoordinates(run, t, out.x, out.v);
  const k = Math.min(i + 1, run.count - 1);
  const h = run.times[k] - run.times[i];
  const s = shareOf(run, i, h, t);
  for (let j = 0; j < run.joints; j++) {
    const [p, q] = [i * run.joints + j, k * run.joints + j];
    out.torque[j] = s === 1 ? run.torque[q] : run.torque[p] + s * (run.torque[q] - run.torque[p]);
  }
  out.work = hermite(s, h, run.work[i], run.work[k], run.power[i], run.power[k]);
  out.loss = hermite(s, h, run.loss[i], run.loss[k], run.losing[i], run.losing[k]);
  return i;
}

/** Coordinates and rates alone. */
export function readCoordinates(run: SwingRun, t: number, x: Float64Array, v: Float64Array): number {
  const D = 3 + run.joints;
  const i = stepAt(run, t);
  const k = Math.min(i + 1, run.count - 1);
  const h = run.times[k] - run.times[i];
  const s = shareOf(run, i, h, t);
  for (let d = 0; d < D; d++) {
    const p = i * D + d;
    const q = k * D + d;
    x[d] = hermite(s, h, run.x[p], run.x[q], run.v[p], run.v[q]);
    v[d] = hermite(s, h, run.v[p], run.v[q], run.a[p], run.a[q]);
  }
  return i;
}

const shareOf = (run: SwingRun, i: number, h: number, t: number): number =>
  h > 0 ? Math.min(1, Math.max(0, (t - run.times[i]) / h)) : 0;

function hermite(s: number, h: number, y0: number, y1: number, d0: number, d1: number): number {
  if (s === 0) return y0;
  if (s === 1) return y1;
  const r = 1 - s;
  return y0 * r * r * (1 + 2 * s) + y1 * s * s * (3 - 2 * s) + h * s * r * (d0 * r - d1 * s);
}
