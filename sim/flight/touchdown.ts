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

export const CLEARANCE = 0.005;
export const LONGEST_FLIGHT = 10;

export interface Parabola {
  readonly y0: number;
  readonly v0: number;
  readonly gravity: number;
}
export const heightAt = (p: Parabola, t: number): number => p.y0 + t * (p.v0 - (p.gravity * t) / 2);

/** Longest distance of any contact sphere's far side from the root origin, over all poses. */
export function reachOf(body: Body): number {
  const far: number[] = [];
  body.segments.forEach((s, i) => {
    far[i] = s.parent < 0 ? 0 : far[s.parent] + Math.hypot(...s.p_PoBo_P);
  });
  const root = body.contacts.map((c) => far[c.segment] + Math.hypot(...c.p_BoC_B) + c.radius);
  const centre = body.segments.map((s, i) => far[i] + Math.hypot(...s.p_BoBcm_B));
  return Math.max(0, ...root) + Math.max(0, ...centre);
}

/** Walks along the growing track and finds the touchdown in it. */
export class TouchdownFinder {
  private readonly sm: ShapeMotion;
  private readonly heights: Float64Array;
  private readonly quat = new Float64Array(4);
  private readonly R_WB = new Float64Array(9);
  private readonly reach: number;
  private cleared: boolean;
  private before: { t: number; value: number } | undefined;
  private readonly body: Body;
  private readonly schedule: Schedule;
  private readonly parabola: Parabola;
  private readonly surfaceY: number;

  /** `cleared`: every contact has been clear of the surface before (a flight taken up on its way) */
  constructor(body: Body, schedule: Schedule, parabola: Parabola, surfaceY: number, cleared = false) {
    this.cleared = cleared;
    this.body = body;
    this.schedule = schedule;
    this.parabola = parabola;
    this.surfaceY = surfaceY;
    this.sm = makeShapeMotion(getModel(body));
    this.heights = new Float64Array(body.contacts.length);
    this.reach = reachOf(body);
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
    for (const v of this.heights) if (v < low) low = v;
    return heightAt(this.parabola, t) + low - this.surfaceY;
  }

  /** Index of the lowest contact at the time last asked of. */
  lowest(): number {
    let k = 0;
    for (let i = 1; i < this.heights.length; i++) if (this.heights[i] < this.heights[k]) k = i;
    return k;
  }

  /** Searches the last step of the track; the time of touchdown if it lies there. */
  inLastStep(track: DenseTrack): number | undefined {
    const to = track.times[track.steps];
    const from = track.times[track.steps - 1];
    const pieces = Math.max(1, Math.ceil((to - from) / SAMPLE));
    if (!this.before) this.before = { t: from, value: this.clearance(track, from) };
    for (let i = 1; i <= pieces; i++) {
      const t = i === pieces ? to : from + ((to - from) * i) / pieces;
      // far above the surface nothing can touch
      if (heightAt(this.parabola, t) - this.surfaceY > this.reach + 0.01) {
        this.cleared = true;
        this.before = { t, value: this.reach };
        continue;
      }
      const value = this.clearance(track, t);
      const hit = this.between(track, this.before, { t, value });
      if (hit !== undefined) return hit;
      this.before = { t, value };
    }
    return undefined;
  }

  private between(
    track: DenseTrack,
    a: { t: number; value: number },
    b: { t: number; value: number },
  ): number | undefined {
    if (!this.cleared) {
      if (Math.max(a.value, b.value) > CLEARANCE) this.cleared = true;
      if (!this.cleared || b.value > 0) return undefined;
      return a.value > 0 ? this.root(track, a.t, b.t) : undefined;
    }
    if (b.value <= 0) return this.root(track, a.t, b.t);
    // both clear, but a limb may dip in between: look at the lowest point of the interval
    if (Math.min(a.value, b.value) < DIP) {
      const low = this.minimum(track, a.t, b.t);
      if (this.clearance(track, low) < 0) return this.root(track, a.t, low);
    }
    return undefined;
  }

  /** Bracketed root of the clearance: bisection with the secant's help (Illinois), to 1e-13 s. */
  private root(track: DenseTrack, from: number, to: number): number {
    let [a, b] = [from, to];
    let fa = this.clearance(track, a);
    let fb = this.clearance(track, b);
    for (let i = 0; i < 80 && b - a > 1e-13; i++) {
      let m = i % 8 === 7 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
      if (!(m > a && m < b)) m = (a + b) / 2;
      const fm = this.clearance(track, m);
      if (fm === 0) return m;
      if (fm > 0) {
        a = m;
        fa = fm;
        fb /= 2;
      } else {
        b = m;
        fb = fm;
        fa /= 2;
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
    if (this.body.contacts.length === 0) return 'this body has no contact points; state a duration instead';
    if (!this.cleared)
      return `no moment within ${LONGEST_FLIGHT} s at which every contact point is ${CLEARANCE * 1000} mm clear of the surface, so the body never takes off from it`;
    if (!(this.parabola.gravity > 0))
      return `gravity is zero and nothing meets the surface within ${LONGEST_FLIGHT} s; state a duration instead`;
    return `nothing meets the surface within ${LONGEST_FLIGHT} s; lower the upward speed or state a duration`;
  }
}

/** Clearance is looked at this often, s: a foot at 10 m/s moves 4 cm between two looks, and dips are searched for. */
const SAMPLE = 1 / 240;
/** Two looks both clear by less than this are searched for a dip between them, m. */
const DIP = 0.02;
