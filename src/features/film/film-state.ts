/** Which of its views the tool shows. It is the same again when the tool is opened again. */
import { type Accessor, createSignal } from 'solid-js';
import { keptState } from '../../app/page.ts';

export const FILM_VIEWS = ['plan', 'recording'] as const;
export type FilmView = (typeof FILM_VIEWS)[number];

interface FilmState {
  readonly view: Accessor<FilmView>;
  show(view: FilmView): void;
}

export const useFilmState = keptState((): FilmState => {
  const [view, setView] = createSignal<FilmView>('plan');
  return { view, show: setView };
});
