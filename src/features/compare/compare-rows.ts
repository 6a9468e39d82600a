/** The rows of the difference table as people read them, and as a sheet takes them. */
import { DEG } from '../../../sim/math/angles.ts';
import type { CompareRow } from '../../engine/compare.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { parseQuantity, type QuantityKind, sayNumber, unitBeside } from '../../ui/units.ts';
import { compareTexts as c } from './words.ts';

interface TableRow {
  readonly key: CompareRow['key'];
  readonly title: string;
  readonly unit: string;
  readonly base: string;
  readonly other: string;
  /** with its sign; empty where one of the two has no number */
  readonly difference: string;
  /** "more", "less past", "same" */
  readonly word: string;
  /** the word says what a sign would not */
  readonly isWordShown: boolean;
  /** -1 to 1: difference as a share of the larger of the two */
  readonly share: number;
}

interface Look {
  readonly quantity: QuantityKind;
  readonly factor: number;
  readonly decimals?: number;
}
const LOOKS: Readonly<Record<CompareRow['unit'], Look>> = {
  rev: { quantity: 'turns', factor: 1 },
  'rev/s': { quantity: 'rate', factor: 1 },
  rad: { quantity: 'angle', factor: DEG },
  'kg m2': { quantity: 'moment', factor: 1 },
  'kg m2/s': { quantity: 'momentum', factor: 1 },
  J: { quantity: 'energy', factor: 1 },
  s: { quantity: 'time', factor: 1 },
  m: { quantity: 'length', factor: 1 },
};
/** Listed even where both have none of it. */
const ALWAYS: ReadonlySet<string> = new Set(['somersaults', 'twists', 'landingShort']);
/** A tilt deserves a tenth of a degree, a landing does not. */
const TENTHS: ReadonlySet<string> = new Set(['greatestTilt', 'landingTilt']);

const lookOf = (row: CompareRow): Look => ({
  ...LOOKS[row.unit],
  ...(TENTHS.has(row.key) ? { decimals: 1 } : {}),
});

export function listRows(rows: readonly CompareRow[]): TableRow[] {
  const isSaid = (row: TableRow): boolean =>
    ALWAYS.has(row.key) ? row.base !== '–' || row.other !== '–' : /[1-9]/.test(row.base + row.other);
  return rows
    .map((row) => {
      const { quantity, factor, decimals } = lookOf(row);
      const number = (v: number | undefined): string =>
        v === undefined ? '–' : sayNumber(quantity, v * factor, decimals);
      const [x, y] = row.values;
      const d = row.differences[1];
      // of the two as they are shown: 0.05 is what a reader finds between 0.95 and 1.00
      const shown =
        d === undefined ? undefined : parseQuantity(quantity, number(y)) - parseQuantity(quantity, number(x));
      const size = shown === undefined ? '' : sayNumber(quantity, Math.abs(shown), decimals);
      // what rounds to nothing is nothing to a reader
      const same = d !== undefined && (row.words[1] === 'same' || !/[1-9]/.test(size));
      return {
        key: row.key,
        title: c.rows[row.key],
        unit: unitBeside(quantity),
        base: row.key === 'landingShort' ? sayLanding(x, factor) : number(x),
        other: row.key === 'landingShort' ? sayLanding(y, factor) : number(y),
        difference:
          d === undefined ? '' : same ? c.same : row.key === 'landingShort' ? size : `${d < 0 ? '\u2212' : '+'}${size}`,
        isWordShown: row.key === 'landingShort',
        word: same ? c.same : row.words[1],
        share: d === undefined || same ? 0 : d / Math.max(Math.abs(x ?? 0), Math.abs(y ?? 0), 1e-12),
      };
    })
    .filter(isSaid);
}

function sayLanding(v: number | undefined, factor: number): string {
  if (v === undefined) return '–';
  const deg = Math.round(Math.abs(v * factor));
  return deg === 0 ? '0' : `${formatNumber(deg, 0)} ${v > 0 ? c.short : c.past}`;
}

/** Of one version in the table of all. */
interface AllCell {
  readonly value: string;
  /** against the first; empty where a ratio says nothing */
  readonly ratio: string;
}

interface AllRow {
  readonly key: CompareRow['key'];
  readonly title: string;
  readonly unit: string;
  readonly cells: readonly AllCell[];
}

/** Angles at the end are counted from an attitude, work from nothing: how many times as much says nothing of them. */
const NO_RATIO: ReadonlySet<string> = new Set(['landingShort', 'landingTilt', 'greatestTilt']);
/** Under this share of the largest a value is no measure for the others. */
const LEAST_BASE = 0.02;

/** v as times the base; undefined where that says nothing. */
function ratioOf(row: CompareRow, k: number): number | undefined {
  const [base, v] = [row.values[0], row.values[k]];
  if (base === undefined || v === undefined || k === 0 || NO_RATIO.has(row.key)) return undefined;
  const largest = Math.max(...row.values.map((one) => Math.abs(one ?? 0)));
  return base > LEAST_BASE * largest && v >= 0 ? v / base : undefined;
}

/** Each version with its values, and how many times those of the first they are. */
export function listAllRows(rows: readonly CompareRow[]): AllRow[] {
  return rows
    .map((row): AllRow => {
      const { quantity, factor, decimals } = lookOf(row);
      const cells = row.values.map((v, k): AllCell => {
        const value =
          row.key === 'landingShort'
            ? sayLanding(v, factor)
            : v === undefined
              ? '–'
              : sayNumber(quantity, v * factor, decimals);
        const ratio = ratioOf(row, k);
        return { value, ratio: ratio === undefined ? '' : c.times(formatNumber(ratio, 2)) };
      });
      return { key: row.key, title: c.rows[row.key], unit: unitBeside(quantity), cells };
    })
    .filter(({ key, cells }) =>
      ALWAYS.has(key) ? cells.some((one) => one.value !== '–') : cells.some((one) => /[1-9]/.test(one.value)),
    );
}

const cell = (text: string): string => (/[",\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);

/**
 * All versions, the first as the base. Comma, point and plain minus, two decimals more than are shown; metric units and revolutions, whatever the page
 * shows. Of each other version also what it has more, how many times as much, and the word.
 */
export function formatCsv(rows: readonly CompareRow[], names: readonly string[]): string {
  const UNITS: Readonly<Record<CompareRow['unit'], string>> = {
    rev: 'rev',
    'rev/s': 'rev/s',
    rad: 'deg',
    'kg m2': 'kg m2',
    'kg m2/s': 'kg m2/s',
    J: 'J',
    s: 's',
    m: 'm',
  };
  const others = names.slice(1);
  const lines = rows.map((row) => {
    const { factor, decimals } = lookOf(row);
    const fixed = (v: number | undefined): string =>
      v === undefined ? '' : (v * factor).toFixed((decimals ?? 2) + 2).replace(/^-(?=0\.?0*$)/, '');
    const against = others.flatMap((_, i) => [
      fixed(row.differences[i + 1]),
      ratioOf(row, i + 1)?.toFixed(4) ?? '',
      row.words[i + 1] ?? '',
    ]);
    return [c.rows[row.key], UNITS[row.unit], ...row.values.map(fixed), ...against];
  });
  const head = [
    c.csv.measure,
    c.csv.unit,
    ...names,
    ...others.flatMap((name) => [c.csv.difference, c.csv.ratio, c.csv.word].map((what) => `${name}: ${what}`)),
  ];
  return `${[head, ...lines].map((line) => line.map(cell).join(',')).join('\n')}\n`;
}

/** The three differences that matter most, for ears. */
export function speakRows(rows: readonly TableRow[]): string {
  const main = ['somersaults', 'twists', 'landingShort', 'peakTwistRate', 'airTime'];
  return rows
    .filter((r) => main.includes(r.key) && r.word !== '' && r.word !== c.same)
    .map((r) => c.spokenRow(r.title, r.difference.replace(/^[+\u2212]/, ''), r.unit, r.word))
    .join('; ');
}
