/** The device's own sharing: the link where the bench has an address, else the file. There only where the device has it. */
import { fileName } from '../../app/file-door.ts';
import type { HandState, HandWay } from './way.ts';
import { handTexts } from './words.ts';

const t = handTexts.share;

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <rect class="thumb-paper" x="18.5" y="14.5" width="23" height="25" />
      <path class="thumb-ink" d="M30 27 V3 M23 10 L30 3 L37 10" />
    </svg>
  );
}

function what(hand: HandState): ShareData | undefined {
  const file = hand.handed()?.file;
  if (!file) return undefined;
  if (hand.base() !== undefined && hand.link() !== undefined) return { title: file.title, url: hand.link() };
  const text = `${JSON.stringify(file, null, 2)}\n`;
  return { title: file.title, files: [new File([text], fileName(file.title), { type: 'application/json' })] };
}

export const shareWay: HandWay = {
  id: 'share',
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => [hand.base() === undefined ? t.file : t.link, t.hint2],
  brief: (hand) => (hand.base() === undefined ? t.file : t.link),
  isAbsent: () => typeof navigator.share !== 'function',
  run: async (hand) => {
    const data = what(hand);
    if (!data) return;
    try {
      if (navigator.canShare?.(data) === false) throw new Error(t.cannot);
      await navigator.share(data);
    } catch (error) {
      // put away by the one who opened it
      if (error instanceof DOMException && error.name === 'AbortError') return;
      hand.fail('share', error instanceof DOMException ? t.refused : t.cannot);
    }
  },
};
