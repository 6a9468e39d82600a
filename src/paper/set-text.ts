/** Lines of text for paper: runs of weights set into a width, the largest size at which they have room, and their SVG. */
import { textWidth } from './letter-widths.ts';

interface TextRun {
  readonly text: string;
  /** default 450 */
  readonly weight?: number;
}

export type TextLine = readonly TextRun[];

interface TextRoom {
  readonly width: number;
  readonly lines: number;
  readonly size: number;
  readonly leading: number;
}

interface SetText {
  readonly lines: readonly TextLine[];
  readonly size: number;
  readonly leading: number;
}

const REGULAR = 450;
export const BOLD = 650;

/** Control characters have no place in XML. */
export const escapeText = (text: string): string =>
  text
    .replace(/\p{Cc}/gu, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

export const lineWidth = (line: TextLine, size: number): number =>
  line.reduce((sum, { text, weight }) => sum + textWidth(text, size, weight ?? REGULAR), 0);

/** Broken at spaces; a word that is longer than the line is broken where it has to be. */
export function breakLines(runs: TextLine, size: number, width: number): TextLine[] {
  const lines: TextRun[][] = [[]];
  let used = 0;
  const put = (run: TextRun, runWidth: number): void => {
    const line = lines[lines.length - 1];
    const last = line[line.length - 1];
    if (last && last.weight === run.weight) line[line.length - 1] = { ...last, text: last.text + run.text };
    else line.push(run);
    used += runWidth;
  };
  for (const { text, weight } of runs)
    for (const piece of text.match(/\s+|\S+/g) ?? []) {
      let rest = piece;
      let needed = textWidth(rest, size, weight ?? REGULAR);
      // a word goes on in the line of what it is joined to, as a comma to its number
      if (used + needed > width && used > 0 && rest.trim() !== '') {
        const joined = takeJoined(lines[lines.length - 1]);
        lines.push([]);
        used = 0;
        for (const run of joined) put(run, textWidth(run.text, size, run.weight ?? REGULAR));
      }
      while (needed > width && rest.length > 1) {
        const n = Math.max(1, Math.floor((rest.length * width) / needed) - 1);
        put({ text: rest.slice(0, n), ...(weight ? { weight } : {}) }, 0);
        lines.push([]);
        used = 0;
        rest = rest.slice(n);
        needed = textWidth(rest, size, weight ?? REGULAR);
      }
      if (rest.trim() === '' && used === 0) continue;
      put({ text: rest, ...(weight ? { weight } : {}) }, needed);
    }
  return lines.map(trimEnd).filter((line) => line.length > 0);
}

/** What stands at the end of a line without a space after it. */
function takeJoined(line: TextRun[]): TextRun[] {
  const taken: TextRun[] = [];
  while (line.length > 0) {
    const last = line[line.length - 1];
    const at = last.text.search(/\S+$/);
    if (at < 0) return taken;
    if (at > 0) {
      line[line.length - 1] = { ...last, text: last.text.slice(0, at) };
      return [{ ...last, text: last.text.slice(at) }, ...taken];
    }
    line.pop();
    taken.unshift(last);
  }
  // one word that fills the line alone
  line.push(...taken);
  return [];
}

function trimEnd(line: readonly TextRun[]): TextLine {
  const out = [...line];
  for (let last = out.pop(); last; last = out.pop()) {
    const text = last.text.trimEnd();
    if (text !== '') return [...out, { ...last, text }];
  }
  return [];
}

/** In the first of the rooms in which it has place; in the last whatever it takes. A result of two lines is broken after a comma. */
export function fitText(runs: TextLine, rooms: readonly TextRoom[], isResult = false): SetText {
  for (const [k, { width, lines: most, size, leading }] of rooms.entries()) {
    const lines = breakLines(runs, size, width);
    if (lines.length <= most || k === rooms.length - 1)
      return { lines: isResult && lines.length === 2 ? atComma(lines, size, width) : lines, size, leading };
  }
  throw new Error('no room was given');
}

/** Two lines are better broken after a comma, where both still fit and the first is the longer one. */
function atComma([first, second]: readonly TextLine[], size: number, width: number): TextLine[] {
  let at = -1;
  first.forEach(({ text }, i) => {
    if (text.includes(', ')) at = i;
  });
  if (at < 0) return [first, second];
  const run = first[at];
  const cut = run.text.lastIndexOf(', ') + 1;
  const head = [...first.slice(0, at), { ...run, text: run.text.slice(0, cut) }];
  const rest = run.text.slice(cut).trimStart();
  const tail = [...(rest ? [{ ...run, text: rest }] : []), ...first.slice(at + 1)];
  const last = tail.pop();
  if (!last) return [first, second];
  const next = [...tail, { ...last, text: `${last.text} ` }, ...second];
  const isBetter = lineWidth(next, size) <= width && lineWidth(head, size) >= 0.6 * lineWidth(next, size);
  return isBetter ? [head, next] : [first, second];
}

interface LinePlace {
  readonly x: number;
  /** of the baseline */
  readonly y: number;
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly fill?: string;
}

export function textMarkup(line: TextLine, { x, y, size, anchor = 'start', fill = '#000000' }: LinePlace): string {
  const runs = line.map(({ text, weight = REGULAR }) => `<tspan font-weight="${weight}">${escapeText(text)}</tspan>`);
  return `<text x="${round(x)}" y="${round(y)}" font-size="${round(size)}" text-anchor="${anchor}" fill="${fill}" xml:space="preserve">${runs.join('')}</text>`;
}

export const linesMarkup = ({ lines, size, leading }: SetText, place: Omit<LinePlace, 'size'>): string =>
  lines.map((line, i) => textMarkup(line, { ...place, size, y: place.y + i * leading })).join('');

export const round = (x: number): string => String(Math.round(x * 100) / 100);
