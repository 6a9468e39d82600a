/** How far a command is, and how long it will take: one line on a terminal's stderr, at most once a second. */

import { oneLine } from './command-error.ts';

export interface ProgressLine {
  show(done: number, all: number): void;
  /** the line is finished, so that what is written next begins a line of its own */
  end(): void;
}

interface ProgressTools {
  readonly isTerminal: boolean;
  write(text: string): void;
  /** ms */
  clock(): number;
}

const EVERY_MS = 1000;
/** letters of a name of a file that a line has room for */
const LONGEST = 40;

export function makeProgressLine(what: string, tools: ProgressTools = onStderr): ProgressLine {
  const { isTerminal, write, clock } = tools;
  if (!isTerminal) return { show: () => {}, end: () => {} };
  const start = clock();
  let last = start;
  let width = 0;
  return {
    show: (done, all) => {
      const now = clock();
      if (now - last < EVERY_MS || done <= 0) return;
      last = now;
      const left = ((now - start) * (all - done)) / done;
      const text = `${oneLine(what).slice(0, LONGEST)}: ${Math.floor((100 * done) / all)} %, ${wordLeft(left)} left`;
      write(`\r${text.padEnd(width)}`);
      width = text.length;
    },
    end: () => {
      if (width > 0) write('\n');
      width = 0;
    },
  };
}

function wordLeft(ms: number): string {
  const s = Math.ceil(ms / 1000);
  if (s < 60) return `${s} s`;
  const min = Math.floor(s / 60);
  return min < 60 ? `${min} min ${s % 60} s` : `${Math.floor(min / 60)} h ${min % 60} min`;
}

const onStderr: ProgressTools = {
  isTerminal: process.stderr.isTTY === true,
  write: (text) => void process.stderr.write(text),
  clock: () => performance.now(),
};
