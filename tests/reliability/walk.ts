// A walk through the page with a seed: what is drawn, how often, and how the page ends at a drawn instant.

/** What a step can be, with its weight. */
export const WALK_STEPS = [
  /** a key of the table of commands */
  ['command', 5],
  /** the next tool of all in turn */
  ['tool', 3],
  /** something that can be pressed, of what is seen */
  ['press', 6],
  /** letters into a field, ended in a drawn way or not at all */
  ['type', 4],
  /** from something that can be dragged, in some moves, let go or not */
  ['drag', 6],
  /** an edge of a shape, a little: what most surely changes the skill */
  ['edge', 4],
  ['undo', 2],
] as const;
export type WalkStep = (typeof WALK_STEPS)[number][0];

/** How a page ends. In a gesture too: nothing is let go before. */
export const WALK_ENDS = ['reload', 'crash', 'close', 'away and back'] as const;
export type WalkEnd = (typeof WALK_ENDS)[number];

export interface Walk {
  readonly seed: number;
  readonly steps: number;
}

/** A page ends about every so many steps. */
export const STEPS_TO_END = 6;

export const WALKS: readonly Walk[] = [3, 7, 11, 19, 23, 42, 64, 101, 128, 256].map((seed) => ({ seed, steps: 60 }));
/** In `npm test`. */
export const SAMPLE_WALK: Walk = { seed: 5, steps: 24 };

/** What is written into fields: numbers, numbers that are none, formulas, nothing. */
export const TYPED = ['5.2', '-3', '0.45', '1e9', 'abc', '', '12', 'v = 3 m / 2 s', '="x"', 'Étude № 7'] as const;
