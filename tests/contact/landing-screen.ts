/**
 * Of sim/measure/touchdown-reach.ts, from a landing's entry to read the bands off runs. A screen of a landing from its touchdown alone: the point on the ground, from the middle of the soles, through which the forces
 * of a landing have to pass to leave the athlete over his feet. Taken as one blow that ends sinking at v, with what turning is
 * left stopped, and then as an inverted pendulum: a blow through p leaves vx - h / (m l) + (x - p) v / l, and XcoM over p asks
 *     p = x + (vx - h / (m l)) / (w0 + v / l),   w0 = sqrt(g / l), l the height of the mass centre over the soles.
 * Without sinking that is XcoM with turning stopped at once. The bands were read off 6,000 landings run to rest, of five athletes
 * at 2.5 to 5.5 m/s, -1.5 to 3 m/s forward, turning by up to 0.2 m h^2 a second, hips at 25 to 50 degrees, leaning as they come
 * (tests/contact/landing-bands.test.ts, docs/landing.md): edges within which as many lie as ended so. A run decides
 * better than they do, and it is said how often.
 */
import { makeChainTotals, pointInto, totalsInto } from '../../sim/contact/chain-motion.ts';
import { footPoints } from '../../sim/contact/feet.ts';
import { type LandingEntry, placeEntry } from '../../sim/contact/landing-entry.ts';
import type { MatName } from '../../sim/contact/mat.ts';

/** m from the middle of the soles, at the back and in front: up to there it is held, steps; beyond it is a fall. */
export interface ScreenBand {
  readonly held: readonly [number, number];
  readonly steps: readonly [number, number];
  /** of the 2,000 runs: share that ended as the band says; and of those that it says are held, step, fall */
  readonly agrees: number;
  readonly byWord: readonly [number, number, number];
}

export const SCREEN_BANDS: Readonly<Partial<Record<MatName, ScreenBand>>> = {
  competitionMat: { held: [-0.04, 0.05], steps: [-0.12, 0.07], agrees: 0.7785, byWord: [0.726, 0.54, 0.859] },
  withSoftLayer: { held: [-0.04, 0.04], steps: [-0.12, 0.07], agrees: 0.7745, byWord: [0.7, 0.505, 0.877] },
  floor: { held: [-0.04, 0.05], steps: [-0.13, 0.1], agrees: 0.7605, byWord: [0.818, 0.521, 0.853] },
};

/** As the words of a verdict by the band, from the middle outward. */
export const SCREEN_WORDS = ['held', 'steps', 'falls'] as const;

export function calcReach(entry: LandingEntry): { reach: number; heel: number; toe: number } {
  const { chain, gravity } = entry;
  const motion = placeEntry(entry);
  const whole = makeChainTotals();
  totalsInto(chain, motion, gravity, whole);
  const out = new Float64Array(4);
  let [heel, toe, sole] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  const feet = footPoints(chain);
  for (const { at, radius } of feet) {
    pointInto(chain, motion, at, out);
    heel = Math.min(heel, out[0] - radius);
    toe = Math.max(toe, out[0] + radius);
    sole += (out[1] - radius) / feet.length;
  }
  const middle = (heel + toe) / 2;
  const l = Math.max(0.1, whole.y - sole);
  const w0 = Math.sqrt(gravity / l);
  const reach = whole.x - middle + (whole.vx - whole.h / (chain.mass * l)) / (w0 + Math.max(0, -whole.vy) / l);
  return { reach, heel: heel - middle, toe: toe - middle };
}

/** Index into SCREEN_WORDS. */
export function placeOf({ held, steps }: ScreenBand, reach: number): number {
  const isIn = ([from, to]: readonly [number, number]): boolean => reach >= from && reach <= to;
  return isIn(held) ? 0 : isIn(steps) ? 1 : 2;
}
