/**
 * Where a body would have to be caught as its feet touch: the extrapolated mass centre over the soles, with what turning is left, as
 * if that were stopped at once,
 *     XcoM = x + v / w0 - h_Z / (m l w0),   w0 = sqrt(g / l),   l height of the mass centre over the surface
 * (Hof, Gazendam & Sinke 2005, J Biomech 38:1; the last term is the angular impulse that has to go through the feet, put as a velocity of the
 * mass centre: mechanics). A screen of what the landing model runs in full (docs/landing.md). World turned so that the athlete faces +x.
 */
import { calcContactPlaces } from '../motion/contact-places.ts';
import type { StateSource } from '../motion/state.ts';

export interface TouchdownBalance {
  /** XcoM from the middle of the soles, m: + forward as the athlete faces */
  readonly ahead: number;
  /** half of the soles' length, m */
  readonly half: number;
  /** speed of sinking, m/s */
  readonly sinking: number;
}

/** A flight is one. */
export interface TouchdownSource extends StateSource {
  readonly gravity: number;
  readonly duration: number;
  readonly surfaceY: number;
}

interface PointState {
  readonly x: number;
  readonly vx: number;
  /** over the surface, m */
  readonly height: number;
  readonly h: number;
  readonly mass: number;
  readonly gravity: number;
}

export function calcXcom({ x, vx, height, h, mass, gravity }: PointState): number {
  const w0 = Math.sqrt(gravity / height);
  return x + vx / w0 - h / (mass * height * w0);
}

/** `twist`: of F at the end, which says where the athlete faces; undefined for a body without feet, or without gravity. */
export function calcTouchdownBalance(flight: TouchdownSource, twist: number): TouchdownBalance | undefined {
  const { duration, gravity, body, surfaceY, h_Scm_W } = flight;
  const facing = Math.cos(twist) < 0 ? -1 : 1;
  const soles = calcContactPlaces(flight, duration).filter((p) => p.part === 'feet');
  const p = new Float64Array(3);
  const v = new Float64Array(3);
  flight.massCentreInto(duration, p, v);
  const height = p[1] - surfaceY;
  if (soles.length === 0 || !(gravity > 0) || !(height > 0)) return undefined;
  const xs = soles.map((s) => facing * s.x);
  const [heel, toe] = [Math.min(...xs), Math.max(...xs)];
  const xcom = calcXcom({
    x: facing * p[0],
    vx: facing * v[0],
    height,
    h: facing * h_Scm_W[2],
    mass: body.mass,
    gravity,
  });
  return { ahead: xcom - (heel + toe) / 2, half: (toe - heel) / 2, sinking: -v[1] };
}
