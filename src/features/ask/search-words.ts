/** What a search came to, as a line: to be read out, and to be written over the answers. */
import { wordTouching } from '../../../sim/words/limit-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { percent } from './ask-words.ts';
import type { SearchFound } from './search-found.ts';
import { askTexts as t } from './words.ts';

export const wordDone = {
  of: (found: SearchFound): string => `${t.title}: ${wordFound(found)}`,
  failed: t.searchFailed,
  open: (run: () => void) => ({ title: t.openAsk, run }),
};

/** How many were found, or that none was. */
export function wordFound({ answer, list, kind, most }: SearchFound): string {
  const stopped = !answer.isComplete;
  if (list.length === 0) return t.nothingFlies;
  const notHeld = answer.solutions.filter((s) => s.held === false).length;
  const isFound = answer.solutions.length > 0;
  const touching = wordTouching(answer.touching, isFound);
  const met = kind === 'twist' && most ? t.mostTwist(formatNumber(most.twists, 2), stopped) : undefined;
  return [
    isFound ? (met ?? t.found(answer.solutions.length - notHeld, stopped)) : '',
    notHeld > 0 ? t.notHeldToo(notHeld) : '',
    touching && `${touching}.`,
    isFound ? '' : t.none(stopped, touching !== ''),
  ]
    .filter(Boolean)
    .join(' ');
}

/** What is to be known of the most forgiving and the most twist beside the answers; empty for a plain search. */
export function wordMore({ moves, most }: SearchFound): string {
  if (moves) {
    const { rounds, met, kept, again } = moves;
    const share = (s: { share: number; interval: readonly [number, number] }): string =>
      t.rangeShare(percent(s.share), percent(s.interval[0]), percent(s.interval[1]));
    return [
      t.moves(String(rounds), String(met), String(kept)),
      again ? t.triedAgain(String(again.after.n), share(again.after), share(again.before)) : '',
    ]
      .filter(Boolean)
      .join(' ');
  }
  if (most) return most.beyond === undefined ? t.mostBound : t.mostBeyond(formatNumber(most.beyond, 2));
  return '';
}
