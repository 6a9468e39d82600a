/**
 * Makes a range as narrow as can be shown, in two ways that both hold, met: by the quantities that have a ± of their own,
 * and by the lines the formula names directly. In either way, where every slope keeps its sign the ends are values at two
 * corners of the box; else the mean value form is met with the plain range.
 */
import { evaluate, NUMBERS } from './evaluate.ts';
import { type Known, linkOf, need, type Sheet } from './known-sheet.ts';
import { addIntervals, type Interval, meet, multiplyIntervals, RANGES, type Range, uncertainRange } from './ranges.ts';
import type { ReadQuantity } from './read-sheet.ts';

export function tighten(quantity: ReadQuantity, known: Pick<Known, 'value' | 'range' | 'own'>, sheet: Sheet): Interval {
  return meet(byLines(quantity, known, sheet), bySpreads(quantity, known, sheet));
}

/** One side of the box for each slope: how far it may move either way from where it is. */
type Sides = ReadonlyMap<number, Interval>;

function narrow(value: number, range: Range, sides: Sides, corner: (up: boolean) => number): Interval {
  let meanValue: Interval = { low: value, high: value };
  let steady = true;
  for (const [index, slope] of range.slopes) {
    const side = sides.get(index);
    if (!side) continue;
    meanValue = addIntervals(meanValue, multiplyIntervals(slope, side));
    if (slope.low < 0 && slope.high > 0) steady = false;
  }
  const plain = { low: range.low, high: range.high };
  if (!steady) return meet(plain, meanValue);
  const [low, high] = [corner(false), corner(true)];
  return Number.isFinite(low) && Number.isFinite(high) ? { low, high } : plain;
}

/** The end of a side at which the value is greatest (up) or least. */
const endOf = (side: Interval, slope: Interval | undefined, up: boolean): number =>
  (slope && slope.high <= 0 ? !up : up) ? side.high : side.low;

function bySpreads(
  quantity: ReadQuantity,
  { value, range, own }: Pick<Known, 'value' | 'range' | 'own'>,
  sheet: Sheet,
): Interval {
  const spreads = [...sheet.known].flatMap(([name, k]) =>
    k.own && range.slopes.has(k.own.index) ? [{ name, ...k.own }] : [],
  );
  if (own) spreads.push({ name: quantity.source.name, ...own });
  const sides: Sides = new Map(spreads.map(({ index, spread }) => [index, { low: -spread, high: spread }]));
  return narrow(value, range, sides, (up) => {
    const moved = new Map<string, number>();
    for (const { name, index } of spreads)
      moved.set(name, endOf(sides.get(index) ?? { low: 0, high: 0 }, range.slopes.get(index), up));
    return sheet.recompute(quantity.source.name, new Map(), moved);
  });
}

function byLines(quantity: ReadQuantity, { value, own }: Pick<Known, 'value' | 'own'>, sheet: Sheet): Interval {
  const sides = new Map<number, Interval>();
  const indices = new Map<string, number>();
  for (const name of quantity.needs) {
    const { value: middle, ends } = need(name, sheet);
    indices.set(name, indices.size);
    sides.set(indices.size - 1, { low: ends.low - middle, high: ends.high - middle });
  }
  const link = (text: string): number => linkOf(text, sheet.links).value;
  const range = evaluate(quantity.expression, RANGES, {
    name: (name) => {
      const { ends } = need(name, sheet);
      return uncertainRange(ends.low, ends.high, indices.get(name) ?? -1);
    },
    link,
  });
  const found = narrow(value, range, sides, (up) =>
    evaluate(quantity.expression, NUMBERS, {
      name: (name) => {
        const index = indices.get(name) ?? -1;
        return need(name, sheet).value + endOf(sides.get(index) ?? { low: 0, high: 0 }, range.slopes.get(index), up);
      },
      link,
    }),
  );
  const spread = own?.spread ?? 0;
  return { low: found.low - spread, high: found.high + spread };
}
