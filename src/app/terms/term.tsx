/** A special word that explains itself at a press: a picture and four lines, which are loaded then. */
import { createResource, createSignal, type JSX, Show } from 'solid-js';
import { Dynamic, Portal } from 'solid-js/web';
import { loadPart } from '../load-part.ts';
import type { TermName } from './term-name.ts';
import './terms.css';

const loadCard = loadPart(
  () => import('./term-card.tsx'),
  (m) => m.TermCard,
);

export function Term(props: { name: TermName; children: JSX.Element }) {
  const [isOpen, setOpen] = createSignal(false);
  // asked for again at each press: what did not load once may load then
  const [card] = createResource(isOpen, async (open) => (open ? loadCard().catch(() => undefined) : undefined));
  let word!: HTMLButtonElement;
  return (
    <>
      <button
        ref={word}
        type="button"
        class="term"
        aria-haspopup="dialog"
        aria-expanded={isOpen()}
        onClick={() => setOpen(!isOpen())}
      >
        {props.children}
      </button>
      <Show when={isOpen() && card()}>
        {(Card) => (
          <Portal>
            <Dynamic
              component={Card()}
              name={props.name}
              word={word}
              close={() => {
                setOpen(false);
                word.focus();
              }}
            />
          </Portal>
        )}
      </Show>
    </>
  );
}
