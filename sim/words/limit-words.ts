/** What an answer of a search is worth, the same for shell and page. Ready for translation. */

export const MET_WORDS =
  'An answer meets the tolerances that are asked for; whether its landing is held is what its sentence says.';

export const LIMIT_WORDS =
  'A limit is where a caution begins: 1.2 times the known speed, 1.3 times the known strength. What is known is of active adults or of one athlete; trained athletes exceed much of it.';
