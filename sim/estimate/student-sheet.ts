/** The sheet of a worksheet as a student has it while answers are open: nothing of it is set against the flight. */
import { computeSheet } from './compute-sheet.ts';
import { nameOf, parseLine } from './line.ts';
import type { LineResult, Links } from './sheet-result.ts';
import type { LineToken } from './tokens.ts';

const WORKING = 'working';
const answerName = (index: number): string => `answer${index + 1}`;

interface StudentSheet {
  /** of each line of the sheet */
  readonly lines: readonly LineResult[];
  /** of each working; undefined where nothing is written, or words are asked for */
  readonly workings: readonly (LineResult | undefined)[];
}

/**
 * Sheet and workings of one student. In a working the names of the sheet may be used, and answer1, answer2 ... for what was answered
 * before it; a readout of the flight may not: it is what is asked for. `linksOf`: readouts that the sheet itself names.
 */
export function computeStudentSheet(
  sheet: readonly string[],
  answers: readonly { readonly working?: string; readonly text?: string; readonly isNumber: boolean }[],
  linksOf: (lines: readonly string[]) => Links,
): StudentSheet {
  const links = linksOf(sheet);
  const workings = answers.map(({ working = '', isNumber }, i): LineResult | undefined => {
    const text = working.trim();
    if (!isNumber || text === '') return undefined;
    if (text.includes('{'))
      return {
        kind: 'fault',
        line: 0,
        message: 'A readout of the flight is what is asked for; work it out in numbers.',
      };
    const before = answers
      .slice(0, i)
      .flatMap((one, k) =>
        one.isNumber && one.text && !one.text.includes('{') ? [`${answerName(k)} = ${one.text}`] : [],
      );
    const lines = [...sheet, ...before];
    const own = nameOf(text);
    const isTaken = own === undefined || lines.some((line) => nameOf(line) === own);
    const formula = own === undefined ? text : text.slice(text.indexOf('=') + 1);
    return computeSheet([...lines, `${isTaken ? WORKING : own} = ${formula}`], links).lines.at(-1);
  });
  return { lines: computeSheet(sheet, links).lines.map(withoutFlight), workings };
}

const linksIn = (tokens: readonly LineToken[]): string[] =>
  tokens.flatMap(({ kind, text }) => (kind === 'link' ? [text.toLowerCase()] : []));

/** Readouts that a line shows the value of: what it is set against is not shown. */
function shownBy(line: string): string[] {
  try {
    const read = parseLine(line);
    return read.kind === 'quantity' ? linksIn(read.formula) : [];
  } catch {
    return [];
  }
}

/** Indexes of the lines that together hold every readout which a question is set against: who reads them has the answer. */
export function linesThatGiveAway(lines: readonly string[], simulated: string): number[] {
  const asked = new Set(
    [...simulated.matchAll(/\{([^}]*)\}/g)].map(([, name]) => name.trim().replace(/\s+/g, ' ').toLowerCase()),
  );
  const shown = lines.map(shownBy);
  const all = new Set(shown.flat());
  if (asked.size === 0 || ![...asked].every((name) => all.has(name))) return [];
  return shown.flatMap((names, i) => (names.some((name) => asked.has(name)) ? [i] : []));
}

/** What a line is set against is computed, and stays here. */
function withoutFlight(line: LineResult): LineResult {
  if (line.kind !== 'quantity') return line;
  const { compared: _, ...own } = line;
  return own;
}
