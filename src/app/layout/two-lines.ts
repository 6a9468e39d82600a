/** The size at which a sentence of clauses takes two lines, or where they have no room three. A line ends between clauses, as the page breaks it. */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { Clause } from '../../../sim/words/verdict-words.ts';

/** px: no smaller, else it takes a line more; where three do not do, its lines are small and close */
export const SIZE = { close: 14.5, least: 16.5, most: 21.5 } as const;
/** as `.sentence` and its `.strong` have them */
const WEIGHT = { plain: 430, strong: 650 } as const;
const LETTER_SPACING = -0.005;
const MEASURED = 100;
/** share of the room, for what the page rounds */
const SPARE = 0.99;

/** `room`: px of a line; `isHeld`: a hand is at work, the sentence then takes no more room than it must. px of a letter's size. */
export function useTwoLines(
  clauses: Accessor<readonly Clause[]>,
  room: Accessor<number>,
  isHeld: Accessor<boolean>,
): Accessor<number> {
  // a font that comes later has other widths
  const [fonts, setFonts] = createSignal(0);
  void document.fonts?.ready.then(() => setFonts(1));
  const g = document.createElement('canvas').getContext('2d');
  const widths = createMemo(() => {
    fonts();
    return g ? clauses().map((one) => calcWidth(g, one)) : [];
  });
  return createMemo(() => {
    const [two, three] = [2, 3].map((lines) => (room() * SPARE) / Math.max(longestLine(widths(), lines), 1e-6));
    if (two < SIZE.least && isHeld()) return SIZE.least;
    const size = two < SIZE.least ? three : two;
    return size < SIZE.least ? SIZE.close : Math.min(Math.floor(size * 10) / 10, SIZE.most);
  });
}

/** em, between two clauses */
const SPACE = 0.24;

/** The longest of so many lines, em, where it is shortest. */
function longestLine(widths: readonly number[], lines: number): number {
  const whole = widths.reduce((sum, w) => sum + w, 0) + Math.max(0, widths.length - 1) * SPACE;
  if (lines === 1) return whole;
  let best = whole;
  let first = -SPACE;
  for (let i = 0; i < widths.length - 1; i++) {
    first += widths[i] + SPACE;
    best = Math.min(best, Math.max(first, longestLine(widths.slice(i + 1), lines - 1)));
  }
  return best;
}

/** em, with what ends it */
function calcWidth(g: CanvasRenderingContext2D, { runs }: Clause): number {
  const family = getComputedStyle(document.body).fontFamily;
  const letters = runs.reduce((sum, { text }) => sum + text.length, 1);
  const px = [...runs, { text: ',', weight: 'plain' as const }].reduce((sum, { text, weight }) => {
    g.font = `${weight === 'strong' ? WEIGHT.strong : WEIGHT.plain} ${MEASURED}px ${family}`;
    return sum + g.measureText(text).width;
  }, 0);
  return px / MEASURED + letters * LETTER_SPACING;
}
