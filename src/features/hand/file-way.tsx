/** The skill as a file, without what is not ticked. */

import type { SkillFile } from '../../../sim/index.ts';
import { jsonText } from '../../../sim/math/json-text.ts';
import type { OfferedClip } from '../../app/clip-door.ts';
import { fileName, saveText } from '../../app/file-door.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { HandState, HandWay } from './way.ts';
import { handTexts } from './words.ts';

const t = handTexts.file;

const ID = 'file';

const textOf = (file: SkillFile | undefined): string => `${jsonText(file)}\n`;
const size = (hand: HandState): string => `${formatNumber(textOf(hand.handed()?.file).length / 1000, 0)} kB`;

/** undefined: it was cancelled. */
async function withClip(hand: HandState, file: SkillFile, clip: OfferedClip): Promise<SkillFile | undefined> {
  const control = new AbortController();
  const show = (made: number, of: number): void =>
    hand.work(ID, {
      text: t.making(formatNumber(made, 0), formatNumber(of, 0)),
      share: made / of,
      cancel: () => control.abort(),
    });
  try {
    show(0, 1);
    return hand.withClip(file, await dataUrl(await clip.write(show, control.signal)));
  } catch (error) {
    if (control.signal.aborted) return undefined;
    throw error;
  } finally {
    hand.work(ID, undefined);
  }
}

const dataUrl = (blob: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(new Error(t.notWritten));
    reader.readAsDataURL(blob);
  });

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <path class="thumb-paper" d="M15.5 0.5 H37 L44.5 8 V39.5 H15.5 Z" />
      <path class="thumb-ink" d="M37 0.5 V8 H44.5 M20 15 H39 M20 21 H39 M20 27 H39 M20 33 H31" />
    </svg>
  );
}

export const fileWay: HandWay = {
  id: ID,
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => {
    const clip = hand.clip();
    return [t.hint(size(hand)), clip ? t.withClip(clip.name, clip.isBlurred) : t.hint2];
  },
  brief: (hand) => `${size(hand)}, JSON`,
  run: async (hand) => {
    const file = hand.handed()?.file;
    if (!file) return;
    const clip = hand.clip();
    const whole = clip ? await withClip(hand, file, clip) : file;
    if (!whole) return;
    saveText(fileName(file.title), textOf(whole));
    hand.say(ID, t.saved);
  },
};
