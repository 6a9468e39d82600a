/**
 * Where a view of Film puts its parts: the sentence, the air from edge to edge, and the place beside the ruler. What a view returns
 * otherwise is under the floor. On touch the places are the same, one above the other.
 */
import { type JSX, Show } from 'solid-js';
import { Portal } from 'solid-js/web';
import { useShell } from '../../app/page.ts';
import type { ToolPlaceName } from '../../app/tool-places.ts';

function InPlace(props: { name: ToolPlaceName; children: JSX.Element }) {
  const { places } = useShell();
  return <Show when={places[props.name]()}>{(mount) => <Portal mount={mount()}>{props.children}</Portal>}</Show>;
}

export const FilmSentence = (props: { children: JSX.Element }) => (
  <InPlace name="headline">
    <p class="film-sentence" role="status">
      {props.children}
    </p>
  </InPlace>
);

/** On a laptop from edge to edge: the time column begins `timeLeft` px from the left. */
export const FilmAir = (props: { children: JSX.Element }) => (
  <InPlace name="pictures">
    <div class="film-air">{props.children}</div>
  </InPlace>
);

/** On a laptop at the right of the ruler, on touch over the keys of the thumb. */
export const FilmFloor = (props: { children: JSX.Element }) => <InPlace name="floor">{props.children}</InPlace>;
