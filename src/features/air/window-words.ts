/** The study of a release in words: each end by what fails there, and where both the landing and the rail hold. */
import { formatNumber } from '../../ui/numbers.ts';
import { studyTexts as t } from './study-texts.ts';
import type { EndCause, Span, WindowStudy } from './window-study.ts';

/** ms that a reader would not tell apart */
const NOTHING = 0.5;

const ms = (x: number): string => formatNumber(Math.abs(x), 0);

/** "14 ms early", "as it is". */
export const wordMs = (at: number): string =>
  Math.abs(at) < NOTHING ? t.asIs : at < 0 ? t.early(ms(at)) : t.late(ms(at));

export function wordCause(cause: EndCause): string {
  switch (cause.kind) {
    case 'short':
    case 'past':
      return `${formatNumber(cause.deg, 0)}° ${t[cause.kind]}`;
    case 'twist':
      return t.twist(formatNumber(Math.abs(cause.turns), 2), cause.turns < 0);
    case 'rail':
      return t.rail;
    case 'part':
      return t.part(cause.part);
    case 'lost':
      return t.lost;
    case 'open':
      return t.open;
  }
}

/** How the landing of one release is off, in the words of the headline. */
export function wordOff(deg: number): string {
  const size = formatNumber(Math.abs(deg), 0);
  return size === '0' ? '0°' : `${size}° ${deg > 0 ? t.past : t.short}`;
}

/** One sentence: which times satisfy both; where no rail was measured, the landing alone. */
export function wordBoth({ held, both, near }: WindowStudy, isMeasured: boolean): { head: string; span: string } {
  if (!held) return { head: t.none, span: '' };
  if (!isMeasured) return { head: t.holds(ms(held.to - held.from)), span: wordSpan(held) };
  if (!both || both.to - both.from < NOTHING) return { head: near.length > 0 ? t.never : t.none, span: '' };
  return { head: t.both(ms(both.to - both.from)), span: wordSpan(both) };
}

/** "from 14 to 10 ms early", "from 3 ms early to 8 ms late". */
export function wordSpan({ from, to }: Span): string {
  if (from < -NOTHING && to < -NOTHING) return t.fromTo(ms(from), t.early(ms(to)));
  if (from > NOTHING && to > NOTHING) return t.fromTo(ms(from), t.late(ms(to)));
  return t.fromTo(wordMs(from), wordMs(to));
}

/** Where something comes nearer than asked, in a few words. */
export function wordNear(spans: readonly Span[], ends: readonly [number, number], asked: string): string {
  const [first] = spans;
  if (!first) return '';
  const at = (x: number): string => `${x < 0 ? '−' : '+'}${ms(x)}`;
  if (spans.length > 1) return t.nearIn(asked, String(spans.length));
  if (first.from <= ends[0] + NOTHING && first.to >= ends[1] - NOTHING) return t.nearAll(asked);
  if (first.to >= ends[1] - NOTHING) return t.nearFrom(asked, at(first.from));
  if (first.from <= ends[0] + NOTHING) return t.nearTo(asked, at(first.to));
  return t.nearSpan(asked, at(first.from), at(first.to));
}
