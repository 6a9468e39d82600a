/** The sheet of a worksheet as a student has it while answers are open: nothing of it is set against the flight. */
import { computeSheet } from './compute-sheet.ts';
import { nameOf } from './line.ts';
import type { LineResult, Links } from './sheet-result.ts';

const AGAINST = /(?<![\p{L}\p{N}_])vs(?![\p{L}\p{N}_])[^#]*?(?=\sif\s|#|$)/u;

/** Each line without its "vs" part. */
function listStudentLines(lines: readonly string[]): string[] {
  return lines.map((line) => {
    const hash = line.indexOf('#');
    const end = hash < 0 ? line.length : hash;
    const typed = line.slice(0, end).replace(AGAINST, '').trimEnd();
    return `${typed}${hash < 0 ? '' : `${typed ? '  ' : ''}${line.slice(end)}`}`;
  });
}

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
  const plain = listStudentLines(sheet);
  const links = linksOf(plain);
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
    const lines = [...plain, ...before];
    const own = nameOf(text);
    const isTaken = own === undefined || lines.some((line) => nameOf(line) === own);
    const formula = own === undefined ? text : text.slice(text.indexOf('=') + 1);
    return computeSheet([...lines, `${isTaken ? WORKING : own} = ${formula}`], links).lines.at(-1);
  });
  return { lines: computeSheet(plain, links).lines, workings };
}

const readoutsOf = (text: string): string[] =>
  [...text.replace(/#.*$/s, '').matchAll(/\{([^}]*)\}/g)].map(([, name]) =>
    name.trim().replace(/\s+/g, ' ').toLowerCase(),
  );

/** Indexes of the lines that hold every readout which a question is set against: who reads them has the answer. */
export function linesThatGiveAway(lines: readonly string[], simulated: string): number[] {
  const asked = readoutsOf(simulated);
  if (asked.length === 0) return [];
  return listStudentLines(lines).flatMap((line, i) => {
    const shown = readoutsOf(line);
    return asked.every((name) => shown.includes(name)) ? [i] : [];
  });
}
