/**
 * Hands or feet led to their place. As contact-motion.ts has the body between the ends of a contact, they would leave it by decimetres; here arms turn at the shoulder and bend
 * at the elbow, legs at hip and knee, within their ranges, until each hand or foot is where it is put, attitude and mass centre left as they are. A limb that moves takes
 * the mass centre along in the body, so it is done in rounds. Entry and exit stay as they are, with their rates.
 */
import type { Body } from '../body/body.ts';
import { applyTInto } from '../math/rot.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { type Limb, placeLimb } from '../motion/limb.ts';
import { turnLimb } from '../motion/limb-turn.ts';
import { calcShapeMotion } from '../motion/shape-motion.ts';
import type { State } from '../motion/state.ts';
import { type LimbPlaces, leadingLimbs, limbPlacesInto } from './contact-limbs.ts';
import type { ContactMotion } from './contact-motion.ts';

/** m; a round leaves about a fifth of what was missing, or nearly all of it where a limb is too short */
const CLOSE = 1e-3;
const STALLS = 0.9;
const ROUNDS = 8;

/** Where each hand or foot is in W as the contact begins and as it ends: x, least height, z of each. */
interface LimbSpots {
  readonly first: Float64Array;
  readonly last: Float64Array;
  /** the entry was led back from the exit: hands or feet are put where they leave */
  readonly isAssumed: boolean;
}

export interface ContactLead {
  /**
   * Fills angles and state (shape and attitude; its momentum stays that of the motion unled) and the places as led at s, the mass centre at p (W) and the surface `depth` lower
   * than at the ends. Returns how far from its place the hand or foot is that is farthest off, m.
   */
  into(s: number, p: ArrayLike<number>, depth: number, angles: Float64Array, state: State): number;
}

export function makeContactLead(
  body: Body,
  by: 'hands' | 'feet',
  { first, last, isAssumed }: LimbSpots,
  motion: ContactMotion,
  places: LimbPlaces,
): ContactLead {
  const limbs = leadingLimbs(body, by);
  const x = new Array<number>(body.angles.length).fill(0);
  const spots = new Float64Array(first.length);
  const off = new Float64Array(first.length);
  return {
    into(s, p, depth, angles, state) {
      const share = isAssumed ? 1 : smooth(s);
      for (let i = 0; i < spots.length; i++) {
        const spot = isAssumed ? last[i] : first[i] + share * (last[i] - first[i]);
        spots[i] = spot - (i % 3 === 1 ? depth : 0) - p[i % 3];
      }
      motion.into(s, angles, state);
      for (let a = 0; a < angles.length; a++) x[a] = angles[a];
      limbPlacesInto(state, by, places);
      const led = smooth(isAssumed ? 1 : s / SETS_IN) * smooth((1 - s) / SETS_IN);
      // the goal of this instant: on the place, but for what is left as leading sets in
      for (let i = 0; i < off.length; i++) off[i] = (1 - led) * (places.spots[i] - spots[i]);
      let missed = Number.POSITIVE_INFINITY;
      for (let round = 0; round < ROUNDS; round++) {
        if (round > 0) limbPlacesInto(state, by, places);
        const missing = leadOnce(places, limbs, spots, off, x, state);
        if (missing === 0) break;
        hingesInto(body, x, state.sm.q);
        calcShapeMotion(state.sm);
        if (round > 1 && missing > STALLS * missed) break;
        missed = missing;
      }
      angles.set(x);
      limbPlacesInto(state, by, places);
      let most = 0;
      for (let i = 0; i < spots.length; i += 3)
        most = Math.max(most, Math.hypot(...[0, 1, 2].map((k) => places.spots[i + k] - spots[i + k])));
      return most;
    },
  };
}

const by_B = [0, 0, 0];

/** Returns how far the farthest was off before, m; 0 where nothing is left to lead. */
function leadOnce(
  { spots: now }: LimbPlaces,
  limbs: readonly Limb[],
  spots: Float64Array,
  off: Float64Array,
  x: number[],
  { R_WB }: State,
): number {
  let most = 0;
  limbs.forEach((limb, i) => {
    for (let k = 0; k < 3; k++) by_B[k] = spots[3 * i + k] + off[3 * i + k] - now[3 * i + k];
    const missing = Math.hypot(by_B[0], by_B[1], by_B[2]);
    if (missing < CLOSE) return;
    most = Math.max(most, missing);
    applyTInto(R_WB, 0, by_B, 0, by_B, 0);
    placeLimb(limb, x);
    const { p_BoE_B: e } = limb;
    turnLimb(limb, x, [e[0] + by_B[0], e[1] + by_B[1], e[2] + by_B[2]]);
  });
  return most;
}

/** Share of the contact over which leading sets in, and ceases: 2 to 10 ms, in which hands or feet are up to 1 cm off. */
const SETS_IN = 0.02;

function smooth(share: number): number {
  const u = Math.max(0, Math.min(1, share));
  return u * u * u * (10 + u * (6 * u - 15));
}
