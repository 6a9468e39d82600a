/**
 * What an answer that is off by a known ratio points to. A guess, said with a question mark, and only where the quantity asked for can
 * have gone that way. The ratios are arithmetic; which of them a class meets is our judgement.
 */
import type { Dimension } from '../estimate/dimension.ts';

export type GuessName = 'whole time' | 'feet' | 'pounds' | 'half time' | 'one turn' | 'degrees' | 'radians';

interface GuessRow {
  readonly name: GuessName;
  /** answer / simulated */
  readonly ratio: number;
  readonly of: readonly Dimension[];
}

const [LENGTH, MASS, TIME, RATE, PLAIN]: readonly Dimension[] = [
  [0, 1, 0],
  [1, 0, 0],
  [0, 0, 1],
  [0, 0, -1],
  [0, 0, 0],
];
const ROWS: readonly GuessRow[] = [
  // g T^2 / 2 for g T^2 / 8
  { name: 'whole time', ratio: 4, of: [LENGTH] },
  { name: 'feet', ratio: 1 / 0.3048, of: [LENGTH, [0, 1, -1], [0, 1, -2]] },
  { name: 'pounds', ratio: 1 / 0.45359237, of: [MASS] },
  // the way up alone
  { name: 'half time', ratio: 0.5, of: [TIME] },
  // one somersault of two
  { name: 'one turn', ratio: 0.5, of: [RATE] },
  { name: 'degrees', ratio: 180 / Math.PI, of: [PLAIN, RATE] },
  { name: 'radians', ratio: 2 * Math.PI, of: [RATE] },
];
/** An answer of three figures from a stopwatch is that near; the ratios are a fifth apart at least. */
const NEAR = 0.05;

export function guessFrom(ratio: number, dimension: Dimension): GuessName | undefined {
  const isOf = (d: Dimension): boolean => d.every((x, i) => Math.abs(x - dimension[i]) < 1e-9);
  return ROWS.find((row) => Math.abs(ratio / row.ratio - 1) <= NEAR && row.of.some(isOf))?.name;
}
