/**
 * Computes a sheet: units checked, values, both kinds of uncertainty, comparisons, plain bodies. Whatever a sheet holds,
 * this ends soon (limits.ts) and throws nothing: what is wrong is written in its line. No line assigns anything but itself.
 */
import { bareAngle, type CheckedUnit, checkSame, checkUnits, unknownName } from './check-units.ts';
import { compareRow } from './compare-row.ts';
import { articleDimension, isNone, sameDimension, siUnit } from './dimension.ts';
import { calcEdge } from './edge.ts';
import { evaluate, evaluateNumber, type Values } from './evaluate.ts';
import { type Expression, namesIn, type Unit } from './expression.ts';
import { figuresOfLink, figuresWithUnit } from './figures.ts';
import { formatExpression } from './format-expression.ts';
import { imperialUnit } from './imperial.ts';
import { type Known, linkOf, need, type Sheet, WaitingFault } from './known-sheet.ts';
import { MOST_COMPARED } from './limits.ts';
import { plainBodyOf } from './plain-body.ts';
import { RANGES, uncertainRange } from './ranges.ts';
import { readUnit } from './read-formula.ts';
import { type ReadDrawing, type ReadQuantity, type ReadSheet, readSheet, weightOf } from './read-sheet.ts';
import { READOUTS } from './readouts.ts';
import { COLUMNS, type Column, drawColumn, spreadOf } from './samples.ts';
import { quote, type Rewrite, SheetFault } from './sheet-fault.ts';
import type { Drawing, LineResult, Links, Quantity, SheetResult } from './sheet-result.ts';
import { tighten } from './tighten.ts';

export function computeSheet(
  lines: readonly string[],
  links: Links = {},
  seed = 1,
  measure: Sheet['measure'] = 'metric',
): SheetResult {
  const read = readSheet(lines);
  const known = new Map<string, Known>();
  const sheet: Sheet = { read, links, known, measure, recompute: (...given) => recompute(sheet, ...given) };
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
      if (quantity.against !== undefined && ++compared > MOST_COMPARED)
        throw new SheetFault(`At most ${MOST_COMPARED} lines of a sheet are set against the simulation.`, 'vs');
      const result = known.has(name) ? quantityResult(name, quantity, sheet) : undefined;
      if (result) results.set(quantity.line, result);
    });
  }
  for (const drawing of read.drawn)
    attempt(read, drawing.line, () => {
      const { line, source } = drawing;
      const body = bodyOf(drawing, sheet);
      const edge = calcEdge(source.of, body, sheet);
      const { of, about, at } = source;
      results.set(line, { kind: 'drawing', line, body, of, about, at, ...(edge ? { edge } : {}) });
    });
  for (const [line, text] of read.words) results.set(line, { kind: 'words', line, text });
  return {
    seed,
    lines: Array.from({ length: read.lines }, (_, line): LineResult => {
      const fault = read.faults.get(line);
      if (fault) return faultResult(fault, line, lines[line]);
      return results.get(line) ?? { kind: 'fault', line, message: 'It is not computed.' };
    }),
  };
}

function attempt(read: ReadSheet, line: number, work: () => void): void {
  if (read.faults.has(line)) return;
  try {
    work();
  } catch (error) {
    if (!(error instanceof SheetFault)) throw error;
    read.faults.set(line, error);
  }
}

/** A rewrite is offered where its piece is in the line as typed. */
function faultResult(fault: SheetFault, line: number, typed: string): LineResult {
  const { message, part } = fault;
  const fixes = fault.rewrites.flatMap(({ title, piece, by }) => {
    const at = placeOf(typed, piece);
    return at < 0 ? [] : [{ title, text: `${typed.slice(0, at)}${by}${typed.slice(at + piece.length)}` }];
  });
  return {
    kind: 'fault',
    line,
    message,
    ...(part !== undefined && placeOf(typed, part) >= 0 ? { part } : {}),
    ...(fixes.length > 0 ? { fixes } : {}),
    ...(fault instanceof WaitingFault ? { waitsFor: fault.line } : {}),
  };
}

/** Where a piece is in the formula, as a word of its own if it is one. */
function placeOf(typed: string, piece: string): number {
  const after = typed.indexOf('=') + 1;
  for (let at = typed.lastIndexOf(piece); at >= 0; at = at === 0 ? -1 : typed.lastIndexOf(piece, at - 1)) {
    const [before, next] = [typed[at - 1] ?? ' ', typed[at + piece.length] ?? ' '];
    const cuts = /[\p{L}\p{N}_]/u;
    const isApart = !(cuts.test(piece[0]) && cuts.test(before)) && !(cuts.test(piece.at(-1) ?? '') && cuts.test(next));
    if (isApart && (at >= after || typed.indexOf(piece) === at)) return at;
  }
  return -1;
}

function computeQuantity(quantity: ReadQuantity, sheet: Sheet, seed: number): Known {
  const { expression, spread, source } = quantity;
  const lookup = {
    name: (name: string) => need(name, sheet).checked,
    link: (text: string) => linkOf(text, sheet.links).checked,
  };
  const found = checkUnits(expression, lookup);
  const link = (text: string): number => linkOf(text, sheet.links).value;
  const numbers: Values<number> = { name: (name) => need(name, sheet).value, link };
  const unit = quantity.unit && unitIn(quantity.unit, found, quantity, { sheet, lookup });
  if (/^(mass|m)(_|$)/.test(source.name) && sameDimension(found.dimension, [0, 1, -2]))
    throw new SheetFault('"g" is gravity here; for grams write gram.', 'g', [
      { title: 'Write gram', piece: 'g', by: 'gram' },
    ]);
  const value = evaluateNumber(expression, numbers);

  let own: Known['own'];
  if (spread) {
    const checked = checkUnits(spread.expression, lookup);
    const size = evaluateNumber(spread.expression, numbers);
    const wanted = spread.relative ? { dimension: [0, 0, 0] as const, unit: '%' } : found;
    checkSame(wanted, checked, 'The uncertainty');
    own = { spread: Math.abs(spread.relative ? (size / 100) * value : size), index: quantity.line };
    if (!Number.isFinite(own.spread)) throw new SheetFault('The uncertainty is too large a number.', '+-');
  }
  let range = evaluate(expression, RANGES, { name: (name) => need(name, sheet).range, link });
  if (own) range = RANGES.operate('+', range, uncertainRange(-own.spread, own.spread, own.index));
  let column = makeColumn(quantity, sheet, link);
  if (own) {
    const draws = drawColumn(seed * 1009 + own.index);
    const { spread: size } = own;
    column = (column ?? COLUMNS.number(value)).map((x, i) => x + size * draws[i]);
  }
  const checked = unit ? { dimension: found.dimension, unit: unit.name } : found;
  const typed = unit ?? { name: checked.unit, factor: checked.unit === '' ? 1 : readUnit(checked.unit).factor };
  const shown = (sheet.measure === 'imperial' && imperialUnit(typed, found.dimension, value)) || typed;
  const ends = column
    ? tighten(quantity, { value, range, ...(own ? { own } : {}) }, sheet)
    : { low: value, high: value };
  return { checked, shown, value, range, ends, ...(column ? { column } : {}), ...(own ? { own } : {}) };
}

interface Within {
  readonly sheet: Sheet;
  readonly lookup: Parameters<typeof checkUnits>[1];
}

/** The unit asked for, if the line is of its kind; of a body weight with the mass of the sheet. */
function unitIn(unit: Unit, found: CheckedUnit, quantity: ReadQuantity, { sheet, lookup }: Within): Unit {
  const { expression, source } = quantity;
  const typed = `to ${(source.unit ?? []).map((t) => t.typed).join(' ')}`;
  if (!sameDimension(unit.dimension, found.dimension)) {
    const is = `${articleDimension(found.dimension)}${found.unit === '' ? '' : `, in ${found.unit}`}`;
    throw new SheetFault(
      `${source.name} is ${is}; it was asked for in ${unit.name}, ${articleDimension(unit.dimension)}.`,
      typed,
      unitFixes(found, quantity, typed),
    );
  }
  const isAngle = /\b(?:rev|deg|rpm)\b/.test(unit.name);
  if (isAngle && found.bare) throw bareAngle(expression);
  if (
    isAngle &&
    expression.kind === 'operation' &&
    expression.operator === '/' &&
    checkUnits(expression.a, lookup).bare
  )
    throw bareAngle(expression.a);
  if (unit.name !== 'bw') return unit;
  const weight = weightOf(new Set(sheet.read.lineOf.keys()));
  const factor = evaluateNumber(weight, {
    name: (name) => need(name, sheet).value,
    link: (text) => linkOf(text, sheet.links).value,
  });
  return { ...unit, factor };
}

/** What would be right in place of a unit that does not fit. */
function unitFixes(found: CheckedUnit, { source, against }: ReadQuantity, typed: string): Rewrite[] {
  if (isNone(found.dimension)) return [{ title: 'Leave the unit out', piece: ` ${typed}`, by: '' }];
  const fits = { title: `Write to ${found.unit}`, piece: typed, by: `to ${found.unit}` };
  const readout = READOUTS.find((r) => r.name === source.name && sameDimension(r.dimension, found.dimension));
  if (!readout || against) return [fits];
  return [fits, { title: `Set against ${readout.name}`, piece: typed, by: `to ${found.unit} vs {${readout.name}}` }];
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
    if (!quantity) throw unknownName(wanted, []);
    const link = (text: string): number => linkOf(text, sheet.links).value;
    const value = evaluateNumber(quantity.expression, { name: calcLine, link }) + (moved.get(wanted) ?? 0);
    done.set(wanted, value);
    return value;
  };
  try {
    return calcLine(name);
  } catch (error) {
    if (error instanceof SheetFault) return Number.NaN;
    throw error;
  }
}

function quantityResult(name: string, quantity: ReadQuantity, sheet: Sheet): Quantity {
  const known = need(name, sheet);
  const { checked, shown, value, own, column } = known;
  const { line, source, expression } = quantity;
  const draws = column ? spreadOf(column) : undefined;
  const { low, high } = known.ends;
  const bounds = draws ? { low, high, drawLow: draws.low, drawHigh: draws.high, drawsFailed: draws.failed } : {};
  const numbers = numbersOf(quantity, sheet);
  const result = {
    kind: 'quantity' as const,
    line,
    name,
    expression,
    ...(numbers === undefined ? {} : { numbers }),
    value,
    dimension: checked.dimension,
    unit: { name: shown.name, factor: shown.factor },
    ...(own ? { ownSpread: own.spread } : {}),
    ...bounds,
    ...(draws && !(Number.isFinite(low) && Number.isFinite(high)) ? { isOpen: true as const } : {}),
    assumptions: source.assumptions,
    note: source.note,
  };
  if (!quantity.against) return result;
  return { ...result, compared: compareRow(result, quantity, checked, sheet) };
}

/** The formula once more with numbers in the places of its names; nothing for a value that was put in. */
function numbersOf({ expression }: ReadQuantity, sheet: Sheet): string | undefined {
  if (expression.kind === 'link' || namesIn(expression).size === 0 || expression.kind === 'name') return undefined;
  return formatExpression(expression, {
    name: (name) => figuresWithUnit(need(name, sheet)),
    link: (text) => figuresOfLink(linkOf(text, sheet.links)),
    gravity: '9.807',
  });
}

function bodyOf({ source, mass: own }: ReadDrawing, sheet: Sheet): Drawing['body'] {
  const { checked, value } = need(source.of, sheet);
  checkSame({ dimension: [1, 2, 0], unit: siUnit([1, 2, 0]) }, checked, quote(source.of));
  const mass = own ? massOf(own, sheet) : defaultMass(sheet);
  checkSame({ dimension: [1, 0, 0], unit: 'kg' }, mass.checked, own ? 'The mass' : '"mass"');
  const body = plainBodyOf(source.body, mass.value, value);
  if (!body) throw new SheetFault(`No ${source.body} has this mass and moment.`);
  return body;
}

const massOf = (e: Expression, sheet: Sheet): Pick<Known, 'value' | 'checked'> => ({
  checked: checkUnits(e, {
    name: (name) => need(name, sheet).checked,
    link: (text) => linkOf(text, sheet.links).checked,
  }),
  value: evaluateNumber(e, {
    name: (name) => need(name, sheet).value,
    link: (text) => linkOf(text, sheet.links).value,
  }),
});

const defaultMass = (sheet: Sheet): Pick<Known, 'value' | 'checked'> =>
  sheet.read.lineOf.has('mass') ? need('mass', sheet) : linkOf('mass', sheet.links);
