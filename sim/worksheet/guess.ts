/**
 * What an answer that is off by a known ratio points to. A guess, said with a question mark, and only where the quantity and the unit that
 * are asked for can have gone that way. The ratios are arithmetic; which of them a class meets is our judgement.
 */
import type { Dimension } from '../estimate/dimension.ts';

export type GuessName =
  | 'whole time'
  | 'feet'
  | 'pounds'
  | 'half time'
  | 'half the turns'
  | 'degrees'
  | 'radians'
  | 'whole turns';

interface GuessRow {
  readonly name: GuessName;
  /** answer / simulated */
  readonly ratio: number;
  readonly of: readonly Dimension[];
  /** in the unit that is asked for */
  readonly unit?: RegExp;
  /** how near the ratio has to be, where not NEAR */
  readonly near?: number;
}

const [LENGTH, SPEED, ACCELERATION, MASS, TIME, RATE, PLAIN]: readonly Dimension[] = [
  [0, 1, 0],
  [0, 1, -1],
  [0, 1, -2],
  [1, 0, 0],
  [0, 0, 1],
  [0, 0, -1],
  [0, 0, 0],
];
const TURNED = [RATE, PLAIN];
const TURN = 2 * Math.PI;
const [IN_RAD, IN_DEG, IN_REV] = [/\brad\b/, /\bdeg\b/, /\brev\b/];

const ROWS: readonly GuessRow[] = [
  // g T^2 / 2 for g T^2 / 8: four times exactly where it lands as high as it left, 6 % more 15 cm lower
  { name: 'whole time', ratio: 4, of: [LENGTH], near: 0.08 },
  { name: 'feet', ratio: 1 / 0.3048, of: [LENGTH, SPEED, ACCELERATION] },
  { name: 'pounds', ratio: 1 / 0.45359237, of: [MASS] },
  // the way up alone
  { name: 'half time', ratio: 0.5, of: [TIME] },
  { name: 'half the turns', ratio: 0.5, of: TURNED, unit: IN_REV },
  { name: 'degrees', ratio: 360 / TURN, of: TURNED, unit: IN_RAD },
  { name: 'degrees', ratio: 360, of: TURNED, unit: IN_REV },
  { name: 'radians', ratio: TURN, of: TURNED, unit: IN_REV },
  { name: 'radians', ratio: TURN / 360, of: TURNED, unit: IN_DEG },
  { name: 'whole turns', ratio: 1 / TURN, of: TURNED, unit: IN_RAD },
  { name: 'whole turns', ratio: 1 / 360, of: TURNED, unit: IN_DEG },
];
/** Of an answer of two figures. No two ratios of one quantity lie nearer to each other than twice this. */
const NEAR = 0.05;

/** `unit`: that is asked for, as "rev/s". */
export function guessFrom(ratio: number, dimension: Dimension, unit: string): GuessName | undefined {
  const isOf = (d: Dimension): boolean => d.every((x, i) => Math.abs(x - dimension[i]) < 1e-9);
  return ROWS.find(
    (row) =>
      Math.abs(ratio / row.ratio - 1) <= (row.near ?? NEAR) && row.of.some(isOf) && (row.unit?.test(unit) ?? true),
  )?.name;
}
