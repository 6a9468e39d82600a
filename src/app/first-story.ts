/** The story of the flight shown, at the cursor and at the marked moment. */
import { type Accessor, createMemo } from 'solid-js';
import { calcFirstRows, type FirstRows, findStory } from './first-rows.ts';
import { useCursor, useFlight } from './page.ts';
import { calcPlace } from './plot/readout.ts';

export interface FirstStoryState {
  readonly rows: Accessor<FirstRows>;
  /** where a moment is marked */
  readonly marked: Accessor<FirstRows | undefined>;
}

export function useFirstRows(): FirstStoryState {
  const flight = useFlight();
  const cursor = useCursor();
  const frames = () => flight.result().frames;
  const story = createMemo(() => findStory(frames()));
  const rowsAt = (s: number): FirstRows => calcFirstRows(frames(), calcPlace(frames(), s), story());
  return {
    rows: createMemo(() => rowsAt(cursor.at())),
    marked: createMemo(() => {
      const s = cursor.pin();
      return s === undefined ? undefined : rowsAt(s);
    }),
  };
}
