/** What a special word means: beside the word, on a phone along the lower edge. Escape, the cross and a press elsewhere close it. */
import { createUniqueId, For, onCleanup, onMount } from 'solid-js';
import { Icon } from '../../ui/icon.tsx';
import { useDevice } from '../../ui/size.ts';
import { texts } from '../words.ts';
import { readTerm } from './term-lines.ts';
import type { TermName } from './term-name.ts';
import { TermPicture } from './term-picture.tsx';

/** px between the word, the card and the edges of the page */
const GAP = 8;

export function TermCard(props: { name: TermName; word: HTMLElement; close: () => void }) {
  const id = createUniqueId();
  const device = useDevice();
  const term = () => readTerm(props.name);
  let card!: HTMLDivElement;
  onMount(() => {
    if (device() !== 'phone') placeBeside(card, props.word.getBoundingClientRect());
    card.focus();
    const away = (e: Event): void => {
      const at = e.target as Node;
      if (!card.contains(at) && !props.word.contains(at)) props.close();
    };
    document.addEventListener('pointerdown', away, true);
    onCleanup(() => document.removeEventListener('pointerdown', away, true));
  });
  return (
    <div
      ref={card}
      class="term-card"
      classList={{ low: device() === 'phone' }}
      role="dialog"
      aria-labelledby={id}
      tabIndex={-1}
      onKeyDown={(e) => {
        // the keys of the bench rest while it is read
        e.stopPropagation();
        if (e.key !== 'Escape') return;
        e.preventDefault();
        props.close();
      }}
    >
      <TermPicture name={props.name} />
      <div>
        <h2 id={id}>{term().title}</h2>
        <ul>
          <For each={term().lines}>{(line) => <li>{line}</li>}</For>
        </ul>
      </div>
      <button type="button" class="plain square" aria-label={texts.termClose} onClick={() => props.close()}>
        <Icon name="close" size={16} />
      </button>
    </div>
  );
}

/** Under the word where there is room, else over it; never over an edge of the page. */
function placeBeside(card: HTMLElement, word: DOMRect): void {
  const { width, height } = card.getBoundingClientRect();
  const left = Math.max(GAP, Math.min(word.left, window.innerWidth - width - GAP));
  const isUnder = word.bottom + GAP + height < window.innerHeight - GAP;
  card.style.left = `${left}px`;
  card.style.top = `${Math.max(GAP, isUnder ? word.bottom + GAP : word.top - GAP - height)}px`;
}
