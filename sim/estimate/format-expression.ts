/** A formula on one line, as 54.0 × 1.620² ÷ 12: with its names, or with numbers in their places. */
import type { Expression } from './expression.ts';
import { showUnit } from './figures.ts';

/** What is written for a name or a readout. */
interface Written {
  name(name: string): string;
  link(text: string): string;
  /** gravity as a number */
  readonly gravity?: string;
}

const AS_TYPED: Written = { name: (name) => name, link: (text) => `{${text}}` };

const SUM = 1;
const PRODUCT = 2;
const SIDE = 3;
const POWER = 4;
const WHOLE = 5;

function strength(e: Expression): number {
  if (e.kind === 'minus') return SUM;
  if (e.kind !== 'operation') return WHOLE;
  if (e.operator === '^') return POWER;
  if (e.operator === '+' || e.operator === '-') return SUM;
  return e.side || isUnit(e.b) ? SIDE : PRODUCT;
}

const isUnit = (e: Expression): boolean =>
  (e.kind === 'unit' && e.unit.name !== 'g') ||
  (e.kind === 'operation' && e.operator !== '+' && isUnit(e.a) && (e.operator === '^' || isUnit(e.b)));

export function formatExpression(e: Expression, by: Written = AS_TYPED): string {
  const write = (inner: Expression, least: number): string => {
    const text = formatExpression(inner, by);
    return strength(inner) < least || (least >= POWER && /[ −]/.test(text) && !text.startsWith('('))
      ? `(${text})`
      : text;
  };
  switch (e.kind) {
    case 'number':
      return e.value === Math.PI ? 'π' : String(Number(e.value.toPrecision(12))).replace('-', '−');
    case 'unit':
      return e.unit.name === 'g' && by.gravity !== undefined ? by.gravity : showUnit(e.unit.name);
    case 'name':
      return by.name(e.name);
    case 'link':
      return by.link(e.text);
    case 'minus':
      return `−${write(e.a, PRODUCT)}`;
    case 'call':
      if (e.name === 'sqrt') {
        const text = formatExpression(e.args[0], by);
        return /^[\w.,π]+$/.test(text) ? `√${text}` : `√(${text})`;
      }
      return `${e.name}(${e.args.map((a) => formatExpression(a, by)).join(', ')})`;
    case 'operation':
      return formatOperation(e, write);
  }
}

function formatOperation(
  e: Expression & { kind: 'operation' },
  write: (inner: Expression, least: number) => string,
): string {
  switch (e.operator) {
    case '+':
      return `${write(e.a, SUM)} + ${write(e.b, SUM)}`;
    case '-':
      return `${write(e.a, SUM)} − ${write(e.b, PRODUCT)}`;
    case '^': {
      const raised =
        e.b.kind === 'number' && /^\d$/.test(String(e.b.value)) ? '⁰¹²³⁴⁵⁶⁷⁸⁹'[e.b.value] : `^${write(e.b, POWER)}`;
      return `${write(e.a, POWER)}${raised}`;
    }
    case '*': {
      if (isUnit(e.b))
        return e.b.kind === 'unit' && e.b.unit.name === 'deg'
          ? `${write(e.a, SIDE)}°`
          : `${write(e.a, SIDE)} ${write(e.b, SIDE)}`;
      return `${write(e.a, PRODUCT)} × ${write(e.b, PRODUCT)}`;
    }
    case '/':
      return isUnit(e.b) ? `${write(e.a, SIDE)}/${write(e.b, POWER)}` : `${write(e.a, PRODUCT)} ÷ ${write(e.b, POWER)}`;
  }
}
