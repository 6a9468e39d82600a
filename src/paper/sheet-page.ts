/**
 * A student's worksheet on one page, A4 portrait: whose it is, the athlete, what is given, and of each question its working, the answer, and
 * what the model gives where it is open. Letters are as large as the page has room for; what has none at the smallest goes to another page.
 */

import { type Provenance, provenanceLine, provenanceSvg } from '../../sim/index.ts';
import { A4, MARGIN, SMALL, TOP, WIDTH } from './a4.ts';
import { type PaperPage, PER_MM, pageSvg, type Typeface } from './page-svg.ts';
import { BOLD, fitText, linesMarkup, round, type TextLine } from './set-text.ts';
import type { SheetFigures } from './sheet-figures.ts';

export interface SheetPageRow {
  readonly ask: string;
  readonly working: string;
  readonly answer: string;
  readonly lockedAt: string;
  /** what the model gives or shows; empty while it is closed */
  readonly simulated: string;
  readonly compared: string;
}

interface SheetPageInput {
  readonly title: string;
  /** "Wren A., 10 blue, 2 March 2026" */
  readonly who: string;
  readonly figures?: SheetFigures;
  readonly given: readonly string[];
  readonly heads: {
    readonly given: string;
    readonly working: string;
    readonly answer: string;
    readonly simulated: string;
  };
  readonly rows: readonly SheetPageRow[];
  readonly foot: string;
  readonly standing: string;
  readonly origin: Provenance;
  readonly typeface?: Typeface;
}

const BOTTOM = A4.height * PER_MM - 150;
const FIGURES = 260;
/** letters of the rows; 7 pt at least */
const SIZES = [17, 15.5, 14.6] as const;
const GAP = 16;

interface Block {
  readonly height: number;
  draw(y: number): string;
}

export function makeSheetPage(input: SheetPageInput): PaperPage[] {
  const sized = SIZES.map((size) => blocksOf(input, size));
  const fits = sized.find((blocks) => TOP + blocks.reduce((sum, one) => sum + one.height, 0) <= BOTTOM);
  const pages: string[][] = [[]];
  let y = TOP;
  for (const block of fits ?? sized[sized.length - 1]) {
    if (y + block.height > BOTTOM && y > TOP) {
      pages.push([]);
      y = TOP;
    }
    pages[pages.length - 1].push(block.draw(y));
    y += block.height;
  }
  return pages.map((parts) =>
    pageSvg({
      widthMm: A4.width,
      heightMm: A4.height,
      title: `${input.title}: ${input.who}`,
      markup: [...parts, footMarkup(input)].join('\n'),
      origin: provenanceSvg(input.origin),
      ...(input.typeface ? { typeface: input.typeface } : {}),
    }),
  );
}

function blocksOf(input: SheetPageInput, size: number): Block[] {
  const { title, who, figures, given, heads, rows } = input;
  return [
    textBlock([{ text: title, weight: BOLD }], 26, 6),
    textBlock([{ text: who }], 18, 14),
    ...(figures ? [figureBlock(figures)] : []),
    ...(given.length > 0
      ? [textBlock([{ text: `${heads.given}: `, weight: BOLD }, { text: given.join('; ') }], size, 12)]
      : []),
    ...rows.map((row, i) => rowBlock(row, i + 1, heads, size)),
  ];
}

function textBlock(line: TextLine, size: number, gap: number, x = MARGIN): Block {
  const leading = Math.round(size * 1.32);
  const set = fitText(line, [{ width: WIDTH - (x - MARGIN), lines: 999, size, leading }]);
  return {
    height: set.lines.length * leading + gap,
    draw: (y) => linesMarkup(set, { x, y: y + size }),
  };
}

function figureBlock({ markup, width, height }: SheetFigures): Block {
  const scale = Math.min(WIDTH / width, FIGURES / height);
  return {
    height: height * scale + GAP,
    draw: (y) => `<g transform="translate(${MARGIN} ${round(y)}) scale(${round(scale)})">${markup}</g>`,
  };
}

const INDENT = 34;

function rowBlock(row: SheetPageRow, n: number, heads: SheetPageInput['heads'], size: number): Block {
  const pair = (head: string, text: string, more = ''): TextLine => [
    { text: `${head}: ` },
    { text, weight: BOLD },
    ...(more ? [{ text: more }] : []),
  ];
  const lines: TextLine[] = [
    [{ text: row.ask, weight: BOLD }],
    ...(row.working ? [[{ text: `${heads.working}: ${row.working}` }]] : []),
    pair(heads.answer, row.answer || '–', row.lockedAt ? `, ${row.lockedAt}` : ''),
    ...(row.simulated ? [pair(heads.simulated, row.simulated, row.compared ? `; ${row.compared}` : '')] : []),
  ];
  const blocks = lines.map((line) => textBlock(line, size, 3, MARGIN + INDENT));
  const number = textBlock([{ text: String(n), weight: BOLD }], size, 0);
  return {
    height: blocks.reduce((sum, one) => sum + one.height, 0) + 22,
    draw: (y) => {
      const out = [
        `<rect x="${MARGIN}" y="${round(y)}" width="${round(WIDTH)}" height="0.8" fill="#000000"/>`,
        number.draw(y + 8),
      ];
      let at = y + 8;
      for (const block of blocks) {
        out.push(block.draw(at));
        at += block.height;
      }
      return out.join('');
    },
  };
}

function footMarkup({ standing, foot, origin }: SheetPageInput): string {
  const room = [{ width: WIDTH, lines: 9, size: SMALL, leading: 18 }];
  const said = fitText([{ text: `${foot} ${standing}` }], room);
  const from = fitText([{ text: provenanceLine(origin) }], room);
  const y = BOTTOM + 46;
  return [
    `<rect x="${MARGIN}" y="${round(BOTTOM + 26)}" width="${round(WIDTH)}" height="1" fill="#000000"/>`,
    linesMarkup(said, { x: MARGIN, y }),
    linesMarkup(from, { x: MARGIN, y: y + said.lines.length * said.leading, fill: '#303030' }),
  ].join('');
}
