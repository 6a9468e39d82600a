/**
 * Touchdown: the first downward crossing of the surface by any contact sphere after all of them have cleared it by
 * 5 mm. Heights are measured as clearance = height of the mass centre + lowest point relative to it - surface.
 */
import type { Body } from '../body/body.ts';
import { matOfQuatInto } from '../math/rot.ts';
import { getModel } from '../motion/model.ts';
import { contactHeightsInto } from '../motion/pose.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { Schedule } from '../schedule/schedule.ts';
import type { DenseTrack } from './dense-track.ts';
import type { EndSpec } from './flight.ts';

const CLEARANCE = 0.005;
export const LONGEST_FLIGHT = 10;

export interface Parabola {
  readonly y0: number;
  readonly v0: number;
  readonly gravity: number;
}
export const heightAt = (p: Parabola, t: number): number => p.y0 + t * (p.v0 - (p.gravity * t) / 2);

type MetSurface = Extract<EndSpec, { kind: 'touchdown' }>['surface'];

/** Walks along the growing track and finds the touchdown in it. */
export class TouchdownFinder {
  private readonly sm: ShapeMotion;
  private readonly heights: Float64Array;
  private readonly quat = new Float64Array(4);
  private readonly R_WB = new Float64Array(9);
  private cleared: boolean;
  /** the last look and the one before it */
  private now: { t: number; value: number } | undefined;
  private before: { t: number; value: number } | undefined;
  private next = 0;
  private readonly schedule: Schedule;
  private readonly parabola: Parabola;
  private readonly surfaceY: number;
  /** (contacts): 1 where it may meet the surface */
  private readonly counts: Uint8Array;

  /** `cleared`: every contact has been clear of the surface before (a flight taken up on its way) */
  constructor(body: Body, schedule: Schedule, parabola: Parabola, { y, by }: MetSurface, cleared = false) {
    this.cleared = cleared;
    this.schedule = schedule;
    this.parabola = parabola;
    this.surfaceY = y;
    this.counts = Uint8Array.from(body.contacts, ({ part }) => (by === undefined || part === by ? 1 : 0));
    this.sm = makeShapeMotion(getModel(body));
    this.heights = new Float64Array(body.contacts.length);
  }

  get canMeet(): boolean {
    return this.counts.includes(1);
  }

  get everCleared(): boolean {
    return this.cleared;
  }

  /** Least clearance over all contacts at t, m. */
  clearance(track: DenseTrack, t: number): number {
    this.schedule.evalInto(t, this.sm.q, this.sm.qd, this.sm.qdd);
    calcShapeMotion(this.sm);
    track.valueInto(t, this.quat);
    matOfQuatInto(this.quat, 0, this.R_WB, 0);
    contactHeightsInto(this.sm, this.R_WB, this.heights);
    let low = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.heights.length; i++)
      if (this.counts[i] === 1 && this.heights[i] < low) low = this.heights[i];
    return heightAt(this.parabola, t) + low - this.surfaceY;
  }

  /** Index of the lowest contact at the time last asked of. */
  lowest(): number {
    let k = -1;
    for (let i = 0; i < this.heights.length; i++)
      if (this.counts[i] === 1 && (k < 0 || this.heights[i] < this.heights[k])) k = i;
    return k;
  }

  /** Searches the last step of the track; the time of touchdown if it lies there. */
  inLastStep(track: DenseTrack): number | undefined {
    const to = track.times[track.steps];
    if (!this.now) this.look(track, track.times[track.steps - 1]);
    while (this.next <= to) {
      const hit = this.look(track, this.next);
      if (hit !== undefined) return hit;
    }
    return undefined;
  }

  /** Looks at the clearance at t, sets the time of the next look, and returns the touchdown passed since the last one. */
  private look(track: DenseTrack, t: number): number | undefined {
    const value = this.clearance(track, t);
    const a = this.now;
    const older = this.before;
    this.before = a;
    this.now = { t, value };
    this.next = t + Math.min(LONGEST_LOOK, Math.max(SHORTEST_LOOK, value / FASTEST));
    const wasClear = this.cleared;
    if (value > CLEARANCE) this.cleared = true;
    if (!a) return undefined;
    if (value <= 0) return wasClear && a.value > 0 ? this.root(track, a.t, t) : undefined;
    // clear at three looks, lowest at the middle one: a limb may dip to the surface around it
    if (wasClear && older && a.value < DIP && a.value <= older.value && a.value <= value) {
      const low = this.minimum(track, older.t, t);
      if (this.clearance(track, low) <= 0) return this.root(track, older.t, low);
    }
    return undefined;
  }

  /** Bracketed root of the clearance (regula falsi, Illinois: Dowell & Jarratt 1971, BIT 11:168), to 1e-13 s. */
  private root(track: DenseTrack, from: number, to: number): number {
    let [a, b] = [from, to];
    let fa = this.clearance(track, a);
    let fb = this.clearance(track, b);
    let side = 0;
    for (let i = 0; i < 80 && b - a > 1e-13; i++) {
      let m = i % 10 === 9 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
      if (!(m > a && m < b)) m = (a + b) / 2;
      const fm = this.clearance(track, m);
      if (fm > 0) {
        a = m;
        fa = fm;
        if (side > 0) fb /= 2;
        side = 1;
      } else {
        b = m;
        fb = fm;
        if (fm > -1e-14) break;
        if (side < 0) fa /= 2;
        side = -1;
      }
    }
    this.clearance(track, b);
    return b;
  }

  private minimum(track: DenseTrack, from: number, to: number): number {
    const g = (Math.sqrt(5) - 1) / 2;
    let [a, b] = [from, to];
    for (let i = 0; i < 24; i++) {
      const m = b - g * (b - a);
      const n = a + g * (b - a);
      if (this.clearance(track, m) < this.clearance(track, n)) b = n;
      else a = m;
    }
    return (a + b) / 2;
  }

  /** Why there was none. */
  cause(): string {
    if (!this.canMeet)
      return `this body has no ${this.counts.length === 0 ? 'contact points' : 'such hands or feet'}; state a duration instead`;
    if (!this.cleared)
      return `no moment within ${LONGEST_FLIGHT} s at which every contact point is ${CLEARANCE * 1000} mm clear of the surface, so the body never takes off from it`;
    if (!(this.parabola.gravity > 0))
      return `gravity is zero and nothing meets the surface within ${LONGEST_FLIGHT} s; state a duration instead`;
    return `nothing meets the surface within ${LONGEST_FLIGHT} s; lower the upward speed or state a duration`;
  }
}

/** No contact is taken to near the surface faster than this, m/s: the time to the next look follows from the clearance. */
const FASTEST = 25;
const SHORTEST_LOOK = 1 / 240;
const LONGEST_LOOK = 0.05;
/** A lowest look clear by less than this is searched for a dip to the surface, m: 25 m/s for half a shortest look. */
const DIP = 0.06;
