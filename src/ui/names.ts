/** Names that people gave, inside words of the page. */

/** Its own direction, which ends with it; without what would turn the direction of the words around it. */
export const isolated = (text: string): string =>
  `\u2068${text.replace(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim()}\u2069`;

/** Letters that are written from right to left, and marks of direction. */
const TURNS =
  /[\u0590-\u08ff\u200e\u200f\u2028-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** A name that would turn the words beside it is kept apart; every other is as it was given. */
export const inWords = (name: string): string => (TURNS.test(name) ? isolated(name) : name);
