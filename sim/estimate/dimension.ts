/** Dimensions of mechanics: exponents of mass, length and time. An angle has none (radian = 1, NIST SP 811, 2008, sec. 7.10). */
export type Dimension = readonly [mass: number, length: number, time: number];

export const NONE: Dimension = [0, 0, 0];
/** Exponents as far as these name a quantity; beyond them a formula has gone wrong. */
const LARGEST_EXPONENT = 12;
const EQUAL = 1e-9;

export const isNone = (d: Dimension): boolean => sameDimension(d, NONE);
export const sameDimension = (a: Dimension, b: Dimension): boolean => a.every((x, i) => Math.abs(x - b[i]) < EQUAL);
export const addDimension = (a: Dimension, b: Dimension, times = 1): Dimension => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];
export const scaleDimension = (a: Dimension, k: number): Dimension => [a[0] * k, a[1] * k, a[2] * k];
export const isTame = (d: Dimension): boolean => d.every((x) => Number.isFinite(x) && Math.abs(x) <= LARGEST_EXPONENT);

interface Named {
  readonly dimension: Dimension;
  readonly unit: string;
  /** what the quantity is called */
  readonly word: string;
}

/** The unit a result is shown in where a line asks for none; all are coherent SI units (factor 1). */
const NAMED: readonly Named[] = [
  { dimension: [0, 0, 0], unit: '', word: 'a plain number' },
  { dimension: [1, 0, 0], unit: 'kg', word: 'mass' },
  { dimension: [0, 1, 0], unit: 'm', word: 'length' },
  { dimension: [0, 0, 1], unit: 's', word: 'time' },
  { dimension: [0, 0, -1], unit: 'rad/s', word: 'rate' },
  { dimension: [0, 0, -2], unit: 'rad/s^2', word: 'change of rate' },
  { dimension: [0, 2, 0], unit: 'm^2', word: 'area' },
  { dimension: [0, 3, 0], unit: 'm^3', word: 'volume' },
  { dimension: [0, 1, -1], unit: 'm/s', word: 'speed' },
  { dimension: [0, 1, -2], unit: 'm/s^2', word: 'acceleration' },
  { dimension: [0, 2, -2], unit: 'J/kg', word: 'energy per mass' },
  { dimension: [1, 1, -1], unit: 'N s', word: 'momentum' },
  { dimension: [1, 1, -2], unit: 'N', word: 'force' },
  { dimension: [1, 2, -2], unit: 'J', word: 'energy or torque' },
  { dimension: [1, 2, -3], unit: 'W', word: 'power' },
  { dimension: [1, 2, 0], unit: 'kg m^2', word: 'moment of inertia' },
  { dimension: [1, 2, -1], unit: 'kg m^2/s', word: 'angular momentum' },
  { dimension: [1, -1, -2], unit: 'Pa', word: 'pressure' },
  { dimension: [1, 0, -2], unit: 'N/m', word: 'stiffness' },
  { dimension: [1, -3, 0], unit: 'kg/m^3', word: 'density' },
];

const find = (d: Dimension): Named | undefined => NAMED.find((n) => sameDimension(n.dimension, d));

/** The SI unit of a dimension, as it is typed. */
export function siUnit(d: Dimension): string {
  const named = find(d);
  if (named) return named.unit;
  const up = power(d, 1);
  const down = power(d, -1);
  if (down === '') return up;
  return `${up || '1'}/${down.includes(' ') ? `(${down})` : down}`;
}

function power(d: Dimension, sign: 1 | -1): string {
  return ['kg', 'm', 's']
    .map((unit, i) => {
      const e = sign * d[i];
      if (e <= EQUAL) return '';
      return Math.abs(e - 1) < EQUAL ? unit : `${unit}^${Number(e.toFixed(4))}`;
    })
    .filter((text) => text !== '')
    .join(' ');
}

/** What it measures: "energy or torque". */
export const wordDimension = (d: Dimension): string => find(d)?.word ?? siUnit(d);
/** "a length", "an area" */
export function articleDimension(d: Dimension): string {
  const word = wordDimension(d);
  if (isNone(d) || !find(d)) return word;
  return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}
