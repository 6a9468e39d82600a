/** What a share of a limit means, the same for shell and page. Ready for translation. */

export const LIMIT_WORDS =
  'A limit is where a caution begins: 1.2 times the known speed, 1.3 times the known strength. What is known is of active adults or of one athlete; trained athletes exceed much of it.';
