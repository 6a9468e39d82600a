/**
 * The units a sheet knows: a list, so that every other word stays free for names (g for gravity, h for height, T for
 * time). Factors come from mathjs's table, but for revolutions and those composed here; they are checked against NIST
 * SP 811 (2008), appendix B, in the tests.
 */
import type { Dimension } from './dimension.ts';
import type { Unit } from './expression.ts';
import { unitOf } from './mathjs-parts.ts';

/** as typed: as mathjs calls it */
const FROM_TABLE: Readonly<Record<string, string>> = {
  m: 'm',
  km: 'km',
  cm: 'cm',
  mm: 'mm',
  inch: 'inch',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  yd: 'yd',
  mile: 'mile',
  kg: 'kg',
  gram: 'gram',
  lb: 'lbm',
  lbm: 'lbm',
  oz: 'oz',
  stone: 'stone',
  s: 's',
  ms: 'ms',
  min: 'minute',
  minute: 'minute',
  hour: 'hour',
  N: 'N',
  kN: 'kN',
  lbf: 'lbf',
  kgf: 'kgf',
  J: 'J',
  kJ: 'kJ',
  MJ: 'MJ',
  W: 'W',
  kW: 'kW',
  hp: 'hp',
  Pa: 'Pa',
  kPa: 'kPa',
  MPa: 'MPa',
  bar: 'bar',
  psi: 'psi',
  rad: 'rad',
  deg: 'deg',
  Hz: 'Hz',
};

const ANGLE = 7;
const known = new Map<string, Unit>();

function put(name: string, factor: number, dimension: Dimension): void {
  known.set(name, { name, factor, dimension });
}
for (const [name, theirs] of Object.entries(FROM_TABLE)) {
  const { value, dimensions } = unitOf(theirs);
  if (dimensions.some((e, i) => i > 2 && i !== ANGLE && e !== 0))
    throw new RangeError(`${name} is no unit of mechanics`);
  put(name, value, [dimensions[0], dimensions[1], dimensions[2]]);
}
put('rev', 2 * Math.PI, [0, 0, 0]);
put('mph', 1609.344 / 3600, [0, 1, -1]);
put('kcal', 4184, [1, 2, -2]);

export const UNIT_NAMES: readonly string[] = [...known.keys(), 'in'];
/** "in" is the inch too; the parser has it as a word of its own, so the text is changed before. */
export const findUnit = (name: string): Unit | undefined => known.get(name);
