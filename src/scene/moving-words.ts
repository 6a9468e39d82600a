/** What is written in a moving picture: what is flown, the time on its ruler, numbers of the instant, the caution. Laid out once, in units. */
import type { DrawItem, Layer, PictureSize, TextItem, Token } from './scene.ts';

const MARGIN = 14;
const BAND = 32;
const NUMBERS = 38;
const NUMBER = { size: 14, weight: 640 } as const;
const NAME = { size: 11, weight: 450 } as const;
/** Instants that the widths of the numbers are taken from. */
const SAMPLED = 12;
const LEAST_GAP = 6;
const MOST_GAP = 90;
/** Where the ruler begins, after the time and the speed. */
const RULER = 158;

/** Width of a text. */
export type TextWidth = (text: string, size: number, weight: number) => number;

export interface MovingWords {
  /** what is flown, and by whom where that is wanted; empty: nothing is said */
  readonly title: string;
  /** the result as a sentence; empty: nothing is said */
  readonly headline: string;
  readonly speed: string;
  readonly caution: string;
  readonly seconds: (s: number) => string;
}

export interface LiveNumber {
  readonly name: string;
  readonly value: string;
}

interface Look {
  readonly size: number;
  readonly weight: number;
  readonly fill: Token;
}
interface Line extends Look {
  readonly text: string;
  /** baseline, from the one before */
  readonly lead: number;
}

export interface WrittenLayout extends PictureSize {
  readonly above: readonly Line[];
  readonly below: readonly Line[];
  /** how far the words above reach down, and the flight under them */
  readonly head: number;
  readonly air: number;
  /** left edge of each number; empty: none are shown */
  readonly columns: readonly number[];
}

type Span = readonly [from: number, to: number];

/** At spaces; no line is wider but a word that alone is, and the lines are as even as their number allows. */
export function wrapWords(text: string, width: number, widthOf: (text: string) => number): string[] {
  const fill = (most: number): string[] => {
    const lines: string[] = [];
    for (const word of text.split(' ').filter(Boolean)) {
      const last = lines.at(-1);
      if (last !== undefined && widthOf(`${last} ${word}`) <= most) lines[lines.length - 1] = `${last} ${word}`;
      else lines.push(word);
    }
    return lines;
  };
  let even = fill(width);
  for (let most = width * 0.95; most > width / 2; most *= 0.95) {
    const lines = fill(most);
    if (lines.length > even.length) break;
    even = lines;
  }
  return even;
}

export function layWriting(
  { width, height }: PictureSize,
  words: MovingWords,
  span: Span,
  numbers: ((t: number) => readonly LiveNumber[]) | undefined,
  widthOf: TextWidth,
): WrittenLayout {
  const room = width - 2 * MARGIN;
  const wrap = (text: string, look: Omit<Line, 'text'>): Line[] =>
    wrapWords(text, room, (part) => widthOf(part, look.size, look.weight)).map((line) => ({ ...look, text: line }));
  const above = [
    ...wrap(words.title, { size: 12, weight: 560, fill: 'ink-2', lead: 17 }),
    ...wrap(words.headline, { size: 15, weight: 600, fill: 'ink', lead: 19 }),
  ];
  const below = wrap(words.caution, { size: 11.5, weight: 450, fill: 'ink-2', lead: 14.5 });
  const sum = (lines: readonly Line[]): number => lines.reduce((total, { lead }) => total + lead, 0);
  return {
    width,
    height,
    above,
    below,
    head: above.length > 0 ? 10 + sum(above) : 0,
    air: height - BAND - (numbers ? NUMBERS : 0) - sum(below) - 10,
    columns: numbers ? layColumns(span, numbers, room, widthOf) : [],
  };
}

/** As wide as the widest of each, so that none moves while the picture does; what is left over is between them. */
function layColumns(
  [from, to]: Span,
  numbers: (t: number) => readonly LiveNumber[],
  room: number,
  widthOf: TextWidth,
): number[] {
  const rows = Array.from({ length: SAMPLED }, (_, i) => numbers(from + ((to - from) * i) / (SAMPLED - 1)));
  const widths = rows[0].map(({ name }, k) =>
    Math.max(
      widthOf(name, NAME.size, NAME.weight),
      ...rows.map((row) => widthOf(row[k].value, NUMBER.size, NUMBER.weight)),
    ),
  );
  const left = room - widths.reduce((sum, w) => sum + w, 0);
  const gap = Math.min(MOST_GAP, Math.max(LEAST_GAP, left / Math.max(1, widths.length - 1)));
  let x = MARGIN;
  return widths.map((w) => {
    const at = x;
    x += w + gap;
    return at;
  });
}

/** In px, `unit` of them to a unit. */
export function writing(
  l: WrittenLayout,
  unit: number,
  words: MovingWords,
  span: Span,
  t: number,
  numbers: readonly LiveNumber[],
): Layer[] {
  const texts: TextItem[] = [];
  const put = (x: number, y: number, text: string, { size, weight, fill }: Look): void => {
    texts.push({ kind: 'text', x: x * unit, y: y * unit, text, size: size * unit, weight, fill, anchor: 'start' });
  };
  const box = (x: number, y: number, width: number, height: number, fill: Token, opacity?: number): DrawItem => ({
    kind: 'fill',
    contours: [
      Float32Array.from([x, y, x + width, y, x + width, y + height, x, y + height].map((value) => value * unit)),
    ],
    fill,
    ...(opacity === undefined ? {} : { opacity }),
  });
  const shapes: DrawItem[] = [
    // no line of the picture is behind letters
    box(0, 0, l.width, l.head, 'air'),
    box(0, l.air, l.width, l.height - l.air, 'ground'),
    box(0, l.air, l.width, BAND, 'floor'),
    { kind: 'segments', points: ticks(l, span).map((v) => v * unit), stroke: 'floor-tick', width: unit },
  ];
  let y = 6;
  for (const line of l.above) {
    y += line.lead;
    put(MARGIN, y, line.text, line);
  }
  const at = along(l, span);
  const base = l.air + 21;
  shapes.push(
    box(at(span[0]), base - 1.5, at(span[1]) - at(span[0]), 3, 'floor-tick', 0.5),
    box(at(span[0]), base - 1.5, at(t) - at(span[0]), 3, 'floor-ink'),
    box(at(t) - 2.5, base - 7, 5, 14, 'floor-ink'),
  );
  put(MARGIN, l.air + 22, words.seconds(t), { size: 18, weight: 640, fill: 'floor-ink' });
  put(MARGIN + 68, l.air + 22, words.speed, { size: 12, weight: 480, fill: 'floor-ink-2' });
  y = l.air + BAND;
  if (l.columns.length > 0) {
    numbers.forEach(({ name, value }, i) => {
      put(l.columns[i], y + 18, value, { ...NUMBER, fill: 'ink' });
      put(l.columns[i], y + 32, name, { ...NAME, fill: 'ink-2' });
    });
    y += NUMBERS;
  }
  for (const line of l.below) {
    y += line.lead;
    put(MARGIN, y, line.text, line);
  }
  return [
    { name: 'ground', items: shapes },
    { name: 'text', items: texts },
  ];
}

/** The span from edge to edge of the ruler. */
const along =
  ({ width }: WrittenLayout, [from, to]: Span) =>
  (s: number): number =>
    RULER + ((s - from) / (to - from)) * (width - MARGIN - 6 - RULER);

function ticks(l: WrittenLayout, span: Span): Float32Array {
  const at = along(l, span);
  const [from, to] = span;
  const step = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1].find((s) => at(from + s) - at(from) >= 9) ?? 2;
  const points: number[] = [];
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + 1e-9; i++)
    points.push(at(i * step), l.air, at(i * step), l.air + (i % 5 === 0 ? 9 : 5));
  return Float32Array.from(points);
}
