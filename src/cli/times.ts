/** The command "times": what instants that were read off a film give, each with its ±. */
import {
  calcClipTimes,
  clipRows,
  FieldError,
  framesOfTyped,
  trueTimes,
  wordClip,
  wordClipCaveats,
  wordMarkFault,
  wordMeasured,
} from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import type { TimesCommand } from './times-args.ts';

const GRAVITY = 9.81;
/** How far the mass centre's fall between take-off and landing is known, m: typed, and not (judgement). */
const DROP = { typed: 0.03, free: 0.1 };
const OPTION_OF: Readonly<Record<string, string>> = { trueHz: '--hz', fileHz: '--file-hz', lines: '--lines' };

export function runTimes({ typed, trueHz, fileHz, lines, drop }: TimesCommand): string {
  const { frames, marks } = checked(() => {
    trueTimes([], fileHz, trueHz);
    return framesOfTyped(typed, fileHz, trueHz, lines);
  });
  const given = { value: drop ?? 0, plusMinus: drop === undefined ? DROP.free : DROP.typed };
  if (Math.abs(given.value) > 30)
    throw new CommandError(`--drop: ${given.value} is not possible; allowed: -30 to 30 m`);
  const times = checked(() => calcClipTimes(frames, marks, { gravity: GRAVITY, drop: given }));
  const rows = clipRows(times).map((row) => `  ${row.label.padEnd(24)}${wordMeasured(row).join(' ')}`);
  const said = wordClip(times).map(({ text }) => text);
  const faults = times.faults.map((fault) => wordMarkFault(fault, marks));
  const [, ...caveats] = wordClipCaveats({ lines });
  return `${[said.join(''), ...rows, ...faults, ...caveats].filter((line) => line !== '').join('\n')}\n\n${CLOSING}\n`;
}

/** A fault by the option that it was typed as. */
function checked<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const option = OPTION_OF[error.field] ?? error.field;
    throw new CommandError(`${option}${error.message.slice(error.field.length)}`);
  }
}
