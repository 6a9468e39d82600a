/**
 * The units a sheet knows. The plain ones are no names; the usual other spellings of them (seconds, lbs, turns) give way to
 * a line of that name. Factors come from mathjs's table, but for those composed here; they are checked against NIST
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
  yd: 'yd',
  mile: 'mile',
  kg: 'kg',
  gram: 'gram',
  lb: 'lbm',
  oz: 'oz',
  stone: 'stone',
  s: 's',
  ms: 'ms',
  min: 'minute',
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
/** Other words for them that were units before there were spellings: no line has such a name. */
const ALSO: Readonly<Record<string, string>> = { foot: 'ft', feet: 'ft', lbm: 'lb', minute: 'min' };

/** Usual spellings; a line of the same name is meant before them. */
const SPELLINGS: Readonly<Record<string, string>> = {
  m: 'metre metres meter meters',
  km: 'kilometre kilometres kilometer kilometers Km KM',
  cm: 'centimetre centimetres centimeter centimeters cms Cm CM',
  mm: 'millimetre millimetres millimeter millimeters',
  inch: 'inches ins',
  ft: 'Ft FT',
  yd: 'yard yards yds',
  mile: 'miles mi',
  kg: 'kgs Kg KG kilo kilos kilogram kilograms kilogramme kilogrammes',
  gram: 'grams gramme grammes gm gms',
  lb: 'lbs Lb LB Lbs LBS pound pounds',
  oz: 'ounce ounces',
  stone: 'st stones',
  s: 'sec secs second seconds Sec',
  ms: 'msec millisecond milliseconds',
  min: 'mins minutes',
  hour: 'hours hr hrs',
  N: 'newton newtons Newton Newtons',
  kN: 'kilonewton kilonewtons',
  J: 'joule joules Joule Joules',
  kJ: 'kilojoule kilojoules',
  W: 'watt watts',
  Pa: 'pascal pascals',
  rad: 'rads radian radians',
  deg: 'degs degree degrees Deg',
  rev: 'revs revolution revolutions turn turns',
  mph: 'Mph MPH',
  kph: 'Kph KPH kmh kmph',
  Hz: 'hz HZ hertz',
  kcal: 'kilocalorie kilocalories',
};

const ANGLE = 7;
const known = new Map<string, Unit>();
const soft = new Map<string, Unit>();

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
for (const [word, name] of Object.entries(ALSO)) known.set(word, known.get(name) as Unit);

const softly = (name: string, factor: number, dimension: Dimension): void => {
  soft.set(name, { name, factor, dimension });
};
/** Gravity as a unit, never the gram: NIST SP 811, appendix B.8. */
export const STANDARD_GRAVITY = 9.80665;
softly('g', STANDARD_GRAVITY, [0, 1, -2]);
softly('kph', 1000 / 3600, [0, 1, -1]);
softly('rpm', (2 * Math.PI) / 60, [0, 0, -1]);
for (const name of ['m', 'cm', 'mm', 's', 'ft', 'inch'])
  for (const power of [2, 3]) {
    const { factor, dimension: d } = known.get(name) as Unit;
    soft.set(`${name === 'inch' ? 'in' : name}${power}`, {
      name: `${name}^${power}`,
      factor: factor ** power,
      dimension: [0, d[1] * power, d[2] * power],
    });
  }
soft.set('Nm', { name: 'N m', factor: 1, dimension: [1, 2, -2] });
soft.set('kgm', { name: 'kg m', factor: 1, dimension: [1, 1, 0] });
soft.set('kgm2', { name: 'kg m^2', factor: 1, dimension: [1, 2, 0] });
/** The weight of the mass of the sheet: its factor is known when the mass is. */
export const BODY_WEIGHT: Unit = { name: 'bw', factor: 1, dimension: [1, 1, -2] };
for (const word of ['bw', 'BW', 'bodyweight', 'bodyweights']) soft.set(word, BODY_WEIGHT);
for (const [name, words] of Object.entries(SPELLINGS))
  for (const word of words.split(' ')) soft.set(word, (known.get(name) ?? soft.get(name)) as Unit);

export const UNIT_NAMES: readonly string[] = [...known.keys(), 'in'];
/** A word that no line may have for a name. */
export const findUnit = (name: string): Unit | undefined => (name === 'in' ? known.get('inch') : known.get(name));
/** A spelling of a unit, where no line has this name. */
export const findSpelling = (name: string): Unit | undefined => soft.get(name);
