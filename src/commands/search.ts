/** Finding by words: every word typed is looked for in a title, from its beginning, inside it, or letter by letter. */

/** Higher is better; 0: a word does not fit. */
export function scoreWords(title: string, typed: string): number {
  const words = split(typed);
  if (words.length === 0) return 1;
  const text = plain(title);
  const parts = split(title);
  let score = 0;
  for (const word of words) {
    const one = scoreWord(text, parts, word);
    if (one === 0) return 0;
    score += one;
  }
  // among equals the shorter title is nearer to what was typed
  return score / words.length - Math.min(text.length, 99) / 1000;
}

function scoreWord(text: string, parts: readonly string[], word: string): number {
  if (parts.includes(word)) return 5;
  const first = parts.findIndex((part) => part.startsWith(word));
  if (first >= 0) return first === 0 ? 4.5 : 4;
  if (text.includes(word)) return 3;
  return word.length >= 3 && isSubsequence(parts, word) ? 1 : 0;
}

/** Letters in order from the beginning of a word, close together: "prsht" finds "print sheet". */
function isSubsequence(parts: readonly string[], word: string): boolean {
  return parts.some((_, from) => {
    const text = parts.slice(from).join(' ');
    if (text[0] !== word[0]) return false;
    let k = 0;
    for (let i = 0; i < Math.min(text.length, 2 * word.length + 1) && k < word.length; i++)
      if (text[i] === word[k]) k++;
    return k === word.length;
  });
}

/** Without accents, small letters. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
const split = (text: string): string[] =>
  plain(text)
    .split(/[^\p{L}\p{N}/<]+/u)
    .filter(Boolean);

export interface Findable {
  readonly title: string;
  /** other words that it is found by, each a name of its own */
  readonly words?: readonly string[] | undefined;
}

/** How near a find is: a word scores up to 5 (scoreWord), a name that is typed whole more. */
export const RANK = { code: 20, exact: 10, name: 9, maybe: 4.4 } as const;
/** A word that is not in the title counts for less. */
const BESIDE = 0.8;

const isSame = (a: string, b: string): boolean => split(a).join(' ') === split(b).join(' ');

/** Best first; equals keep their order. `around`: what goes with the title. */
export function findRanked<T extends Findable>(
  items: readonly T[],
  typed: string,
  around: (item: T) => string = () => '',
): { readonly item: T; readonly score: number }[] {
  const scoreOf = (item: T): number => {
    const { title, words = [] } = item;
    if (isSame(title, typed) || words.some((word) => isSame(word, typed))) return RANK.exact;
    const own = scoreWords(`${title} ${around(item)}`, typed);
    return Math.max(own, own >= 3 ? 0 : BESIDE * scoreWords(`${words.join(' ')} ${title}`, typed));
  };
  return items
    .map((item, order) => ({ item, order, score: scoreOf(item) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score || a.order - b.order);
}
