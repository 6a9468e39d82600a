/**
 * Sizes of what is left and landed on, m. From memory, of the FIG apparatus norms and the World Aquatics facilities rules, unless
 * a line says otherwise. Length runs along the way of travel, width across it.
 */
import type { TakeoffPlace } from '../contact/impulse-presets.ts';

interface BlockSize {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** from what pushes off to the end that is left, along the way of travel: our judgement */
  readonly ahead: number;
}

export type BlockKind = Extract<TakeoffPlace, 'vaultTable' | 'springboard' | 'divingBoard'> | 'platform';

/** `thickness` is of the top, what carries it comes to that; that of the boards and how far the hands are from the end: our judgement. */
export const BLOCK_SIZES: Readonly<Record<BlockKind, BlockSize>> = {
  vaultTable: { length: 1.2, width: 0.95, thickness: 0.2, ahead: 0.4 },
  springboard: { length: 1.2, width: 0.6, thickness: 0.05, ahead: 0.25 },
  divingBoard: { length: 4.88, width: 0.51, thickness: 0.05, ahead: 0 },
  platform: { length: 6, width: 2, thickness: 0.2, ahead: 0 },
};

/** Who is neither has the men's. */
export const TABLE_HEIGHT = { female: 1.25, male: 1.35 } as const;

/** From this height over the water on a dive leaves a platform (5, 7.5, 10 m), under it a springboard (1, 3 m): between the two, our judgement. */
export const PLATFORM_FROM = 4;
/** A flight into water that begins less than this over it begins at the edge of the pool: our judgement. */
export const BOARD_OVER_WATER = 0.5;
/** The end of a board or platform is this far beyond the wall of the pool. */
export const OVER_POOL = 1.5;

/** Length and width of the bed, of its frame, and of the box that is marked in its middle; the bed's height over the floor. */
export const BED = { length: 4.28, width: 2.14, frameLength: 5.05, frameWidth: 2.91, boxLength: 2.15, boxWidth: 1.08 };
export const BED_HEIGHT = 1.155;

export const RAIL_WIDTH = 2.4;

/** Mats under bars, to both sides of the rail; their thickness. */
export const BAR_MATS = { reach: 6, thickness: 0.2 };
/** A mat that is landed on: how long; how far behind a table it begins (judgement). One that is on its own: 2.4 m long (judgement). */
export const LANDING_MAT = { length: 6, width: 2, behindTable: 0.5, alone: 2.4 };
/** A soft layer begins this far past the rail: our judgement. */
export const LAYER_PAST_RAIL = 0.3;
/** What is landed on reaches at least this far around the feet, as a surface has no end for the flight: our judgement. */
export const AROUND_FEET = 0.4;
