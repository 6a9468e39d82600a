/** The skill as a file, without what is not ticked. */
import { fileName, saveText } from '../../app/file-door.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { HandState, HandWay } from './way.ts';
import { handTexts } from './words.ts';

const t = handTexts.file;

const textOf = (hand: HandState): string => `${JSON.stringify(hand.handed()?.file, null, 2)}\n`;
const size = (hand: HandState): string => `${formatNumber(textOf(hand).length / 1000, 0)} kB`;

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <path class="thumb-paper" d="M15.5 0.5 H37 L44.5 8 V39.5 H15.5 Z" />
      <path class="thumb-ink" d="M37 0.5 V8 H44.5 M20 15 H39 M20 21 H39 M20 27 H39 M20 33 H31" />
    </svg>
  );
}

export const fileWay: HandWay = {
  id: 'file',
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => [t.hint(size(hand)), t.hint2],
  brief: (hand) => `${size(hand)}, JSON`,
  run: (hand) => {
    const file = hand.handed()?.file;
    if (!file) return;
    saveText(fileName(file.title), textOf(hand));
    hand.say('file', t.saved);
  },
};
