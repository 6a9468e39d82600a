/** What a clicker's step is heard as: the shape that is reached, and the three numbers. */
import { createMemo, untrack } from 'solid-js';
import { soften } from '../../ui/numbers.ts';
import type { CutValues } from '../cut-values.ts';
import type { FirstStoryState } from '../first-story.ts';
import { useCursor } from '../page.ts';
import { listFirstNumbers } from './first-numbers.tsx';

export function HallSpoken(props: { cut: CutValues; story: FirstStoryState }) {
  const cursor = useCursor();
  const shape = createMemo(() => props.cut.shape);
  const words = createMemo<string>((last) => {
    const name = soften(shape());
    return untrack(() => {
      if (cursor.play.playing()) return last;
      const numbers = listFirstNumbers(props.story.rows(), props.story.marked()).map(
        ({ title, text, unit, words: { lead, rest } }) => `${title} ${text} ${unit}${lead ? `, ${lead} ${rest}` : ''}`,
      );
      return [name, ...numbers].filter(Boolean).join('. ');
    });
  }, '');
  return (
    <p class="spoken" role="status" aria-live="polite" data-testid="hall-spoken">
      {words()}
    </p>
  );
}
