/** A formula as elements of MathML, made one by one: text of a sheet is only ever text. */
import { createEffect } from 'solid-js';
import type { MathNode } from '../../../sim/index.ts';

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

export function Mathematics(props: { formula: MathNode }) {
  let place!: HTMLSpanElement;
  createEffect(() => place.replaceChildren(make(props.formula)));
  return <span class="mathematics" ref={place} />;
}
