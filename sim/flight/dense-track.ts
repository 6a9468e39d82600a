/** The accepted steps of a quaternion's integration with their dense output (order 7; Hairer, Norsett & Wanner, II.6). */
import { lastUpTo } from '../math/sorted.ts';

/** Plain data of a track. */
export interface TrackData {
  readonly times: readonly number[];
  readonly coefs: Float64Array;
}

export class DenseTrack {
  /** ends of the steps: times[0] is the start */
  readonly times: number[];
  rejected = 0;
  evaluations = 0;
  /** largest change that normalising a step's result made */
  drift = 0;
  private coefs = new Float64Array(32 * 128);
  private last = 0;

  constructor(t0: number) {
    this.times = [t0];
  }

  static of({ times, coefs }: TrackData): DenseTrack {
    const track = new DenseTrack(times[0]);
    for (let i = 1; i < times.length; i++) track.times.push(times[i]);
    track.coefs = Float64Array.from(coefs);
    return track;
  }

  data(): TrackData {
    return { times: this.times, coefs: this.coefs.slice(0, 32 * this.steps) };
  }

  get steps(): number {
    return this.times.length - 1;
  }

  /** Adds a step with its 8 rows of 4: y0 and F1..F7. */
  push(tEnd: number, rows: Float64Array): void {
    const at = 32 * this.steps;
    if (at + 32 > this.coefs.length) {
      const more = new Float64Array(2 * this.coefs.length);
      more.set(this.coefs);
      this.coefs = more;
    }
    this.coefs.set(rows, at);
    this.times.push(tEnd);
  }

  /** y at t inside the track; not normalised. */
  valueInto(t: number, y: Float64Array): void {
    const i = this.stepAt(t);
    const c = this.coefs;
    const t0 = this.times[i];
    const x = (t - t0) / (this.times[i + 1] - t0);
    const z = 1 - x;
    for (let k = 0, o = 32 * i; k < 4; k++, o++)
      y[k] =
        c[o] +
        x *
          (c[o + 4] +
            z * (c[o + 8] + x * (c[o + 12] + z * (c[o + 16] + x * (c[o + 20] + z * (c[o + 24] + x * c[o + 28]))))));
  }

  private stepAt(t: number): number {
    const { times } = this;
    const i = this.last;
    if (i < this.steps && times[i] <= t && t <= times[i + 1]) return i;
    this.last = lastUpTo(times, t, this.steps);
    return this.last;
  }
}
