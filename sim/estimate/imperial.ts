/** Pounds and inches, where the reader has chosen them: metric units of results are shown in these. */
import { type Dimension, sameDimension } from './dimension.ts';
import { formatFigures } from './figures.ts';
import { readUnit } from './read-formula.ts';

interface ShownUnit {
  readonly name: string;
  readonly factor: number;
}

const IMPERIAL: readonly (readonly [dimension: Dimension, unit: string])[] = [
  [[1, 0, 0], 'lb'],
  [[0, 1, -1], 'ft/s'],
  [[0, 1, -2], 'ft/s^2'],
  [[0, 2, 0], 'ft^2'],
  [[1, 1, -2], 'lbf'],
  [[1, 2, -2], 'ft lbf'],
  [[1, 2, 0], 'lb ft^2'],
  [[1, 2, -1], 'lb ft^2/s'],
  [[1, 1, -1], 'lbf s'],
];
const LENGTH: Dimension = [0, 1, 0];
/** m: lengths of people are in inches, longer ones in feet */
const LONG = 2.5;
const NOT_METRIC = /\b(?:ft|inch|in|yd|mile|mph|lb|lbf|oz|stone|psi|hp|g|bw|kcal|deg|rev|rad|rpm)\b/;

/** The unit in place of a metric one; undefined where it is not metric, or has no other. */
export function imperialUnit(shown: ShownUnit, dimension: Dimension, value: number): ShownUnit | undefined {
  if (NOT_METRIC.test(shown.name)) return undefined;
  const name = sameDimension(dimension, LENGTH)
    ? Math.abs(value) < LONG
      ? 'inch'
      : 'ft'
    : IMPERIAL.find(([d]) => sameDimension(d, dimension))?.[1];
  return name === undefined ? undefined : { name: name === 'inch' ? 'in' : name, factor: readUnit(name).factor };
}

/** A length of a picture: "1.62 m", "63.8 in". */
export function sizeIn(metres: number, measure: 'metric' | 'imperial' = 'metric'): string {
  const unit = (measure === 'imperial' && imperialUnit({ name: 'm', factor: 1 }, LENGTH, metres)) || {
    name: 'm',
    factor: 1,
  };
  return `${formatFigures(metres / unit.factor, 3)} ${unit.name}`;
}
