/**
 * Of sim/measure/touchdown-reach.ts, from a landing's entry and with every rank, to read the bands off runs. A screen of a landing from its touchdown alone: the point on the ground, from the middle of the soles, through which the forces
 * of a landing have to pass to leave the athlete over his feet. Taken as one blow that ends sinking at v, with what turning is
 * left stopped, and then as an inverted pendulum: a blow through p leaves vx - h / (m l) + (x - p) v / l, and XcoM over p asks
 *     p = x + (vx - h / (m l)) / (w0 + v / l),   w0 = sqrt(g / l), l the height of the mass centre over the soles.
 * Without sinking that is XcoM with turning stopped at once. The bands were read off 3,000 landings run to rest, of five athletes
 * at 2.5 to 5.5 m/s, -1.5 to 3 m/s forward, turning by up to 0.3 m h^2 a second, hips at 25 to 50 degrees, leaning as they come
 * (tests/contact/landing-bands.test.ts, docs/landing.md): edges that put the fewest into a wrong rank, each rank counted alike. A
 * run decides better than they do, and it is said how often.
 */
import { makeChainTotals, pointInto, totalsInto } from '../../sim/contact/chain-motion.ts';
import { footPoints } from '../../sim/contact/feet.ts';
import { type LandingEntry, placeEntry } from '../../sim/contact/landing-entry.ts';
import type { MatName } from '../../sim/contact/mat.ts';

/** m from the middle of the soles, at the back and in front: up to there it stands, small steps, steps; beyond it is a fall. */
interface ScreenBand {
  readonly stands: readonly [number, number];
  readonly smallStep: readonly [number, number];
  readonly steps: readonly [number, number];
  /** of the 1,000 runs, share that ended as the band says; and as it says or next to it */
  readonly agrees: number;
  readonly agreesNearly: number;
}

export const SCREEN_BANDS: Readonly<Partial<Record<MatName, ScreenBand>>> = {
  competitionMat: {
    stands: [-0.03, 0.02],
    smallStep: [-0.06, 0.08],
    steps: [-0.18, 0.18],
    agrees: 0.68,
    agreesNearly: 0.96,
  },
  withSoftLayer: {
    stands: [-0.03, 0.02],
    smallStep: [-0.06, 0.08],
    steps: [-0.18, 0.18],
    agrees: 0.68,
    agreesNearly: 0.96,
  },
  floor: {
    stands: [-0.03, 0.02],
    smallStep: [-0.06, 0.08],
    steps: [-0.18, 0.18],
    agrees: 0.69,
    agreesNearly: 0.96,
  },
};

export type ScreenWord = 'stands' | 'smallStep' | 'steps' | 'fall';

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

export function wordOf(band: ScreenBand, reach: number): ScreenWord {
  const isIn = ([from, to]: readonly [number, number]): boolean => reach >= from && reach <= to;
  return isIn(band.stands) ? 'stands' : isIn(band.smallStep) ? 'smallStep' : isIn(band.steps) ? 'steps' : 'fall';
}
