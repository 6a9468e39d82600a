/**
 * From the tokens of a formula to an Expression. mathjs parses; of what it returns only the kinds of nodes named here are
 * let through, rebuilt as our own. No assignment, function definition, list, range, text, object or property passes, and
 * nothing that came from a sheet is ever evaluated by mathjs.
 */
import { addDimension, isTame, NONE, scaleDimension } from './dimension.ts';
import { childrenOf, constantOf, type Expression, FUNCTIONS, type FunctionName, type Unit } from './expression.ts';
import { type FormulaText, LINK, WORD, writeFormula } from './formula-text.ts';
import { MOST_NODES } from './limits.ts';
import { checkName } from './line.ts';
import { type ParsedNode, parseExpression } from './mathjs-parts.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import { type LineToken, tokenize } from './tokens.ts';
import { findSpelling, findUnit } from './units.ts';

const OPERATIONS = new Set(['+', '-', '*', '/', '^']);
const NO_NAMES: ReadonlySet<string> = new Set();

/** `names`: the lines of the sheet, which are meant before a unit of the same spelling. */
export function readFormula(tokens: readonly LineToken[], names: ReadonlySet<string> = NO_NAMES): Expression {
  if (tokens.length === 0) throw new SheetFault('The formula is missing.');
  const written = writeFormula(tokens, names);
  let node: ParsedNode;
  try {
    node = parseExpression(written.text);
  } catch {
    throw new SheetFault(`${quote(tokens.map((t) => t.typed).join(' '))} cannot be read as a formula.`);
  }
  let left = MOST_NODES;
  const take = (n: ParsedNode): Expression => {
    if (--left < 0) throw new SheetFault(`The formula is too long; at most ${MOST_NODES} parts.`);
    return read(n, written, names, take);
  };
  return take(node);
}

type Take = (node: ParsedNode) => Expression;

function read(node: ParsedNode, written: FormulaText, names: ReadonlySet<string>, take: Take): Expression {
  switch (node.type) {
    case 'ConstantNode':
      if (typeof node.value !== 'number') throw new SheetFault(`${quote(String(node.value))} is no number.`);
      if (!Number.isFinite(node.value)) throw new SheetFault('A number in the formula is too large.');
      return { kind: 'number', value: node.value };
    case 'SymbolNode':
      return readSymbol(String(node.name), written, names);
    case 'ParenthesisNode':
      if (node.content) return take(node.content);
      break;
    case 'OperatorNode':
      return readOperation(node, take);
    case 'FunctionNode':
      return readCall(node, take);
  }
  throw new SheetFault('This cannot be read as a formula.');
}

function readSymbol(name: string, { words, links }: FormulaText, names: ReadonlySet<string>): Expression {
  if (name.startsWith(LINK)) {
    const link = links[Number(name.slice(1))];
    if (!link) throw new SheetFault('Between a readout in braces and what follows an operator is missing.');
    return { kind: 'link', text: link.text };
  }
  const word = name.startsWith(WORD) ? words[Number(name.slice(1))] : undefined;
  if (!word) throw new SheetFault('Between two words an operator is missing.');
  const { text } = word;
  if (text === 'pi') return { kind: 'number', value: Math.PI };
  const unit = findUnit(text) ?? (names.has(text) ? undefined : findSpelling(text));
  if (unit) return { kind: 'unit', unit };
  return { kind: 'name', name: checkName(text) };
}

function readOperation(node: ParsedNode, take: Take): Expression {
  const args = node.args ?? [];
  const op = String(node.op);
  if (args.length === 1 && op === '-') return { kind: 'minus', a: take(args[0]) };
  if (args.length === 1 && op === '+') return take(args[0]);
  if (args.length !== 2 || !OPERATIONS.has(op)) throw new SheetFault(`${quote(op)} has no place in a formula.`);
  return {
    kind: 'operation',
    operator: op as '+',
    a: take(args[0]),
    b: take(args[1]),
    ...(node.implicit ? { side: true } : {}),
  };
}

function readCall(node: ParsedNode, take: Take): Expression {
  const fn = node.fn as ParsedNode | undefined;
  const name = fn?.type === 'SymbolNode' ? String(fn.name) : '';
  if (!(FUNCTIONS as readonly string[]).includes(name))
    throw new SheetFault(`Before a bracket comes an operator or a function. There are: ${FUNCTIONS.join(', ')}.`);
  const args = (node.args ?? []).map(take);
  const most = name === 'min' || name === 'max' ? 8 : 1;
  if (args.length < 1 || args.length > most)
    throw new SheetFault(`${name} takes ${most === 1 ? 'one value' : `1 to ${most} values`}.`, name);
  return { kind: 'call', name: name as FunctionName, args };
}

/** A unit to show a result in, as "kg m^2": products and powers of known units. */
export function readUnit(given: string | readonly LineToken[]): Unit {
  const tokens = typeof given === 'string' ? tokenize(given).tokens : given;
  const text = tokens.map((t) => t.typed).join(' ');
  if (tokens.length === 0) throw new SheetFault('After "to" comes a unit.', 'to');
  const unit = combine(readFormula(tokens), text);
  return { ...unit, name: tidy(tokens.map(canonical)) };
}

const canonical = (t: LineToken): string =>
  t.kind === 'word' ? ((findUnit(t.text) ?? findSpelling(t.text))?.name ?? t.text) : t.text;

function combine(e: Expression, text: string): Omit<Unit, 'name'> {
  if (e.kind === 'unit') return e.unit;
  if (e.kind === 'number' && e.value === 1) return { factor: 1, dimension: NONE };
  if (e.kind === 'operation' && (e.operator === '*' || e.operator === '/')) {
    const a = combine(e.a, text);
    const b = combine(e.b, text);
    const sign = e.operator === '*' ? 1 : -1;
    return { factor: a.factor * b.factor ** sign, dimension: addDimension(a.dimension, b.dimension, sign) };
  }
  const power = e.kind === 'operation' && e.operator === '^' ? constantOf(e.b) : undefined;
  if (e.kind === 'operation' && power !== undefined) {
    const a = combine(e.a, text);
    const dimension = scaleDimension(a.dimension, power);
    const factor = a.factor ** power;
    if (isTame(dimension) && Number.isFinite(factor) && factor > 0) return { factor, dimension };
  }
  const odd = oddName(e);
  throw new SheetFault(
    odd ? `${quote(odd)} is no unit known here.` : `${quote(text)} is no unit.`,
    odd ?? `to ${text}`,
  );
}

function oddName(e: Expression): string | undefined {
  if (e.kind === 'name') return e.name;
  for (const child of childrenOf(e)) {
    const found = oddName(child);
    if (found !== undefined) return found;
  }
  return undefined;
}

const tidy = (parts: readonly string[]): string =>
  parts
    .join(' ')
    .replace(/\s*([*/^()])\s*/g, '$1')
    .replace(/\*/g, ' ')
    .replace(/\/(\w+(?:\^\d)?)\(/g, '/$1 (')
    .replace(/\^\((-?\d+)\)/g, '^$1')
    .replace(/\s+/g, ' ')
    .trim();
