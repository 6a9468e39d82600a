/** Widths of the table of a class. Shares of the whole, so that paper has the same. */
import type { Question } from '../../../sim/index.ts';

const NO = 40;
const LOCKED = { time: 78, day: 116 } as const;
const NAME = [124, 176] as const;
const NUMBER = { least: 118, usual: 186 } as const;
const WORDS = { least: 220, usual: 300 } as const;

interface ClassWidths {
  /** px; wider than the room where it has to scroll */
  readonly all: number;
  /** of No., name, each question, last locked; % */
  readonly shares: readonly number[];
}

export function calcWidths(room: number, kinds: readonly Question['kind'][], hasDays: boolean): ClassWidths {
  const words = kinds.filter((kind) => kind === 'words').length;
  const numbers = kinds.length - words;
  const locked = hasDays ? LOCKED.day : LOCKED.time;
  const name = Math.min(Math.max(room * 0.13, NAME[0]), NAME[1]);
  const left = room - NO - locked - name;
  const most = words > 0 ? NUMBER.usual : Number.POSITIVE_INFINITY;
  const number = Math.max(NUMBER.least, Math.min(most, (left - words * WORDS.usual) / Math.max(numbers, 1)));
  const text = Math.max(WORDS.least, (left - numbers * number) / Math.max(words, 1));
  const px = [NO, name, ...kinds.map((kind) => (kind === 'words' ? text : number)), locked];
  const all = px.reduce((sum, w) => sum + w, 0);
  return { all, shares: px.map((w) => (100 * w) / all) };
}
