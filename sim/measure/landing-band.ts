/**
 * What the landing model makes of a touchdown on both feet, read off its reach alone (touchdown-reach.ts). Taken from runs of the model in full by
 * tests/contact/landing-bands.test.ts; how often they disagree is in docs/landing.md. For skills that state no landing, and for batches, which run in full what
 * may be held.
 */

import type { TouchdownReach } from './touchdown-reach.ts';

/** m of reach up to which a landing is held, with a small step at most; steps; beyond it falls */
interface Edges {
  readonly held: number;
  readonly steps: number;
}
interface LandingBand {
  readonly forward: Edges;
  readonly back: Edges;
}

/** As many touchdowns lie within an edge as ended so or better: shares are right over the whole. To the centimetre. */
const BANDS: Readonly<Record<'floor' | 'mat', LandingBand>> = {
  floor: {
    forward: { held: 0.05, steps: 0.1 },
    back: { held: 0.04, steps: 0.13 },
  },
  mat: {
    forward: { held: 0.05, steps: 0.07 },
    back: { held: 0.04, steps: 0.12 },
  },
};
/**
 * m h^2 a second (m the mass, h the stature) of turning left at touchdown, up to which touchdowns within the edge of what is held are mostly held: of
 * 500 that turn by 0.2 to 0.3, half of those that turn backward, a third of the others. Faster ones, as straight somersaults are, the model run in full
 * seldom holds and gymnasts do: the band goes on for them, and says so.
 */
export const MOST_TURNING = 0.2;
/**
 * kg m^2/s for each kg m^2 of m h^2: judgement. No run of ours that turned faster was held, and gymnasts hold double straights at 0.6
 * (docs/landing.md): of those no ending is said. Straight singles come down at 0.3 to 0.4.
 */
export const MOST_JUDGED_TURNING = 0.4;
/** m: within this of what is held the screen is not to be trusted (judgement; with it batches say held or not as the model in full in 99.9 %) */
export const BLUR = 0.05;

export const bandOf = (surface: string | undefined): LandingBand | undefined =>
  surface === 'floor' || surface === 'mat' ? BANDS[surface] : undefined;

export type BandPlace = 'held' | 'steps' | 'falls';

interface BandVerdict {
  readonly place: BandPlace;
  readonly direction: 'forward' | 'back';
  /** turns by more than the band was read for */
  readonly isFast?: true;
}

export function placeInBand(
  { reach, turning }: Pick<TouchdownReach, 'reach' | 'turning'>,
  band: LandingBand,
): BandVerdict {
  const direction = reach >= 0 ? 'forward' : 'back';
  const { held, steps } = band[direction];
  const away = Math.abs(reach);
  const place = away <= held ? 'held' : away <= steps ? 'steps' : 'falls';
  const isFast = Math.abs(turning) > MOST_TURNING;
  return { place, direction, ...(isFast ? { isFast } : {}) };
}

/** Bounds of reach within which a landing is held, with a small step at most, m. */
export const heldWithin = ({ forward, back }: LandingBand): readonly [number, number] => [-back.held, forward.held];

/** Held by the screen, or so near to it that the model in full may hold it: the screen is not to be trusted. */
export function mayBeHeld(reach: number, band: LandingBand): boolean {
  const [low, high] = heldWithin(band);
  return reach > low - BLUR && reach < high + BLUR;
}
