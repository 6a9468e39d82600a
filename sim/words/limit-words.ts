/** What an answer of a search is worth, the same for shell and page. Ready for translation. */

export const MET_WORDS =
  'An answer meets the tolerances that are asked for; whether its landing is held is what its sentence says.';

/** Where the landing has to be held. */
export const HELD_WORDS =
  'An answer meets the tolerances that are asked for, and its landing is held as its sentence has it, with a hop or a small step at most; of one that turns too fast to be judged, that it lies within the band of the landing model. What is not held comes last and says so.';

/** Of answers that were refused; `isMore`: beside others that were not. */
export const wordTouching = (solids: readonly string[], isMore: boolean): string =>
  solids.length === 0
    ? ''
    : `${solids.length}${isMore ? ' more' : ''} would touch the ${[...new Set(solids)].join(' and the ')}`;

export const LIMIT_WORDS =
  'A limit is where a caution begins: 1.2 times the known speed, 1.3 times the known strength. What is known is of active adults or of one athlete; trained athletes exceed much of it.';
