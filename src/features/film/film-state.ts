/** Which of its views the tool shows. It is the same again when the tool is opened again. */
import { type Accessor, createSignal } from 'solid-js';
import { keptState, type Page } from '../../app/page.ts';

export const FILM_VIEWS = ['plan', 'clip', 'recording'] as const;
type FilmView = (typeof FILM_VIEWS)[number];

interface FilmState {
  readonly view: Accessor<FilmView>;
  show(view: FilmView): void;
}

function makeFilmState(): FilmState {
  const [view, setView] = createSignal<FilmView>('plan');
  return { view, show: setView };
}

export const filmStateOf = (page: Page): FilmState => page.keepState(makeFilmState);
export const useFilmState = keptState(makeFilmState);
