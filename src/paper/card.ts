/**
 * The card to the gym floor: A5 on its side, 150 units an inch. Name, result, four figures, three cues with their times, the room for error,
 * the caution, a code that opens the skill. Black and grey, to be read at arm's length; no line is cut: what is long is set smaller.
 */
import type { Cue } from '../../sim/words/cue-words.ts';
import { cueFits, cueLines } from '../../sim/words/cue-words.ts';
import type { Pieces } from '../scene/pieces.ts';
import { cardFigures, type ViewedPose } from './card-figures.ts';
import { type PaperPage, PER_MM, pageSvg, type Typeface } from './page-svg.ts';
import type { PaperFlight } from './paper-flight.ts';
import { BOLD, breakLines, fitText, linesMarkup, lineWidth, round, type TextLine, textMarkup } from './set-text.ts';
import { paperTexts } from './words.ts';

export interface CardInstant {
  readonly t: number;
  readonly word: string;
  /** it touches what it leaves or lands on */
  readonly isOnFloor?: true;
}

interface CardCode {
  /** points along a side, and one path of them, a point a unit */
  readonly size: number;
  readonly path: string;
}

export interface CardInput {
  readonly flight: PaperFlight;
  /** four, in their order */
  readonly instants: readonly CardInstant[];
  readonly figures: readonly ViewedPose[];
  readonly name: string;
  readonly called: string;
  readonly result: TextLine;
  /** three at most */
  readonly cues: readonly Pick<Cue, 'from' | 'to' | 'text'>[];
  /** the skill's first caution; then what there is room for; whole sentences */
  readonly caution?: string;
  readonly room: readonly string[];
  readonly standing: string;
  /** none: no address, or too long a skill */
  readonly code?: CardCode;
  /** the athlete's, where it was asked for */
  readonly who?: string;
  readonly foot: string;
  readonly product: string;
  readonly origin?: string;
  readonly typeface?: Typeface;
}

const CARD_MM = { width: 210, height: 148 } as const;
/** A point of a code is at least so large, or a telephone cannot read it, mm. */
const LEAST_POINT = 0.33;
const CODE_MM = 30;
/** 7 pt. */
export const LEAST_SIZE = 14.6;

const LEFT = 60;
const RIGHT = 1180;
const FIGURES = { centres: [208, 486, 764, 1042], left: 64, right: 1176, top: 190, floor: 504 } as const;
const BAND = { top: 512, height: 54 } as const;
const CUE = { y: 607, columns: [60, 372, 684], width: 296, sizes: [26, 24, 22, 20, 18, 16] } as const;
const RULE = { y: 721, right: 966 } as const;
const ROOM = { width: RULE.right - LEFT, y: 750 } as const;
const t = paperTexts.card;

/** The largest code that a card has room for, in points along a side. */
export const mostPoints = (): number => Math.floor(CODE_MM / LEAST_POINT);

export function* drawCard(input: CardInput): Pieces<PaperPage> {
  const markup = [
    headMarkup(input),
    yield* cardFigures(
      input.flight,
      input.figures,
      input.instants.map((one) => one.isOnFloor === true),
      FIGURES,
    ),
    bandMarkup(input),
    ...cuesMarkup(input.cues),
    `<rect x="${LEFT}" y="${RULE.y - 1}" width="${RULE.right - LEFT}" height="2" fill="#000000"/>`,
    footMarkup(input),
    codeMarkup(input),
  ].join('\n');
  const title = `${input.name}: ${input.result.map(({ text }) => text).join('')}`;
  return pageSvg({
    widthMm: CARD_MM.width,
    heightMm: CARD_MM.height,
    title,
    markup,
    ...(input.origin ? { origin: input.origin } : {}),
    ...(input.typeface ? { typeface: input.typeface } : {}),
  });
}

function headMarkup({ name, called, result }: CardInput): string {
  const code: TextLine = [{ text: called }];
  const codeSize = lineWidth(code, 24) > 520 ? 18 : 24;
  const width = RIGHT - LEFT - (called ? lineWidth(code, codeSize) + 24 : 0);
  const title = fitText(
    [{ text: name, weight: BOLD }],
    [
      { width, lines: 1, size: 27, leading: 30 },
      { width, lines: 1, size: 22, leading: 26 },
      { width, lines: 2, size: 18, leading: 20 },
      { width, lines: 3, size: LEAST_SIZE, leading: 16 },
    ],
  );
  const room = { width: RIGHT - LEFT };
  const rooms = [
    { ...room, lines: 2, size: 37.5, leading: 46 },
    { ...room, lines: 2, size: 32, leading: 42 },
    { ...room, lines: 3, size: 27, leading: 32 },
    { ...room, lines: 4, size: 21, leading: 25 },
  ];
  const said = fitText(result, rooms, true);
  const y = [66, 54, 42][title.lines.length - 1] ?? 42;
  return [
    linesMarkup(title, { x: LEFT, y }),
    called ? textMarkup(code, { x: RIGHT, y: 66, size: codeSize, anchor: 'end' }) : '',
    linesMarkup(said, { x: LEFT, y: said.lines.length > 2 ? 106 : 117 }),
  ].join('');
}

function bandMarkup({ instants, cues }: CardInput): string {
  const { centres } = FIGURES;
  const room = 240;
  const words = instants.map(({ t: at, word }, i) => {
    const line = (size: number): { time: TextLine; word: TextLine; width: number } => {
      const time: TextLine = [{ text: t.seconds(at.toFixed(2)), weight: BOLD }];
      const said: TextLine = [{ text: ` ${word}` }];
      return { time, word: said, width: lineWidth(time, 29) + lineWidth(said, size) };
    };
    const size = [25, 22, 19, 16].find((s) => line(s).width <= room) ?? LEAST_SIZE;
    const { time, word: said, width } = line(size);
    const x = centres[i] - width / 2;
    const fill = '#ffffff';
    return (
      textMarkup(time, { x, y: BAND.top + 37, size: 29, fill }) +
      textMarkup(said, { x: x + lineWidth(time, 29), y: BAND.top + 37, size, fill })
    );
  });
  const rings = gapsOf(cues, instants).map((gap, i) =>
    ring((centres[gap] + centres[gap + 1]) / 2, BAND.top + BAND.height / 2, i + 1, true),
  );
  return `<rect x="${LEFT}" y="${BAND.top}" width="${RIGHT - LEFT}" height="${BAND.height}" fill="#000000"/>${words.join('')}${rings.join('')}`;
}

const ring = (x: number, y: number, n: number, isOnBand: boolean): string =>
  `<circle cx="${x}" cy="${y}" r="${isOnBand ? 17 : 15.6}" fill="#ffffff"${isOnBand ? '' : ' stroke="#000000" stroke-width="2.6"'}/>` +
  textMarkup([{ text: String(n), weight: BOLD }], { x, y: y + 8, size: 23, anchor: 'middle' });

/** Between which figures each cue is done; one after the other. */
function gapsOf(cues: CardInput['cues'], instants: CardInput['instants']): number[] {
  const gaps: number[] = [];
  const last = instants.length - 2;
  cues.forEach(({ from, to }, i) => {
    const after = instants.findLastIndex(({ t: at }) => at <= (from + to) / 2);
    const least = i === 0 ? 0 : gaps[i - 1] + 1;
    gaps.push(Math.min(Math.max(after, least), last - (cues.length - 1 - i)));
  });
  return gaps;
}

const isInColumn = (line: string, size: number): boolean => lineWidth([{ text: line }], size) <= CUE.width;

/** A cue has place on the card: two lines of at most 25 letters, none of them so broad that it would have to be set too small. */
export const cueHasRoom = (text: string): boolean =>
  cueFits(text) && cueLines(text).every((line) => isInColumn(line, LEAST_SIZE));

function cuesMarkup(cues: CardInput['cues']): string[] {
  const lines = cues.map(({ text }) => cueLines(text));
  const size = CUE.sizes.find((one) => lines.flat().every((line) => isInColumn(line, one))) ?? LEAST_SIZE;
  return cues.map(({ from, to }, i) => {
    const x = CUE.columns[i];
    const span = t.span(from.toFixed(2), to.toFixed(2));
    return [
      ring(x + 17, CUE.y, i + 1, false),
      textMarkup([{ text: span, weight: BOLD }], { x: x + 45, y: CUE.y + 8, size: 29 }),
      ...lines[i].map((line, k) => textMarkup([{ text: line }], { x, y: CUE.y + 49 + 34 * k, size })),
    ].join('');
  });
}

/** The skill's own caution comes before the room for error, which takes what is left of two lines. */
function footMarkup(input: CardInput): string {
  const { width } = ROOM;
  const caution: TextLine = input.caution ? [{ text: `${t.caution} `, weight: BOLD }, { text: input.caution }] : [];
  const parts: string[] = [];
  const roomOf = (list: readonly string[]): TextLine =>
    list.length > 0 ? [{ text: `${t.room} `, weight: BOLD }, { text: list.join(' ') }] : [];
  const first = caution.length > 0 ? fitText(caution, roomsFor(width)) : undefined;
  const left = 2 - (first?.lines.length ?? 0);
  for (const part of input.room)
    if (left > 0 && breakLines(roomOf([...parts, part]), 21, width).length <= left) parts.push(part);
  const hasRoom = parts.length > 0;
  const out: string[] = [];
  let y = ROOM.y;
  if (first) {
    out.push(linesMarkup(first, { x: LEFT, y }));
    y += first.lines.length * first.leading;
  }
  if (hasRoom) {
    const set = fitText(roomOf(parts), [{ width, lines: left, size: 21, leading: 28 }]);
    out.push(linesMarkup(set, { x: LEFT, y }));
    y += set.lines.length * set.leading;
  }
  const standing: TextLine = [
    ...(input.caution ? [] : [{ text: `${t.caution} `, weight: BOLD }]),
    { text: input.standing },
  ];
  // where nothing else is said the caution has its place, and its size
  const isAlone = !first && !hasRoom;
  const rooms = isAlone ? [{ width, lines: 2, size: 21, leading: 28 }] : [{ width, lines: 2, size: 18, leading: 23 }];
  out.push(linesMarkup(fitText(standing, rooms), { x: LEFT, y: isAlone ? ROOM.y : Math.max(y, 806) }));
  out.push(textMarkup([{ text: input.foot }], { x: LEFT, y: 853, size: LEAST_SIZE, fill: '#303030' }));
  out.push(
    textMarkup([{ text: input.product }], { x: RIGHT, y: 853, size: LEAST_SIZE, anchor: 'end', fill: '#303030' }),
  );
  return out.join('');
}

const roomsFor = (width: number) => [
  { width, lines: 1, size: 21, leading: 28 },
  { width, lines: 2, size: 21, leading: 28 },
  { width, lines: 2, size: 18, leading: 26 },
  { width, lines: 3, size: LEAST_SIZE, leading: 18 },
];

function codeMarkup({ code, who }: CardInput): string {
  const middle = RIGHT - (CODE_MM * PER_MM) / 2;
  const out: string[] = [];
  if (code) {
    const point = (CODE_MM * PER_MM) / code.size;
    const [x0, y0] = [RIGHT - CODE_MM * PER_MM, 598];
    out.push(
      `<path transform="translate(${round(x0)} ${y0}) scale(${point})" d="${code.path}" fill="#000000" shape-rendering="crispEdges" data-code="${code.size}"/>`,
    );
    out.push(textMarkup([{ text: t.opens, weight: BOLD }], { x: middle, y: 799, size: 18, anchor: 'middle' }));
  }
  const named: TextLine = [{ text: who ? t.nameIn(who) : t.noName }];
  const set = fitText(named, [
    { width: 178, lines: 1, size: 18, leading: 21 },
    { width: 178, lines: 3, size: LEAST_SIZE, leading: 17 },
  ]);
  out.push(
    linesMarkup(set, { x: middle, y: set.lines.length > 1 ? 834 - 17 * set.lines.length + 17 : 824, anchor: 'middle' }),
  );
  return out.join('');
}
