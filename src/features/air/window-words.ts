/** The release window in words: what is said boldly is what all that is asked of a release holds for. */
import type { WindowResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { contactTexts as t } from './words.ts';

/** ms that a reader would not tell apart */
const NOTHING = 0.5;

/** `alone`: what the landing by itself is held for, where the rail takes some of it. */
export function wordWindow({ fromMs, toMs, clearMs, isOpen }: Omit<WindowResult, 'tries' | 'formerMs'>): {
  readonly head: string;
  readonly alone: string;
} {
  if (!(toMs > fromMs)) return { head: t.windowNone, alone: '' };
  const width = formatNumber(toMs - fromMs, 0);
  if (clearMs !== undefined && toMs - fromMs - clearMs >= NOTHING)
    return {
      head: clearMs < NOTHING ? t.windowNever : t.windowIs(formatNumber(clearMs, 0)),
      alone: t.windowBoth(width),
    };
  return { head: isOpen.some(Boolean) ? t.windowOpen(width) : t.windowIs(width), alone: '' };
}

/** How the landing of one release is off, in the words of the headline. */
export function wordOff(deg: number): string {
  const size = formatNumber(Math.abs(deg), 0);
  return size === '0' ? '0°' : `${size}° ${deg > 0 ? t.past : t.short}`;
}
