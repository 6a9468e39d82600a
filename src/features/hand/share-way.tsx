/** The device's own sharing: the link where the bench has an address, else the file. Where the device has none its row says so. */
import { jsonText } from '../../../sim/math/json-text.ts';
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

const isLink = (hand: HandState): boolean => hand.base() !== undefined && hand.link() !== undefined;

/** Many devices share no JSON, but text. */
function fileOf(hand: HandState, kind: 'json' | 'txt'): ShareData | undefined {
  const file = hand.handed()?.file;
  if (!file) return undefined;
  const name = fileName(file.title);
  const text = `${jsonText(file)}\n`;
  const shared =
    kind === 'json'
      ? new File([text], name, { type: 'application/json' })
      : new File([text], `${name}.txt`, { type: 'text/plain' });
  return { title: file.title, files: [shared] };
}

const canShare = (data: ShareData | undefined): boolean => !!data && navigator.canShare?.(data) !== false;

const kindOf = (hand: HandState): 'json' | 'txt' =>
  canShare(fileOf(hand, 'json')) || !canShare(fileOf(hand, 'txt')) ? 'json' : 'txt';

function what(hand: HandState): ShareData | undefined {
  return isLink(hand) ? { title: hand.handed()?.file.title ?? '', url: hand.link() ?? '' } : fileOf(hand, kindOf(hand));
}

const wordWhat = (hand: HandState): string => (isLink(hand) ? t.link : kindOf(hand) === 'json' ? t.file : t.text);

export const shareWay: HandWay = {
  id: 'share',
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => [wordWhat(hand), t.hint2],
  brief: wordWhat,
  refused: () => (typeof navigator.share === 'function' ? undefined : t.absent),
  run: async (hand) => {
    const data = what(hand);
    try {
      if (!canShare(data)) throw new Error(t.cannot);
      await navigator.share(data);
    } catch (error) {
      // put away by the one who opened it
      if (error instanceof DOMException && error.name === 'AbortError') return;
      hand.fail('share', error instanceof DOMException ? t.refused : t.cannot);
    }
  },
};
