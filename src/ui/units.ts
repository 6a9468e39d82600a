/**
 * The units that people read and type: metric or imperial, revolutions or degrees. Values come in as the page computes
 * them (m, m/s, kg, revolutions, rev/s, degrees, kg m2, kg m2/s, J, N m) and go out as text, with no more decimals than the
 * model deserves; what is typed comes back in the page's own. One setting for the page, kept in the browser.
 */

import { createSignal } from 'solid-js';
import { own } from '../../sim/math/own.ts';
import { formatNumber, parseNumber, withPlainDigits } from './numbers.ts';
import { readStored, writeStored } from './stored.ts';
import { unitTexts } from './words.ts';

export type MeasureSystem = 'metric' | 'imperial';
export type Turning = 'revolutions' | 'degrees';
export interface Units {
  readonly measure: MeasureSystem;
  readonly turning: Turning;
}

export type QuantityKind =
  | 'length'
  | 'speed'
  | 'acceleration'
  | 'mass'
  | 'angle'
  | 'jointRate'
  | 'turns'
  | 'rate'
  | 'moment'
  | 'momentum'
  | 'energy'
  | 'torque'
  | 'time';

/** How a quantity is shown: its value is `factor` times the page's own. */
interface ShownAs {
  readonly unit: string;
  readonly factor: number;
  readonly decimals: number;
  /** of an arrow key, in the shown unit; left out: the field's own */
  readonly step?: number;
}

// exact by definition: foot 0.3048 m, pound 0.45359237 kg, standard gravity 9.80665 m/s2 (international yard and pound, 1959)
const FOOT = 0.3048;
const POUND = 0.453_592_37;
const FOOT_POUND = FOOT * POUND * 9.806_65;
const LB_FT2 = POUND * FOOT * FOOT;

const METRIC: Readonly<Record<QuantityKind, ShownAs>> = {
  length: { unit: 'm', factor: 1, decimals: 2 },
  speed: { unit: 'm/s', factor: 1, decimals: 2 },
  acceleration: { unit: 'm/s²', factor: 1, decimals: 2 },
  mass: { unit: 'kg', factor: 1, decimals: 1 },
  angle: { unit: '°', factor: 1, decimals: 0 },
  jointRate: { unit: '°/s', factor: 1, decimals: 0 },
  turns: { unit: 'rev', factor: 1, decimals: 2 },
  rate: { unit: 'rev/s', factor: 1, decimals: 2 },
  moment: { unit: 'kg·m²', factor: 1, decimals: 2 },
  momentum: { unit: 'kg·m²/s', factor: 1, decimals: 1 },
  energy: { unit: 'J', factor: 1, decimals: 0 },
  torque: { unit: 'N·m', factor: 1, decimals: 0 },
  time: { unit: 's', factor: 1, decimals: 2 },
};
/** An imperial length is written in feet and inches; its factor is that of feet. */
const IMPERIAL: Partial<Readonly<Record<QuantityKind, ShownAs>>> = {
  length: { unit: unitTexts.foot, factor: 1 / FOOT, decimals: 1, step: 1 / 24 },
  speed: { unit: 'ft/s', factor: 1 / FOOT, decimals: 1, step: 0.2 },
  acceleration: { unit: 'ft/s²', factor: 1 / FOOT, decimals: 1, step: 0.1 },
  mass: { unit: 'lb', factor: 1 / POUND, decimals: 0, step: 1 },
  moment: { unit: 'lb·ft²', factor: 1 / LB_FT2, decimals: 0 },
  momentum: { unit: 'lb·ft²/s', factor: 1 / LB_FT2, decimals: 0, step: 10 },
  energy: { unit: 'ft·lb', factor: 1 / FOOT_POUND, decimals: 0 },
  torque: { unit: 'lb·ft', factor: 1 / FOOT_POUND, decimals: 0 },
};
const DEGREES: Partial<Readonly<Record<QuantityKind, ShownAs>>> = {
  turns: { unit: '°', factor: 360, decimals: 0, step: 5 },
  rate: { unit: '°/s', factor: 360, decimals: 0, step: 5 },
};

/** Everything that may be typed behind a number, in the page's own unit of each quantity. */
const TYPED: Readonly<Partial<Record<QuantityKind, Readonly<Record<string, number>>>>> = {
  length: { m: 1, cm: 0.01, mm: 0.001, ft: FOOT, "'": FOOT, in: FOOT / 12, '"': FOOT / 12 },
  speed: { 'm/s': 1, 'ft/s': FOOT },
  acceleration: { 'm/s²': 1, 'm/s2': 1, 'ft/s²': FOOT, 'ft/s2': FOOT },
  mass: { kg: 1, lb: POUND, lbs: POUND },
  angle: { '°': 1, deg: 1 },
  turns: { rev: 1, '°': 1 / 360, deg: 1 / 360 },
  rate: { 'rev/s': 1, '°/s': 1 / 360, 'deg/s': 1 / 360 },
  momentum: { 'kg·m²/s': 1, 'kgm2/s': 1, 'lb·ft²/s': LB_FT2, 'lbft2/s': LB_FT2 },
};

const KEY = 'shapeflight.units';
const START: Units = { measure: 'metric', turning: 'revolutions' };

function readKept(): Units {
  try {
    const kept = JSON.parse(readStored(KEY) ?? '{}') as Partial<Units>;
    return {
      measure: kept.measure === 'imperial' ? 'imperial' : START.measure,
      turning: kept.turning === 'degrees' ? 'degrees' : START.turning,
    };
  } catch {
    return START;
  }
}

const [units, setSignal] = createSignal<Units>(readKept());

/** The setting, tracked: a computation that formats runs again when it changes. */
export { units };

export function setUnits(part: Partial<Units>): void {
  const next = { ...units(), ...part };
  setSignal(next);
  writeStored(KEY, JSON.stringify(next));
}

/** How values are said in one setting: what draws is handed it, and reads no signal. */
export interface UnitSystem {
  shownAs(q: QuantityKind): ShownAs;
  unitOf(q: QuantityKind): string;
  toShown(q: QuantityKind, value: number): number;
  /** The number alone: "1.62", or "5 ft 3.8 in" for an imperial length. `decimals` is that of metric and revolutions. */
  sayNumber(q: QuantityKind, value: number, decimals?: number): string;
  /** Number and unit: "1.62 m", "5 ft 3.8 in", "353°". */
  say(q: QuantityKind, value: number, decimals?: number): string;
  /** Marks for floor and height lines: m between marks, their unit, and what one mark counts in it. */
  readonly lengthMarks: { readonly unit: string; readonly perUnitM: number };
}

const systems = new Map<string, UnitSystem>();

function systemOf({ measure, turning }: Units): UnitSystem {
  const name = `${measure} ${turning}`;
  const known = systems.get(name) ?? makeSystem({ measure, turning });
  systems.set(name, known);
  return known;
}

function makeSystem({ measure, turning }: Units): UnitSystem {
  const shownIn = (q: QuantityKind): ShownAs =>
    (measure === 'imperial' && IMPERIAL[q]) || (turning === 'degrees' && DEGREES[q]) || METRIC[q];
  const feet = (q: QuantityKind): boolean => q === 'length' && measure === 'imperial';
  const number = (q: QuantityKind, value: number, decimals?: number): string => {
    if (feet(q) && Number.isFinite(value)) return sayFeet(value);
    const shown = shownIn(q);
    return formatNumber(value * shown.factor, shown === METRIC[q] ? (decimals ?? shown.decimals) : shown.decimals);
  };
  return {
    shownAs: shownIn,
    unitOf: (q) => shownIn(q).unit,
    toShown: (q, value) => value * shownIn(q).factor,
    sayNumber: number,
    say: (q, value, decimals) => {
      const text = number(q, value, decimals);
      if (feet(q)) return text;
      const { unit } = shownIn(q);
      return unit.startsWith('°') ? text + unit : `${text} ${unit}`;
    },
    lengthMarks: measure === 'imperial' ? { unit: unitTexts.foot, perUnitM: FOOT } : { unit: 'm', perUnitM: 1 },
  };
}

/** That of the setting, tracked. */
export const unitSystem = (): UnitSystem => systemOf(units());

export const shownAs = (q: QuantityKind): ShownAs => unitSystem().shownAs(q);
export const unitOf = (q: QuantityKind): string => shownAs(q).unit;
export const decimalsOf = (q: QuantityKind): number => shownAs(q).decimals;
export const toShown = (q: QuantityKind, value: number): number => value * shownAs(q).factor;
export const fromShown = (q: QuantityKind, shown: number): number => shown / shownAs(q).factor;
export const sayNumber: UnitSystem['sayNumber'] = (q, value, decimals) => unitSystem().sayNumber(q, value, decimals);
export const say: UnitSystem['say'] = (q, value, decimals) => unitSystem().say(q, value, decimals);

const isFeet = (q: QuantityKind): boolean => q === 'length' && units().measure === 'imperial';

function sayFeet(m: number): string {
  const tenths = Math.round((Math.abs(m) / FOOT) * 120);
  const inches = formatNumber((tenths % 120) / 10, 1);
  const text = tenths < 120 ? `${inches} ${unitTexts.inch}` : unitTexts.feet(String(Math.floor(tenths / 120)), inches);
  return m < 0 && tenths > 0 ? `\u2212${text}` : text;
}

/** What is in a field; its unit is beside it, except in feet and inches. */
export const unitBeside = (q: QuantityKind): string => (isFeet(q) ? '' : unitOf(q));

/** Reads what was typed, with or without a unit of either system; in the page's own unit. NaN when it is no such value. */
export function parseQuantity(q: QuantityKind, typed: string): number {
  const plain = withPlainDigits(typed)
    .trim()
    .toLowerCase()
    .replace(/[′’]/g, "'")
    .replace(/[″”]|''/g, '"');
  if (q === 'length') {
    const feet = /^([-\u2212\u2013+]?)\s*(\d+(?:[.,]\d+)?)\s*(?:ft|')\s*(\d+(?:[.,]\d+)?)\s*(?:in|")?$/.exec(plain);
    if (feet)
      return (parseNumber(feet[2]) * FOOT + parseNumber(feet[3]) * (FOOT / 12)) * (feet[1] && feet[1] !== '+' ? -1 : 1);
  }
  const names = Object.entries(TYPED[q] ?? {}).sort(([a], [b]) => b.length - a.length);
  for (const [name, factor] of names)
    if (plain.endsWith(name)) return parseNumber(plain.slice(0, -name.length)) * factor;
  return parseNumber(typed) / shownAs(q).factor;
}

const OF_UNIT: Readonly<Record<string, QuantityKind>> = Object.fromEntries(
  (Object.keys(METRIC) as QuantityKind[]).map((q) => [METRIC[q].unit, q]),
);
/** The quantity of a field by its metric unit; undefined for a count. */
export const quantityOf = (unit: string): QuantityKind | undefined => own(OF_UNIT, unit);
