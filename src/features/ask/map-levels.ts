/** Which contours a map has: none where what it shows does not vary by what the page writes of it. */
import { type AskUnit, numberIn, parseIn } from './ask-words.ts';

interface Levels {
  readonly levels: readonly number[];
  readonly decimals: number;
}

const MOST_DECIMALS = 3;
/** A contour is named by its own value, to this share of the step to the next. */
const EXACT = 0.02;

/** `round` gives round values between the least and the greatest. */
export function findLevels(
  values: ArrayLike<number>,
  unit: AskUnit,
  round: (values: ArrayLike<number>) => readonly number[],
): Levels {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i++)
    if (Number.isFinite(values[i])) [low, high] = [Math.min(low, values[i]), Math.max(high, values[i])];
  if (!(high > low) || numberIn(unit, low, MOST_DECIMALS) === numberIn(unit, high, MOST_DECIMALS))
    return { levels: [], decimals: 0 };
  const levels = round(values);
  const step = levels.length > 1 ? levels[1] - levels[0] : high - low;
  const isExact = (level: number, d: number): boolean =>
    Math.abs(parseIn(unit, numberIn(unit, level, d)) - level) < EXACT * step;
  for (let d = 0; d <= MOST_DECIMALS; d++) if (levels.every((l) => isExact(l, d))) return { levels, decimals: d };
  // steps finer than what is written: none can be named
  return { levels: [], decimals: 0 };
}
