/** The sentence over the bars: which part gave most of the tilt or twist, and whether one works against it. */
import { formatNumber } from '../../ui/numbers.ts';
import { accountTexts as a } from './words.ts';

interface Part {
  readonly title: string;
  /** with the sign of the whole */
  readonly value: number;
}
/** A smaller share of the largest is not called work against it. */
const COUNTS_AGAINST = 0.1;
/** From this share of the whole on a part gave nearly all of it. */
const NEARLY_ALL = 0.9;

interface Parts {
  readonly parts: readonly Part[];
  readonly total: number;
  /** where none of the parts works against the whole */
  readonly shares: readonly number[] | undefined;
}

/** `least` is nothing to a reader; '' where there is no whole to speak of. */
export function wordParts(
  { parts, total, shares }: Parts,
  least: number,
  what: string,
  signed: (v: number) => string,
): string {
  const sorted = [...parts].sort((x, y) => y.value - x.value);
  const [large, small] = [sorted[0], sorted[sorted.length - 1]];
  if (!(Math.abs(total) > least) || !(large.value > 0)) return '';
  if (shares) return a.mostly(large.title, `${formatNumber(Math.max(...shares) * 100, 0)} %`, what);
  if (!(small.value < -least)) return a.tooSmall;
  if (small.value <= -COUNTS_AGAINST * large.value)
    return a.opposed(large.title, signed(large.value), small.title, signed(small.value));
  const whole = Math.abs(total);
  return large.value >= NEARLY_ALL * whole
    ? a.nearlyAll(large.title, what)
    : a.theMost(large.title, what, signed(large.value), signed(whole));
}
