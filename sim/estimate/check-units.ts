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
import { quote, SheetFault } from './sheet-fault.ts';

/** What is known of a name or link: its dimension, and the unit it is shown in. */
export interface CheckedUnit {
  readonly dimension: Dimension;
  readonly unit: string;
}

interface Lookup {
  name(name: string): CheckedUnit;
  link(text: string): CheckedUnit;
}

export function checkUnits(e: Expression, of: Lookup): CheckedUnit {
  switch (e.kind) {
    case 'number':
      return checkedUnit(NONE);
    case 'unit':
      return { dimension: e.unit.dimension, unit: e.unit.name };
    case 'name':
      return of.name(e.name);
    case 'link':
      return of.link(e.text);
    case 'minus':
      return checkUnits(e.a, of);
    case 'operation':
      return e.operator === '^' ? checkPower(e, of) : checkOperation(e, of);
    case 'call':
      return checkCall(e, of);
  }
}

const checkedUnit = (dimension: Dimension, unit = siUnit(dimension)): CheckedUnit => {
  if (!isTame(dimension)) throw new SheetFault('the powers of the units grow too large');
  return { dimension, unit };
};

type Operation = Expression & { kind: 'operation' };

function checkOperation(e: Operation, of: Lookup): CheckedUnit {
  const a = checkUnits(e.a, of);
  const b = checkUnits(e.b, of);
  if (e.operator === '+' || e.operator === '-') {
    if (!sameDimension(a.dimension, b.dimension))
      throw new SheetFault(
        e.operator === '+'
          ? `${wordUnit(a)} and ${wordUnit(b)} cannot be added`
          : `${wordUnit(b)} cannot be subtracted from ${wordUnit(a)}`,
      );
    return a;
  }
  const dimension = addDimension(a.dimension, b.dimension, e.operator === '*' ? 1 : -1);
  // "5 ft" is shown in ft
  if (e.operator === '*' && e.a.kind === 'number' && e.b.kind === 'unit') return checkedUnit(dimension, b.unit);
  if (sameDimension(dimension, a.dimension) && isNone(b.dimension)) return checkedUnit(dimension, a.unit);
  if (sameDimension(dimension, b.dimension) && e.operator === '*' && isNone(a.dimension))
    return checkedUnit(dimension, b.unit);
  return checkedUnit(dimension);
}

function checkPower(e: Operation, of: Lookup): CheckedUnit {
  const a = checkUnits(e.a, of);
  const b = checkUnits(e.b, of);
  if (!isNone(b.dimension)) throw new SheetFault(`an exponent is a plain number; here it is ${wordUnit(b)}`);
  if (isNone(a.dimension)) return checkedUnit(NONE);
  const power = constantOf(e.b);
  if (power === undefined)
    throw new SheetFault(`${wordUnit(a)} can be raised to a number written there, not to one that is computed`);
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
      if (odd) throw new SheetFault(`${e.name} of ${wordUnit(first)} and ${wordUnit(odd)} has no meaning`);
      return first;
    }
    default:
      if (!isNone(first.dimension))
        throw new SheetFault(`${e.name} takes a plain number or an angle; here it is ${wordUnit(first)}`);
      return checkedUnit(NONE);
  }
}

/** "J (energy)" */
const wordUnit = ({ dimension, unit }: CheckedUnit): string =>
  unit === '' ? wordDimension(dimension) : `${unit} (${wordDimension(dimension)})`;

export function checkSame(wanted: CheckedUnit, found: CheckedUnit, what: string): void {
  if (!sameDimension(wanted.dimension, found.dimension))
    throw new SheetFault(`${what}: ${wordUnit(found)} and ${wordUnit(wanted)} do not fit`);
}

export const unknownName = (name: string): SheetFault =>
  new SheetFault(`${quote(name)} is neither a line of this sheet nor a unit`);
