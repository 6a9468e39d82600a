/** The skill as a link: copied, and shown whole where it is picked. */
import { Show } from 'solid-js';
import type { HandState, HandWay, WayProps } from './way.ts';
import { handTexts } from './words.ts';

const t = handTexts.link;

/** letters that a narrow row has room for; the whole link is at its right */
const SHOWN = 36;

const letters = (hand: HandState): string => String(hand.link()?.length ?? 0);

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <rect class="thumb-paper" x="0.5" y="12.5" width="59" height="15" />
      <path class="thumb-ink" d="M5 20 H51 M48 16 L53 20 L48 24" />
    </svg>
  );
}

function View(props: WayProps) {
  return (
    <Show when={props.hand.link()}>
      {(link) => (
        <label class="hand-link">
          {t.whole}
          <textarea readonly rows={6} value={link()} onFocus={(e) => e.currentTarget.select()} />
        </label>
      )}
    </Show>
  );
}

export const linkWay: HandWay = {
  id: 'link',
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => [
    (hand.base() === undefined ? t.bare : t.hint)(letters(hand)),
    `${hand.link()?.slice(0, SHOWN) ?? ''} …`,
  ],
  brief: (hand) => t.letters(letters(hand)),
  View,
  refused: (hand) => hand.linkFault(),
  run: async (hand) => {
    const link = hand.link();
    if (link === undefined) return;
    try {
      await navigator.clipboard.writeText(link);
      hand.say('link', t.copied);
    } catch {
      hand.fail('link', t.notCopied);
    }
  },
};
