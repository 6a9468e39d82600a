/**
 * From the text of a formula to an Expression. mathjs parses; of what it returns only the kinds of nodes named here are
 * let through, rebuilt as our own. No assignment, function definition, list, range, text, object or property passes, and
 * nothing that came from a sheet is ever evaluated by mathjs.
 */
import { addDimension, isTame, NONE, scaleDimension } from './dimension.ts';
import { childrenOf, constantOf, type Expression, FUNCTIONS, type FunctionName, type Unit } from './expression.ts';
import { MOST_NODES } from './limits.ts';
import { checkName, LINK } from './line.ts';
import { type ParsedNode, parseExpression } from './mathjs-parts.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import { findUnit } from './units.ts';

const OPERATIONS = new Set(['+', '-', '*', '/', '^']);
/** What a node that is not let through is, in words. */
const REFUSED: Readonly<Record<string, string>> = {
  AccessorNode: 'a property of something',
  ArrayNode: 'a list',
  AssignmentNode: 'an assignment',
  BlockNode: 'several formulas in one',
  ConditionalNode: 'a condition',
  FunctionAssignmentNode: 'the definition of a function',
  IndexNode: 'an index',
  ObjectNode: 'an object',
  RangeNode: 'a range',
  RelationalNode: 'a comparison',
};

export function readFormula(text: string, links: readonly string[]): Expression {
  // "in" is an operator to the parser
  const form = text.replace(/\bin\b/g, 'inch');
  let node: ParsedNode;
  try {
    node = parseExpression(form);
  } catch (error) {
    throw new SheetFault(`${quote(showLinks(text, links))} cannot be read as a formula${placeOf(error)}`);
  }
  let left = MOST_NODES;
  const take = (n: ParsedNode): Expression => {
    if (--left < 0) throw new SheetFault(`the formula is too long; at most ${MOST_NODES} parts`);
    return read(n, links, take);
  };
  return take(node);
}

type Take = (node: ParsedNode) => Expression;

function read(node: ParsedNode, links: readonly string[], take: Take): Expression {
  switch (node.type) {
    case 'ConstantNode':
      if (typeof node.value !== 'number') throw new SheetFault(`${quote(String(node.value))} is no number`);
      if (!Number.isFinite(node.value)) throw new SheetFault('a number in the formula is too large');
      return { kind: 'number', value: node.value };
    case 'SymbolNode':
      return readSymbol(String(node.name), links);
    case 'ParenthesisNode':
      if (node.content) return take(node.content);
      break;
    case 'OperatorNode':
      return readOperation(node, take);
    case 'FunctionNode':
      return readCall(node, take);
  }
  throw new SheetFault(`${REFUSED[node.type] ?? 'this'} has no place in a formula`);
}

function readSymbol(name: string, links: readonly string[]): Expression {
  if (name.startsWith(LINK)) {
    const text = links[Number(name.slice(1))];
    if (text === undefined)
      throw new SheetFault('a readout in braces needs an operator before it; put an operator before it');
    return { kind: 'link', text };
  }
  if (name === 'pi') return { kind: 'number', value: Math.PI };
  const unit = findUnit(name);
  if (unit) return { kind: 'unit', unit };
  return { kind: 'name', name: checkName(name) };
}

function readOperation(node: ParsedNode, take: Take): Expression {
  const args = node.args ?? [];
  const op = String(node.op);
  if (args.length === 1 && op === '-') return { kind: 'minus', a: take(args[0]) };
  if (args.length === 1 && op === '+') return take(args[0]);
  if (args.length !== 2 || !OPERATIONS.has(op))
    throw new SheetFault(`the operator ${quote(op)} has no place in a formula`);
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
    throw new SheetFault(
      `${quote(name)} is no function known here (to multiply by a bracket write *); there are: ${FUNCTIONS.join(', ')}`,
    );
  const args = (node.args ?? []).map(take);
  const most = name === 'min' || name === 'max' ? 8 : 1;
  if (args.length < 1 || args.length > most)
    throw new SheetFault(`${name} takes ${most === 1 ? 'one value' : `1 to ${most} values`}`);
  return { kind: 'call', name: name as FunctionName, args };
}

/** A unit to show a result in, as "kg m^2": products and powers of known units. */
export function readUnit(text: string): Unit {
  const e = readFormula(text, []);
  const unit = combine(e, text);
  return { ...unit, name: tidy(text) };
}

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
  throw new SheetFault(odd ? `${quote(odd)} is no unit known here` : `${quote(text)} is no unit`);
}

function oddName(e: Expression): string | undefined {
  if (e.kind === 'name') return e.name;
  for (const child of childrenOf(e)) {
    const found = oddName(child);
    if (found !== undefined) return found;
  }
  return undefined;
}

const tidy = (text: string): string =>
  text
    .replace(/\s*([*/^])\s*/g, '$1')
    .replace(/\*/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const showLinks = (text: string, links: readonly string[]): string =>
  text.replace(new RegExp(`\\s?${LINK}(\\d+)\\s?`, 'g'), (_, i: string) => `{${links[Number(i)] ?? ''}}`);

function placeOf(error: unknown): string {
  const at = error instanceof Error ? /\(char (\d+)\)/.exec(error.message) : null;
  return at ? `, from its letter ${at[1]} on` : '';
}
