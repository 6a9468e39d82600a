/** A flight's codes in the words of a result line: "code 4 4 / (difficulty 0.9)", or why there is none. */
import type { Frames } from '../measure/frames.ts';
import type { Summary } from '../measure/summary.ts';
import { codeColumns, codeOfFlight, type FlightCode } from './code-of-flight.ts';
import { calcDifficulty, formatDifficulty } from './difficulty.ts';
import { formatDiveNumber } from './dive-number.ts';
import { diveOfFlight } from './dive-of-flight.ts';
import { wordTrade } from './trade-words.ts';
import { formatTrampolineCode } from './trampoline-code.ts';

/** "4 4 / (difficulty 0.9), back double full"; "no code: ..."; the difficulty is the trampoline's, so not into water */
function formatFlightCode(found: FlightCode, summary: Summary, surface?: string): string {
  if (found.kind === 'none') return `no code: ${found.reason}`;
  const { code, earlyHalfTwists } = found;
  const direction = summary.somersaultWord;
  const difficulty = surface === 'water' ? '' : ` (difficulty ${formatDifficulty(calcDifficulty(code, direction))})`;
  const words = wordTrade({
    direction,
    somersaults: code.quarters / 4,
    halfTwists: code.halfTwists,
    earlyHalfTwists,
  });
  return `${formatTrampolineCode(code)}${difficulty}${words.length ? `, ${words[0]}` : ''}`;
}

/** The line of a flown skill; into water a dive number comes first. */
export function wordCode(summary: Summary, frames: Frames, surface?: string): string {
  const found = codeOfFlight(codeColumns(summary.body, frames));
  const line = formatFlightCode(found, summary, surface);
  if (surface !== 'water') return line;
  const dive = diveOfFlight(found, summary, frames);
  return dive.kind === 'dive'
    ? `dive ${formatDiveNumber(dive.dive)}; ${line}`
    : `no dive number: ${dive.reason}; ${line}`;
}
