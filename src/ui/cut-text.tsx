/**
 * Text that is cut at a word, with an ellipsis, where its place has no room for all of it; `bare`: without one, at a comma where there is one.
 * Read aloud it is whole; what opens it is around it.
 */
import { createEffect, createSignal, on, Show } from 'solid-js';
import { measureSoon } from './measure-soon.ts';
import { useSize } from './size.ts';

/** Width that the ellipsis and its space need, em. */
const ELLIPSIS = 1.3;

export function CutText(props: { text: string; class?: string; bare?: boolean }) {
  let place!: HTMLSpanElement;
  let whole!: HTMLSpanElement;
  const size = useSize(() => place);
  const [shown, setShown] = createSignal<string>();
  // a font that comes later has other widths
  const [fonts, setFonts] = createSignal(0);
  void document.fonts?.ready.then(() => setFonts(1));
  const cut = {
    measure: () => {
      const found = size().width > 0 ? cutAtWord(place, whole, props.text, props.bare === true) : undefined;
      return () => setShown(found);
    },
  };
  createEffect(on([fonts, size, () => props.text, () => props.bare], () => measureSoon(cut)));
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
function cutAtWord(place: HTMLElement, whole: HTMLElement, text: string, bare: boolean): string | undefined {
  const node = whole.firstChild;
  if (!node) return undefined;
  const { right, bottom } = place.getBoundingClientRect();
  const room = right - Number.parseFloat(getComputedStyle(place).fontSize) * (bare ? 0 : ELLIPSIS);
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
  const head = last ? text.slice(0, last.end) : '';
  if (bare) return wholeName(head);
  return last ? `${head.replace(/[;,:]$/, '')} …` : '';
}

/** What is left of a name, without a word that hangs on what is gone. */
const wholeName = (head: string): string =>
  head.replace(/(?:,[^,]*|[;:]\s*)$/, '').replace(/(?:\s+(?:a|an|the|and|or|with|of|in|into|to|from|off))+$/i, '');
