/**
 * What the landing model makes of a touchdown on both feet, told from the screen alone (touchdown-balance.ts): how far the extrapolated mass centre may
 * lie beyond heels or toes. Fitted to runs of the model in full by tests/fit/landing-band.mjs; how often it disagrees with them is in docs/landing.md.
 * For skills that state no landing, and for batches, which run in full what lies within `blur` of an edge.
 */
import type { TouchdownBalance } from './touchdown-balance.ts';

/** m beyond the edge of the soles (negative: inside) up to which a landing ends standing, with a hop or a small step; in steps; beyond it falls */
interface Edges {
  readonly held: number;
  readonly stepped: number;
}
export interface LandingBand {
  readonly forward: Edges;
  readonly back: Edges;
  /** m: within this of an edge the screen is not to be trusted */
  readonly blur: number;
}

export type BandSurface = 'floor' | 'mat';

export const LANDING_BANDS: Readonly<Record<BandSurface, LandingBand>> = {
  floor: { forward: { held: 0.1, stepped: 0.4 }, back: { held: 0.1, stepped: 0.3 }, blur: 0.05 },
  mat: { forward: { held: 0.1, stepped: 0.4 }, back: { held: 0.1, stepped: 0.3 }, blur: 0.05 },
};

export const bandOf = (surface: string | undefined): LandingBand | undefined =>
  surface === 'floor' || surface === 'mat' ? LANDING_BANDS[surface] : undefined;

export type BandPlace = 'held' | 'steps' | 'falls';

export interface BandVerdict {
  readonly place: BandPlace;
  readonly direction: 'forward' | 'back';
  /** near an edge of the band: the model in full may say otherwise */
  readonly isNear: boolean;
}

export function placeInBand({ ahead, half }: TouchdownBalance, band: LandingBand): BandVerdict {
  const direction = ahead >= 0 ? 'forward' : 'back';
  const { held, stepped } = band[direction];
  const beyond = Math.abs(ahead) - half;
  return {
    place: beyond <= held ? 'held' : beyond <= stepped ? 'steps' : 'falls',
    direction,
    isNear: [held, stepped].some((edge) => Math.abs(beyond - edge) < band.blur),
  };
}

/** Bounds of `ahead` within which a landing is held, m. */
export const heldWithin = ({ forward, back }: LandingBand, half: number): readonly [number, number] => [
  -half - back.held,
  half + forward.held,
];
