/**
 * Computes a sheet: units checked, values, both kinds of uncertainty, comparisons, plain bodies. Whatever a sheet holds,
 * this ends soon (limits.ts) and throws nothing: what is wrong is written in its line. No line assigns anything but itself.
 */
import { checkSame, checkUnits, unknownName } from './check-units.ts';
import { compareRow } from './compare-row.ts';
import { siUnit } from './dimension.ts';
import { evaluate, NUMBERS, type Values } from './evaluate.ts';
import { type Known, linkOf, need, type Sheet } from './known-sheet.ts';
import { MOST_COMPARED } from './limits.ts';
import { plainBodyOf } from './plain-body.ts';
import { RANGES, uncertainRange } from './ranges.ts';
import { readUnit } from './read-formula.ts';
import { type ReadQuantity, type ReadSheet, readSheet } from './read-sheet.ts';
import { COLUMNS, type Column, drawColumn, spreadOf } from './samples.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import type { Drawing, LineResult, Links, Quantity, SheetResult } from './sheet-result.ts';
import { tighten } from './tighten.ts';

export function computeSheet(lines: readonly string[], links: Links = {}, seed = 1): SheetResult {
  const read = readSheet(lines);
  const known = new Map<string, Known>();
  const sheet: Sheet = { read, links, known, recompute: (...given) => recompute(sheet, ...given) };
  const results = new Map<number, LineResult>();
  let compared = 0;
  for (const name of read.order) {
    const quantity = read.quantities.get(name);
    if (!quantity || read.faults.has(quantity.line)) continue;
    attempt(read, quantity.line, () => {
      known.set(name, computeQuantity(quantity, sheet, seed));
    });
  }
  for (const [name, quantity] of read.quantities) {
    attempt(read, quantity.line, () => {
      if (quantity.source.against !== undefined && ++compared > MOST_COMPARED)
        throw new SheetFault(`at most ${MOST_COMPARED} lines of a sheet are set against the simulation`);
      const result = known.has(name) ? tellQuantity(name, quantity, sheet) : undefined;
      if (result) results.set(quantity.line, result);
    });
  }
  for (const { line, source } of read.drawn)
    attempt(read, line, () => {
      const body = bodyOf(source, sheet);
      results.set(line, { kind: 'drawing', line, body, of: source.of, about: source.about, at: source.at });
    });
  for (const [line, text] of read.words) results.set(line, { kind: 'words', line, text });
  return {
    seed,
    lines: Array.from({ length: read.lines }, (_, line): LineResult => {
      const message = read.faults.get(line);
      if (message !== undefined) return { kind: 'fault', line, message };
      return results.get(line) ?? { kind: 'fault', line, message: 'not computed' };
    }),
  };
}

function attempt(read: ReadSheet, line: number, work: () => void): void {
  if (read.faults.has(line)) return;
  try {
    work();
  } catch (error) {
    if (!(error instanceof SheetFault)) throw error;
    read.faults.set(line, error.message);
  }
}

function computeQuantity(quantity: ReadQuantity, sheet: Sheet, seed: number): Known {
  const { expression, spread, unit } = quantity;
  const lookup = {
    name: (name: string) => need(name, sheet).checked,
    link: (text: string) => linkOf(text, sheet.links).checked,
  };
  const found = checkUnits(expression, lookup);
  if (unit) checkSame({ dimension: unit.dimension, unit: unit.name }, found, 'the unit asked for');
  const link = (text: string): number => linkOf(text, sheet.links).value;
  const numbers: Values<number> = { name: (name) => need(name, sheet).value, link };
  const value = evaluate(expression, NUMBERS, numbers);
  if (!Number.isFinite(value)) throw new SheetFault('the result is no number (a division by zero, or too large)');

  let own: Known['own'];
  if (spread) {
    const checked = checkUnits(spread.expression, lookup);
    checkSame(spread.relative ? { dimension: [0, 0, 0], unit: '%' } : found, checked, 'the uncertainty');
    const raw = evaluate(spread.expression, NUMBERS, numbers);
    const size = Math.abs(spread.relative ? (raw / 100) * value : raw);
    if (!Number.isFinite(size)) throw new SheetFault('the uncertainty is no number');
    own = { spread: size, index: quantity.line };
  }
  let range = evaluate(expression, RANGES, { name: (name) => need(name, sheet).range, link });
  if (own) range = RANGES.operate('+', range, uncertainRange(-own.spread, own.spread, own.index));
  let column = makeColumn(quantity, sheet, link);
  if (own) {
    const draws = drawColumn(seed * 1009 + own.index);
    const size = own.spread;
    column = (column ?? COLUMNS.number(value)).map((x, i) => x + size * draws[i]);
  }
  const checked = unit ? { dimension: found.dimension, unit: unit.name } : found;
  const ends = column
    ? tighten(quantity, { value, range, ...(own ? { own } : {}) }, sheet)
    : { low: value, high: value };
  return { checked, value, range, ends, ...(column ? { column } : {}), ...(own ? { own } : {}) };
}

/** Draws, where anything it needs has any. */
function makeColumn(quantity: ReadQuantity, sheet: Sheet, link: (text: string) => number): Column | undefined {
  if (!quantity.needs.some((name) => need(name, sheet).column)) return undefined;
  return evaluate(quantity.expression, COLUMNS, {
    name: (name) => {
      const { column, value } = need(name, sheet);
      return column ?? COLUMNS.number(value);
    },
    link,
  });
}

function recompute(
  sheet: Sheet,
  name: string,
  instead: ReadonlyMap<string, number>,
  moved: ReadonlyMap<string, number> = new Map(),
): number {
  const done = new Map<string, number>();
  const calcLine = (wanted: string): number => {
    const found = done.get(wanted) ?? instead.get(wanted);
    if (found !== undefined) return found;
    const quantity = sheet.read.quantities.get(wanted);
    if (!quantity) throw unknownName(wanted);
    const link = (text: string): number => linkOf(text, sheet.links).value;
    const value = evaluate(quantity.expression, NUMBERS, { name: calcLine, link }) + (moved.get(wanted) ?? 0);
    done.set(wanted, value);
    return value;
  };
  return calcLine(name);
}

function tellQuantity(name: string, quantity: ReadQuantity, sheet: Sheet): Quantity {
  const known = need(name, sheet);
  const { checked, value, own, column } = known;
  const { line, source, expression } = quantity;
  const unit = checked.unit === '' ? { name: '', factor: 1 } : readUnit(checked.unit);
  const draws = column ? spreadOf(column) : undefined;
  const { low, high } = known.ends;
  const bounds = draws ? { low, high, drawLow: draws.low, drawHigh: draws.high, drawsFailed: draws.failed } : {};
  const result = {
    kind: 'quantity' as const,
    line,
    name,
    expression,
    value,
    dimension: checked.dimension,
    unit: { name: unit.name, factor: unit.factor },
    ...(own ? { ownSpread: own.spread } : {}),
    ...bounds,
    assumptions: source.assumptions,
    note: source.note,
  };
  if (source.against === undefined) return result;
  return { ...result, compared: compareRow(result, source.against, checked, sheet) };
}

function bodyOf(source: { body: Drawing['body']['kind']; of: string }, sheet: Sheet): Drawing['body'] {
  const { checked, value } = need(source.of, sheet);
  checkSame({ dimension: [1, 2, 0], unit: siUnit([1, 2, 0]) }, checked, quote(source.of));
  const mass = sheet.known.has('mass')
    ? need('mass', sheet)
    : { value: linkOf('mass', sheet.links).value, checked: { dimension: [1, 0, 0] as const, unit: 'kg' } };
  checkSame({ dimension: [1, 0, 0], unit: 'kg' }, mass.checked, '"mass"');
  const body = plainBodyOf(source.body, mass.value, value);
  if (!body) throw new SheetFault(`no ${source.body} has this mass and moment`);
  return body;
}
