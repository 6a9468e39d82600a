/**
 * The raw record of a swing, the same from both engines: coordinates with their rates and accelerations at every step,
 * joint torques, and the running work of joints and loss of the rail. Coordinates: rail x, y from its rest place; angle of
 * the grip link; joint angles. Between steps cubic Hermite: coordinates from rates, rates from accelerations.
 */
import type { SwingEngine } from './swing-spec.ts';

export interface SwingRun {
  readonly engine: SwingEngine;
  readonly step: number;
  readonly joints: number;
  /** s from the start, ascending */
  readonly times: Float64Array;
  readonly count: number;
  readonly x: Float64Array; // (count x (3 + joints)) coordinates
  readonly v: Float64Array; // the same: rates
  readonly a: Float64Array; // the same: accelerations
  readonly torque: Float64Array; // (count x joints)
  readonly work: Float64Array; // (count) done by the joints since the start, J
  readonly loss: Float64Array; // (count) taken by the rail's damping since the start, J
  readonly power: Float64Array; // (count) rates of the two, W
  readonly losing: Float64Array;
  /** swing angle, counted on */
  readonly angle: Float64Array; // (count)
}

export interface RunRecord {
  readonly x: Float64Array;
  readonly v: Float64Array;
  readonly torque: Float64Array;
  work: number;
  loss: number;
  power: number;
  losing: number;
}

export function makeRunRecord(joints: number): RunRecord {
  const f = (n: number): Float64Array => new Float64Array(n);
  return { x: f(3 + joints), v: f(3 + joints), torque: f(joints), work: 0, loss: 0, power: 0, losing: 0 };
}

/** Index of the step at or before t (the last but one at most). */
export function stepAt(run: SwingRun, t: number): number {
  let low = 0;
  let high = Math.max(0, run.count - 2);
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if (run.times[mid] <= t) low = mid;
    else high = mid - 1;
  }
  return low;
}

/** The record at time t; at a step's end it is that step's own. */
export function readRun(run: SwingRun, t: number, out: RunRecord): void {
  const D = 3 + run.joints;
  const i = stepAt(run, t);
  const k = Math.min(i + 1, run.count - 1);
  const h = run.times[k] - run.times[i];
  const s = h > 0 ? Math.min(1, Math.max(0, (t - run.times[i]) / h)) : 0;
  for (let d = 0; d < D; d++) {
    const [p, q] = [i * D + d, k * D + d];
    out.x[d] = hermite(s, h, run.x[p], run.x[q], run.v[p], run.v[q]);
    out.v[d] = hermite(s, h, run.v[p], run.v[q], run.a[p], run.a[q]);
  }
  for (let j = 0; j < run.joints; j++) {
    const [p, q] = [i * run.joints + j, k * run.joints + j];
    out.torque[j] = run.torque[p] + s * (run.torque[q] - run.torque[p]);
  }
  out.work = hermite(s, h, run.work[i], run.work[k], run.power[i], run.power[k]);
  out.loss = hermite(s, h, run.loss[i], run.loss[k], run.losing[i], run.losing[k]);
}

function hermite(s: number, h: number, y0: number, y1: number, d0: number, d1: number): number {
  if (s === 0) return y0;
  if (s === 1) return y1;
  const r = 1 - s;
  return y0 * r * r * (1 + 2 * s) + y1 * s * s * (3 - 2 * s) + h * s * r * (d0 * r - d1 * s);
}

/** Columns that grow. */
export class RunBuilder {
  private readonly D: number;
  private readonly joints: number;
  private n = 0;
  private x: Float64Array;
  private v: Float64Array;
  private a: Float64Array;
  private torque: Float64Array;
  private work: Float64Array;
  private loss: Float64Array;
  private power: Float64Array;
  private losing: Float64Array;
  private times: Float64Array;
  private angle: Float64Array;

  constructor(joints: number, room: number) {
    this.D = 3 + joints;
    this.joints = joints;
    const f = (k: number): Float64Array => new Float64Array(k);
    [this.x, this.v, this.a] = [f(this.D * room), f(this.D * room), f(this.D * room)];
    this.torque = f(joints * room);
    [this.work, this.loss, this.power, this.losing] = [f(room), f(room), f(room), f(room)];
    [this.times, this.angle] = [f(room), f(room)];
  }

  get count(): number {
    return this.n;
  }

  add(t: number, record: RunRecord, acc: ArrayLike<number>, angle: number): void {
    const { n, D, joints } = this;
    if (n === this.times.length) this.grow();
    this.x.set(record.x, n * D);
    this.v.set(record.v, n * D);
    this.a.set(acc, n * D);
    this.torque.set(record.torque, n * joints);
    this.work[n] = record.work;
    this.loss[n] = record.loss;
    this.power[n] = record.power;
    this.losing[n] = record.losing;
    this.times[n] = t;
    this.angle[n] = angle;
    this.n++;
  }

  private grow(): void {
    const room = 2 * this.n + 8;
    const more = (old: Float64Array, width: number): Float64Array => {
      const made = new Float64Array(width * room);
      made.set(old);
      return made;
    };
    [this.x, this.v, this.a] = [more(this.x, this.D), more(this.v, this.D), more(this.a, this.D)];
    this.torque = more(this.torque, this.joints);
    [this.work, this.loss] = [more(this.work, 1), more(this.loss, 1)];
    [this.power, this.losing] = [more(this.power, 1), more(this.losing, 1)];
    [this.times, this.angle] = [more(this.times, 1), more(this.angle, 1)];
  }

  finish(engine: SwingEngine, step: number): SwingRun {
    const { n, D, joints } = this;
    return {
      engine,
      step,
      joints,
      count: n,
      times: this.times.subarray(0, n),
      x: this.x.subarray(0, n * D),
      v: this.v.subarray(0, n * D),
      a: this.a.subarray(0, n * D),
      torque: this.torque.subarray(0, n * joints),
      work: this.work.subarray(0, n),
      loss: this.loss.subarray(0, n),
      power: this.power.subarray(0, n),
      losing: this.losing.subarray(0, n),
      angle: this.angle.subarray(0, n),
    };
  }
}
