/**
 * What the landing model makes of a touchdown on both feet, read off its reach alone (touchdown-reach.ts). Taken from runs of the model in full by
 * tests/contact/landing-bands.test.ts; how often they disagree is in docs/landing.md. For skills that state no landing, and for batches, which run in full what
 * lies within `blur` of an edge.
 */

/** m of reach up to which a landing ends standing, with a hop or a small step; in steps; beyond it falls */
interface Edges {
  readonly held: number;
  readonly stepped: number;
}
interface LandingBand {
  readonly forward: Edges;
  readonly back: Edges;
  /** m: within this of an edge the screen is not to be trusted */
  readonly blur: number;
}

type BandSurface = 'floor' | 'mat';

const LANDING_BANDS: Readonly<Record<BandSurface, LandingBand>> = {
  floor: { forward: { held: 0.1, stepped: 0.19 }, back: { held: 0.1, stepped: 0.18 }, blur: 0.05 },
  mat: { forward: { held: 0.11, stepped: 0.19 }, back: { held: 0.09, stepped: 0.18 }, blur: 0.05 },
};

export const bandOf = (surface: string | undefined): LandingBand | undefined =>
  surface === 'floor' || surface === 'mat' ? LANDING_BANDS[surface] : undefined;

export type BandPlace = 'held' | 'steps' | 'falls';

interface BandVerdict {
  readonly place: BandPlace;
  readonly direction: 'forward' | 'back';
  /** near an edge of the band: the model in full may say otherwise */
  readonly isNear: boolean;
}

export function placeInBand(reach: number, band: LandingBand): BandVerdict {
  const direction = reach >= 0 ? 'forward' : 'back';
  const { held, stepped } = band[direction];
  const away = Math.abs(reach);
  return {
    place: away <= held ? 'held' : away <= stepped ? 'steps' : 'falls',
    direction,
    isNear: [held, stepped].some((edge) => Math.abs(away - edge) < band.blur),
  };
}

/** Bounds of reach within which a landing is held, m. */
export const heldWithin = ({ forward, back }: LandingBand): readonly [number, number] => [-back.held, forward.held];
