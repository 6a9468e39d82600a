/** A formula as elements of MathML, made one by one: text of a sheet is only ever text. */
import { createEffect, createSignal, onCleanup } from 'solid-js';
import type { MathNode } from '../../sim/index.ts';

const MATHML = 'http://www.w3.org/1998/Math/MathML';
const TAGS: ReadonlySet<string> = new Set('math mrow mi mn mo mtext mspace mfrac msup msub msqrt mroot'.split(' '));
const ATTRIBUTES: ReadonlySet<string> = new Set(['mathvariant', 'width', 'displaystyle']);

function make(node: MathNode): Element {
  const element = document.createElementNS(MATHML, TAGS.has(node.tag) ? node.tag : 'mtext');
  for (const [name, value] of Object.entries(node.attributes ?? {}))
    if (ATTRIBUTES.has(name)) element.setAttribute(name, value);
  if (node.children) element.append(...node.children.map(make));
  else element.textContent = node.text ?? '';
  return element;
}

/** Where it is wider than its place it can be moved, by keys too. */
export function Mathematics(props: { formula: MathNode; label: string }) {
  let place!: HTMLSpanElement;
  const [isWide, setWide] = createSignal(false);
  const measure = (): void => {
    setWide(place.scrollWidth > place.clientWidth);
  };
  const watch = new ResizeObserver(measure);
  createEffect(() => {
    const made = make(props.formula);
    place.replaceChildren(made);
    // the formula too: it widens when its typeface comes
    watch.disconnect();
    for (const one of [place, made]) watch.observe(one);
    measure();
  });
  onCleanup(() => watch.disconnect());
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset groups controls, and here is none
    <span class="mathematics" ref={place} role="group" aria-label={props.label} tabIndex={isWide() ? 0 : undefined} />
  );
}
