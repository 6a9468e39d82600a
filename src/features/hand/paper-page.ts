/** What card, pictures and report take of the page alike: title, name where it is ticked, typeface, today. */
import { type Accessor, createMemo, createResource } from 'solid-js';
import { readTypeface } from '../../app/page-typeface.ts';
import { texts } from '../../app/words.ts';
import type { Typeface } from '../../paper/page-svg.ts';
import type { Paper } from '../../paper/paper.ts';
import { sayDay } from '../../ui/dates.ts';
import { inWords } from '../../ui/names.ts';
import type { HandState } from './way.ts';

export const titleOf = ({ page }: HandState): string => inWords(page.doc.file().title) || texts.untitled;

/** Undefined where it is not ticked. */
export const nameOf = (hand: HandState): string | undefined =>
  hand.along().name ? inWords(hand.page.doc.athlete().name) : undefined;

export const dateOf = (): string => sayDay(new Date());

/** Undefined while it is on its way: nothing is drawn twice. Without a face: the browser did not give it. `words`: all that is written, for the letters in it. */
export function useTypeface(
  paper: Accessor<Paper | undefined>,
  words: Accessor<string>,
): Accessor<{ readonly typeface?: Typeface } | undefined> {
  const isBeyond = createMemo(() => paper()?.isBeyondLatin(words()));
  const [face] = createResource(
    () => (isBeyond() === undefined ? undefined : { isBeyond: isBeyond() === true }),
    async (asked) => {
      const typeface = await readTypeface(asked.isBeyond);
      return typeface ? { typeface } : {};
    },
  );
  return face;
}
