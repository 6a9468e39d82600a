/** A flight's codes in the words of a result line: "code 4 4 / (difficulty 0.9)", or why there is none. */
import type { Frames } from '../measure/frames.ts';
import type { Summary } from '../measure/summary.ts';
import type { FlightCode } from './code-of-flight.ts';
import { codeOfSkill } from './code-of-skill.ts';
import { calcDifficulty, formatDifficulty } from './difficulty.ts';
import { formatDiveNumber } from './dive-number.ts';
import { diveOfFlight } from './dive-of-flight.ts';
import { wordTrade } from './trade-words.ts';
import { formatTrampolineCode } from './trampoline-code.ts';

/** Code and difficulty are the trampoline's: elsewhere they are named so, and into water there is no difficulty. */
export const isNamedTrampoline = (surface?: string): boolean => surface !== 'trampoline' && surface !== 'water';

/** "4 4 / (difficulty 0.9), back double full"; "no code: ..." */
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
  const name = isNamedTrampoline(surface) ? 'trampoline code ' : '';
  return `${name}${formatTrampolineCode(code)}${difficulty}${words.length ? `, ${words[0]}` : ''}`;
}

/** The line of a flown skill; into water a dive number comes first. */
export function wordCode(summary: Summary, frames: Frames, surface?: string): string {
  const found = codeOfSkill(summary, frames, surface);
  const line = formatFlightCode(found, summary, surface);
  if (surface !== 'water') return line;
  const dive = diveOfFlight(found, summary, frames);
  return dive.kind === 'dive'
    ? `dive ${formatDiveNumber(dive.dive)}; ${line}`
    : `no dive number: ${dive.reason}; ${line}`;
}
