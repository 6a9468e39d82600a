/**
 * The report: A4 pages of sections set one under another, each with its heading, its text, a picture or a table; on the foot of every page the caution,
 * where the numbers are from, and the number of the page. A block that has no room goes to the next page whole.
 */

import { type Provenance, provenanceLine, provenanceSvg } from '../../sim/index.ts';
import type { Pieces } from '../scene/pieces.ts';
import { PRINT_TOKENS } from '../scene/print-scene.ts';
import { A4, MARGIN, SMALL, TOP, WIDTH } from './a4.ts';
import { type PaperPage, PER_MM, pageSvg, type Typeface } from './page-svg.ts';
import { BOLD, fitText, linesMarkup, lineWidth, round, type TextLine, textMarkup } from './set-text.ts';
import { paperTexts } from './words.ts';

export interface ReportSection {
  readonly heading: string;
  readonly text?: readonly TextLine[];
  /** colours as custom properties are made plain */
  readonly picture?: { readonly markup: string; readonly width: number; readonly height: number };
  readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

interface ReportInput {
  readonly name: string;
  /** date, version, and the athlete where it was asked for */
  readonly under: string;
  readonly result: TextLine;
  readonly sections: readonly ReportSection[];
  readonly standing: string;
  readonly origin: Provenance;
  readonly typeface?: Typeface;
}

const BOTTOM = A4.height * PER_MM - 136;
const TEXT = { size: 17, leading: 22 } as const;
const CELL = { size: 16, row: 21 } as const;

interface Block {
  readonly height: number;
  readonly gap: number;
  draw(y: number): string;
}

export function* drawReport(input: ReportInput): Pieces<PaperPage[]> {
  const blocks = [headBlock(input)];
  for (const section of input.sections) {
    yield;
    blocks.push(...sectionBlocks(section));
  }
  const pages: string[][] = [[]];
  let y = TOP;
  for (const block of blocks) {
    if (y + block.height > BOTTOM && pages[pages.length - 1].length > 0) {
      pages.push([]);
      y = TOP;
    }
    pages[pages.length - 1].push(block.draw(y));
    y += block.height + block.gap;
  }
  const from = input.origin;
  const drawn: PaperPage[] = [];
  for (const [i, parts] of pages.entries()) {
    yield;
    drawn.push(
      pageSvg({
        widthMm: A4.width,
        heightMm: A4.height,
        title: `${input.name}: ${paperTexts.report.page(i + 1, pages.length)}`,
        markup: [...parts, footMarkup(input.standing, provenanceLine(from), i + 1, pages.length)].join('\n'),
        origin: provenanceSvg(from),
        ...(input.typeface ? { typeface: input.typeface } : {}),
      }),
    );
  }
  return drawn;
}

function headBlock({ name, under, result }: ReportInput): Block {
  const title = fitText([{ text: name, weight: BOLD }], [{ width: WIDTH, lines: 3, size: 27, leading: 33 }]);
  const line = fitText([{ text: under }], [{ width: WIDTH, lines: 3, size: TEXT.size, leading: TEXT.leading }]);
  const rooms = [
    { width: WIDTH, lines: 2, size: 28, leading: 36 },
    { width: WIDTH, lines: 9, size: 24, leading: 31 },
  ];
  const said = fitText(result, rooms, true);
  const first = title.lines.length * title.leading;
  const second = first + line.lines.length * line.leading + 14;
  return {
    height: second + said.lines.length * said.leading,
    gap: 14,
    draw: (y) =>
      linesMarkup(title, { x: MARGIN, y: y + 10 }) +
      linesMarkup(line, { x: MARGIN, y: y + first }) +
      linesMarkup(said, { x: MARGIN, y: y + second + 12 }),
  };
}

function sectionBlocks({ heading, text = [], picture, table }: ReportSection): Block[] {
  const blocks = [
    ...text.map((line): Block => {
      const set = fitText(line, [{ width: WIDTH, lines: 999, ...TEXT }]);
      return {
        height: set.lines.length * set.leading,
        gap: 6,
        draw: (y) => linesMarkup(set, { x: MARGIN, y: y + TEXT.size }),
      };
    }),
    ...(picture ? [pictureBlock(picture)] : []),
    ...(table ? tableBlocks(table) : []),
  ];
  const title: TextLine = [{ text: heading, weight: BOLD }];
  const [first, ...rest] = blocks;
  // a heading stays with what it is over
  const headed: Block = {
    height: 36 + (first?.height ?? 0),
    gap: first?.gap ?? 0,
    draw: (y) => textMarkup(title, { x: MARGIN, y: y + 24, size: 20 }) + (first?.draw(y + 36) ?? ''),
  };
  const last = rest.pop();
  return last ? [headed, ...rest, { ...last, gap: 14 }] : [{ ...headed, gap: 14 }];
}

function pictureBlock({ markup, width, height }: NonNullable<ReportSection['picture']>): Block {
  const scale = WIDTH / width;
  const plain = markup.replaceAll(/var\(--([\w-]+)\)/g, (_, name) => tokens[name] ?? '#000000');
  return {
    height: height * scale,
    gap: 10,
    draw: (y) => `<g transform="translate(${MARGIN} ${round(y)}) scale(${round(scale)})">${plain}</g>`,
  };
}

const tokens: Readonly<Record<string, string>> = PRINT_TOKENS;

/** The head over as many lines as its words need; then row by row. */
function tableBlocks({ head, rows }: NonNullable<ReportSection['table']>): Block[] {
  const widest = head.map((_, i) =>
    Math.max(...rows.map((row) => lineWidth([{ text: row[i] ?? '' }], CELL.size)), longestWord(head[i])),
  );
  const spare = (WIDTH - widest.reduce((sum, w) => sum + w, 0)) / Math.max(1, head.length);
  const rights: number[] = [];
  widest.reduce((x, w) => {
    rights.push(x + w + spare);
    return x + w + spare;
  }, MARGIN);
  const set = head.map((text, i) =>
    fitText(
      [{ text, weight: BOLD }],
      [{ width: widest[i] + Math.max(0, spare - 12), lines: 9, size: SMALL, leading: 18 }],
    ),
  );
  const lines = Math.max(...set.map((one) => one.lines.length));
  const height = lines * 18 + 6;
  const rule = (y: number, width: number): string =>
    `<rect x="${MARGIN}" y="${round(y)}" width="${round(WIDTH)}" height="${width}" fill="#000000"/>`;
  return [
    {
      height,
      gap: 0,
      draw: (y) =>
        set
          .map((one, i) =>
            linesMarkup(one, { x: rights[i], y: y + 14 + (lines - one.lines.length) * 18, anchor: 'end' }),
          )
          .join('') + rule(y + height - 2, 1.6),
    },
    ...rows.map(
      (row): Block => ({
        height: CELL.row,
        gap: 0,
        draw: (y) =>
          row
            .map((text, i) => textMarkup([{ text }], { x: rights[i], y: y + 16, size: CELL.size, anchor: 'end' }))
            .join('') + rule(y + CELL.row - 1, 0.6),
      }),
    ),
  ];
}

const longestWord = (text: string): number =>
  Math.max(...text.split(' ').map((word) => lineWidth([{ text: word, weight: BOLD }], SMALL)));

function footMarkup(standing: string, origin: string, page: number, of: number): string {
  const room = [{ width: WIDTH, lines: 9, size: SMALL, leading: 18 }];
  const from = fitText([{ text: origin }], room);
  const said = fitText([{ text: standing }], room);
  const y = BOTTOM + 40;
  return [
    `<rect x="${MARGIN}" y="${round(BOTTOM + 20)}" width="${round(WIDTH)}" height="1" fill="#000000"/>`,
    linesMarkup(said, { x: MARGIN, y }),
    linesMarkup(from, { x: MARGIN, y: y + said.lines.length * said.leading, fill: '#303030' }),
    textMarkup([{ text: paperTexts.report.page(page, of) }], {
      x: MARGIN + WIDTH,
      y: BOTTOM + 40 + 18 * (said.lines.length + from.lines.length),
      size: SMALL,
      anchor: 'end',
    }),
  ].join('');
}
