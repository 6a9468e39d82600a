/** Text that is cut at a word, with an ellipsis, where its place has no room for all of it. Read aloud it is whole; what opens it is around it. */
import { createEffect, createSignal, Show } from 'solid-js';
import { useSize } from './size.ts';

/** Width that the ellipsis and its space need, em. */
const ELLIPSIS = 1.3;

export function CutText(props: { text: string; class?: string }) {
  let place!: HTMLSpanElement;
  let whole!: HTMLSpanElement;
  const size = useSize(() => place);
  const [shown, setShown] = createSignal<string>();
  createEffect(() => {
    setShown(size().width > 0 ? cutAtWord(place, whole, props.text) : undefined);
  });
  return (
    <span ref={place} class={`cut-text ${props.class ?? ''}`}>
      <span ref={whole} classList={{ unseen: shown() !== undefined }}>
        {props.text}
      </span>
      <Show when={shown()}>{(words) => <span aria-hidden="true">{words()}</span>}</Show>
    </span>
  );
}

/** What of the text is seen in `place`, to the last whole word; nothing where the first has no room; undefined where all of it is seen. */
function cutAtWord(place: HTMLElement, whole: HTMLElement, text: string): string | undefined {
  const node = whole.firstChild;
  if (!node) return undefined;
  const { right, bottom } = place.getBoundingClientRect();
  const room = right - Number.parseFloat(getComputedStyle(place).fontSize) * ELLIPSIS;
  const range = document.createRange();
  const words = [...text.matchAll(/\S+/g)].map(({ 0: word, index }) => {
    range.setStart(node, index);
    range.setEnd(node, index + word.length);
    return { end: index + word.length, at: range.getBoundingClientRect() };
  });
  // a word's box is higher than its line
  const seen = words.filter(({ at }) => (at.top + at.bottom) / 2 < bottom && at.right <= right + 1);
  if (seen.length === words.length) return undefined;
  // beside the last word, in its line, is the ellipsis
  while (seen.length > 0 && seen[seen.length - 1].at.right > room) seen.pop();
  const last = seen[seen.length - 1];
  return last ? `${text.slice(0, last.end).replace(/[;,:]$/, '')} …` : '';
}
