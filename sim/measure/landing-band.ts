/**
 * What the landing model makes of a touchdown on both feet, read off its reach alone (touchdown-reach.ts). Taken from runs of the model in full by
 * tests/contact/landing-bands.test.ts; how often they disagree is in docs/landing.md. For skills that state no landing, and for batches, which run in full what
 * may be held.
 */

/** m of reach up to which a landing ends standing; with a small step; in steps; beyond it falls */
interface Edges {
  readonly stands: number;
  readonly smallStep: number;
  readonly steps: number;
}
interface LandingBand {
  readonly forward: Edges;
  readonly back: Edges;
}

/** The same on floor and mat, to the centimetre that they were read to. */
const BAND: LandingBand = {
  forward: { stands: 0.02, smallStep: 0.08, steps: 0.18 },
  back: { stands: 0.03, smallStep: 0.06, steps: 0.18 },
};
/** m: within this of what is held the screen is not to be trusted (judgement: the next word of 96 % of runs lies nearer) */
export const BLUR = 0.05;

export const bandOf = (surface: string | undefined): LandingBand | undefined =>
  surface === 'floor' || surface === 'mat' ? BAND : undefined;

export type BandPlace = 'stands' | 'smallStep' | 'steps' | 'falls';

interface BandVerdict {
  readonly place: BandPlace;
  readonly direction: 'forward' | 'back';
}

export function placeInBand(reach: number, band: LandingBand): BandVerdict {
  const direction = reach >= 0 ? 'forward' : 'back';
  const { stands, smallStep, steps } = band[direction];
  const away = Math.abs(reach);
  const place = away <= stands ? 'stands' : away <= smallStep ? 'smallStep' : away <= steps ? 'steps' : 'falls';
  return { place, direction };
}

/** Bounds of reach within which a landing is held, with a small step at most, m. */
export const heldWithin = ({ forward, back }: LandingBand): readonly [number, number] => [
  -back.smallStep,
  forward.smallStep,
];

/** Held by the screen, or so near to it that the model in full may hold it: the screen is not to be trusted. */
export function mayBeHeld(reach: number, band: LandingBand): boolean {
  const [low, high] = heldWithin(band);
  return reach > low - BLUR && reach < high + BLUR;
}
