/** What a clicker's step is heard as: the shape that is reached, and the three numbers; of two ways, both. */
import { createMemo, untrack } from 'solid-js';
import { soften } from '../../ui/numbers.ts';
import { calcBesideRows } from '../beside-numbers.ts';
import type { CutValues } from '../cut-values.ts';
import type { FirstStoryState } from '../first-story.ts';
import { useCursor, useFlight } from '../page.ts';
import { listFirstNumbers } from './first-numbers.tsx';
import { useBesideParts } from './late-beside.ts';

export function HallSpoken(props: { cut: CutValues; story: FirstStoryState }) {
  const cursor = useCursor();
  const flight = useFlight();
  const two = useBesideParts();
  const shape = createMemo(() => props.cut.shape);
  const listNumbers = (): string[] => {
    const both = two();
    if (both) {
      const { beside, speakTwo } = both;
      return speakTwo(calcBesideRows(flight.result().frames, beside.result.frames, cursor.at(), beside.turn), beside);
    }
    return listFirstNumbers(props.story.rows(), props.story.marked()).map(
      ({ title, text, unit, words: { lead, rest } }) => `${title} ${text} ${unit}${lead ? `, ${lead} ${rest}` : ''}`,
    );
  };
  const words = createMemo<string>((last) => {
    const name = soften(shape());
    two();
    return untrack(() => {
      if (cursor.play.playing()) return last;
      return [name, ...listNumbers()].filter(Boolean).join('. ');
    });
  }, '');
  return (
    <p class="spoken" role="status" aria-live="polite" data-testid="hall-spoken">
      {words()}
    </p>
  );
}
