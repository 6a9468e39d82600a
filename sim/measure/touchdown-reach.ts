/**
 * A landing on the feet by its touchdown alone: the point on the ground, from the middle of the soles, through which the forces of the landing have to pass
 * to leave the athlete over his feet. Taken as one blow that ends the sinking at v, with what turning is left stopped, then as an inverted pendulum: a blow through p
 * leaves vx - h / (m l) + (x - p) v / l, and the extrapolated mass centre (Hof, Gazendam & Sinke 2005, J Biomech 38:1) over p asks
 *     p = x + (vx - h / (m l)) / (w0 + v / l),   w0 = sqrt(g / l), l the height of the mass centre over the soles.
 * A screen of what the landing model runs in full (docs/landing.md). World turned so that the athlete faces +x.
 */
import { calcContactPlaces } from '../motion/contact-places.ts';
import type { StateSource } from '../motion/state.ts';

/** A flight is one. */
export interface TouchdownSource extends StateSource {
  readonly gravity: number;
  readonly duration: number;
}

interface PointState {
  readonly x: number;
  readonly vx: number;
  /** of sinking, m/s */
  readonly sinking: number;
  /** over the soles, m */
  readonly height: number;
  readonly h: number;
  readonly mass: number;
  readonly gravity: number;
}

/** m, + forward. */
function calcReach({ x, vx, sinking, height, h, mass, gravity }: PointState): number {
  const w0 = Math.sqrt(gravity / height);
  return x + (vx - h / (mass * height)) / (w0 + Math.max(0, sinking) / height);
}

/** Of a touchdown on the feet, as the athlete faces. */
export interface TouchdownReach {
  /** m, + forward */
  readonly reach: number;
  /** angular momentum about the mass centre, kg m^2/s for each kg m^2 of m h^2 (h the stature): + backward */
  readonly turning: number;
  /** the same, kg m^2/s */
  readonly momentum: number;
}

/** m; of a body whose stature is not known, as the landing takes it */
const STATURE = 1.7;

/** `twist`: of F at the end, which says where he faces. Undefined for a body without feet, and without gravity. */
export function calcTouchdownReach(flight: TouchdownSource, twist: number): TouchdownReach | undefined {
  const { duration, gravity, body, h_Scm_W } = flight;
  const facing = Math.cos(twist) < 0 ? -1 : 1;
  const soles = calcContactPlaces(flight, duration).filter((p) => p.part === 'feet');
  const p = new Float64Array(3);
  const v = new Float64Array(3);
  flight.massCentreInto(duration, p, v);
  const height = p[1] - soles.reduce((sum, s) => sum + s.low, 0) / soles.length;
  if (soles.length === 0 || !(gravity > 0) || !(height > 0)) return undefined;
  const heel = Math.min(...soles.map((s) => facing * s.x - s.radius));
  const toe = Math.max(...soles.map((s) => facing * s.x + s.radius));
  const middle = (heel + toe) / 2;
  const h = facing * h_Scm_W[2];
  const { mass } = body;
  return {
    reach: calcReach({ x: facing * p[0] - middle, vx: facing * v[0], sinking: -v[1], height, h, mass, gravity }),
    turning: h / (mass * (body.stature ?? STATURE) ** 2),
    momentum: h,
  };
}
