/** The dimension of a formula, with an error that names both sides where they do not fit. */
import {
  addDimension,
  type Dimension,
  isNone,
  isTame,
  NONE,
  sameDimension,
  scaleDimension,
  siUnit,
  wordDimension,
} from './dimension.ts';
import { constantOf, type Expression } from './expression.ts';
import { formatExpression } from './format-expression.ts';
import { quote, rewrite, SheetFault } from './sheet-fault.ts';

/** What is known of a name or link: its dimension, and the unit it is shown in. */
export interface CheckedUnit {
  readonly dimension: Dimension;
  readonly unit: string;
  /** made of plain numbers alone: as an angle it would be radians by accident */
  readonly bare?: true;
}

interface Lookup {
  name(name: string): CheckedUnit;
  link(text: string): CheckedUnit;
}

export function checkUnits(e: Expression, of: Lookup): CheckedUnit {
  switch (e.kind) {
    case 'number':
      return e.value === Math.PI || e.value === 0 ? checkedUnit(NONE) : { ...checkedUnit(NONE), bare: true };
    case 'unit':
      return { dimension: e.unit.dimension, unit: e.unit.name };
    case 'name':
      return of.name(e.name);
    case 'link':
      return of.link(e.text);
    case 'minus':
      return checkUnits(e.a, of);
    case 'operation':
      return checkOperation(e, checkUnits(e.a, of), checkUnits(e.b, of));
    case 'call':
      return checkCall(e, of);
  }
}

const checkedUnit = (dimension: Dimension, unit = siUnit(dimension)): CheckedUnit => {
  if (!isTame(dimension)) throw new SheetFault('The powers of the units grow too large.');
  return { dimension, unit };
};

type Operation = Expression & { kind: 'operation' };

function checkOperation(e: Operation, a: CheckedUnit, b: CheckedUnit): CheckedUnit {
  const found = e.operator === '^' ? checkPower(e, a, b) : checkParts(e, a, b);
  return a.bare && b.bare
    ? { dimension: found.dimension, unit: found.unit, bare: true }
    : { dimension: found.dimension, unit: found.unit };
}

function checkParts(e: Operation, a: CheckedUnit, b: CheckedUnit): CheckedUnit {
  if (e.operator === '+' || e.operator === '-') {
    if (!sameDimension(a.dimension, b.dimension))
      throw new SheetFault(
        e.operator === '+'
          ? `${wordUnit(a)} and ${wordUnit(b)} cannot be added.`
          : `${wordUnit(b)} cannot be subtracted from ${wordUnit(a)}.`,
      );
    return a;
  }
  const dimension = addDimension(a.dimension, b.dimension, e.operator === '*' ? 1 : -1);
  // what is put in is shown in its own unit: 5 ft, 2 rev/s
  const own = typedUnit(e);
  if (own !== undefined) return checkedUnit(dimension, own);
  if (sameDimension(dimension, a.dimension) && isNone(b.dimension)) return checkedUnit(dimension, a.unit);
  if (sameDimension(dimension, b.dimension) && e.operator === '*' && isNone(a.dimension))
    return checkedUnit(dimension, b.unit);
  return checkedUnit(dimension);
}

/** The unit of one number with units behind it. */
function typedUnit(e: Expression): string | undefined {
  if (e.kind !== 'operation' || (e.operator !== '*' && e.operator !== '/')) return undefined;
  const after = unitName(e.b);
  if (after === undefined) return undefined;
  if (e.a.kind === 'number') return e.operator === '*' ? after : undefined;
  const before = typedUnit(e.a);
  return before === undefined ? undefined : `${before}${e.operator === '*' ? ' ' : '/'}${after}`;
}

function unitName(e: Expression): string | undefined {
  if (e.kind === 'unit') return e.unit.name;
  if (e.kind !== 'operation' || e.operator === '+' || e.operator === '-') return undefined;
  const a = unitName(e.a);
  if (e.operator === '^') return a === undefined || e.b.kind !== 'number' ? undefined : `${a}^${e.b.value}`;
  const b = unitName(e.b);
  return a === undefined || b === undefined || e.operator === '/' ? undefined : `${a} ${b}`;
}

function checkPower(e: Operation, a: CheckedUnit, b: CheckedUnit): CheckedUnit {
  if (!isNone(b.dimension)) throw new SheetFault(`An exponent is a plain number; here it is ${wordUnit(b)}.`);
  if (isNone(a.dimension)) return checkedUnit(NONE);
  const power = constantOf(e.b);
  if (power === undefined)
    throw new SheetFault(`${wordUnit(a)} can be raised to a number written there, not to one that is computed.`);
  return checkedUnit(scaleDimension(a.dimension, power));
}

function checkCall(e: Expression & { kind: 'call' }, of: Lookup): CheckedUnit {
  const args = e.args.map((arg) => checkUnits(arg, of));
  const [first] = args;
  switch (e.name) {
    case 'sqrt':
      return checkedUnit(scaleDimension(first.dimension, 1 / 2));
    case 'cbrt':
      return checkedUnit(scaleDimension(first.dimension, 1 / 3));
    case 'abs':
      return first;
    case 'min':
    case 'max': {
      const odd = args.find((a) => !sameDimension(a.dimension, first.dimension));
      if (odd) throw new SheetFault(`${e.name} of ${wordUnit(first)} and ${wordUnit(odd)} has no meaning.`);
      return first;
    }
    default:
      if (!isNone(first.dimension))
        throw new SheetFault(`${e.name} takes a plain number or an angle; here it is ${wordUnit(first)}.`, e.name);
      if (first.bare && /^(sin|cos|tan)$/.test(e.name)) throw bareAngle(e.args[0], e.name);
      return checkedUnit(NONE);
  }
}

/** "J (energy)" */
const wordUnit = ({ dimension, unit }: CheckedUnit): string =>
  unit === '' ? wordDimension(dimension) : `${unit} (${wordDimension(dimension)})`;

export function checkSame(wanted: CheckedUnit, found: CheckedUnit, what: string): void {
  if (!sameDimension(wanted.dimension, found.dimension))
    throw new SheetFault(`${what}: ${wordUnit(found)} and ${wordUnit(wanted)} do not fit.`);
}

/** A number that could be radians or degrees. */
export function bareAngle(e: Expression, name?: string): SheetFault {
  const text = formatExpression(e);
  const inside = e.kind === 'number' && name !== undefined ? `${name}(${text})` : undefined;
  const number = e.kind === 'name' ? undefined : text;
  return new SheetFault(
    number === undefined
      ? `${text} is a number without a unit: rad or deg? Write the unit in the line of ${text}.`
      : `${inside ? `${inside}: ` : ''}${/ /.test(text) ? `(${text})` : text} rad or ${/ /.test(text) ? `(${text})` : text} deg? Write the unit.`,
    text,
    e.kind === 'number'
      ? ['deg', 'rad'].map((unit) => ({ title: `${text} ${unit}`, piece: text, by: `${text} ${unit}` }))
      : [],
  );
}

export function unknownName(name: string, names: readonly string[]): SheetFault {
  const near = nearest(name, names);
  return new SheetFault(
    `${quote(name)} is neither a line of this sheet nor a unit.`,
    name,
    near === undefined ? [] : [rewrite(name, near)],
  );
}

/** Among the names the one that a slip of a finger or two makes of this. */
function nearest(name: string, names: readonly string[]): string | undefined {
  const scored = names.map((other) => ({ other, off: distance(name.toLowerCase(), other.toLowerCase()) }));
  const [best] = scored
    .filter(({ off }) => off <= Math.min(2, Math.ceil(name.length / 3)))
    .sort((a, b) => a.off - b.off);
  return best?.other;
}

/** Letters to put in, take out or change (Levenshtein 1966). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(next[j - 1] + 1, row[j] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length];
}
