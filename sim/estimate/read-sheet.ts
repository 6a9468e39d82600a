/** The lines of a sheet, read and put in order: every quantity after those it needs, circles named. */
import { childrenOf, type Expression, namesIn, type Unit } from './expression.ts';
import { MOST_LINES, MOST_NODES_IN_ALL, MOST_SPREADS } from './limits.ts';
import { type DrawLine, parseLine, type QuantityLine } from './line.ts';
import { readFormula, readUnit } from './read-formula.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import { findUnit } from './units.ts';

export interface ReadQuantity {
  /** index of its line */
  readonly line: number;
  readonly source: QuantityLine;
  readonly expression: Expression;
  readonly spread?: { readonly expression: Expression; readonly relative: boolean };
  readonly unit?: Unit;
  /** names of other lines */
  readonly needs: readonly string[];
}

export interface ReadSheet {
  readonly lines: number;
  readonly quantities: ReadonlyMap<string, ReadQuantity>;
  /** names, each after what it needs; those with a fault are not among them */
  readonly order: readonly string[];
  readonly drawn: readonly { readonly line: number; readonly source: DrawLine }[];
  readonly words: ReadonlyMap<number, string>;
  /** by line */
  readonly faults: Map<number, string>;
}

export function readSheet(lines: readonly string[]): ReadSheet {
  const faults = new Map<number, string>();
  const quantities = new Map<string, ReadQuantity>();
  const drawn: { line: number; source: DrawLine }[] = [];
  const words = new Map<number, string>();
  const left = { nodes: MOST_NODES_IN_ALL, spreads: MOST_SPREADS };
  lines.forEach((text, line) => {
    try {
      if (line >= MOST_LINES) throw new SheetFault(`a sheet has at most ${MOST_LINES} lines`);
      const source = parseLine(text);
      if (source.kind === 'words') words.set(line, source.text);
      else if (source.kind === 'draw') drawn.push({ line, source });
      else {
        const known = quantities.get(source.name);
        if (known) throw new SheetFault(`${quote(source.name)} has a formula in line ${known.line + 1} already`);
        if (findUnit(source.name))
          throw new SheetFault(`${quote(source.name)} is a unit; choose another name, as ${source.name}_1`);
        quantities.set(source.name, readQuantity(line, source, left));
      }
    } catch (error) {
      if (!(error instanceof SheetFault)) throw error;
      faults.set(line, error.message);
    }
  });
  return { lines: lines.length, quantities, order: putInOrder(quantities, faults), drawn, words, faults };
}

function readQuantity(line: number, source: QuantityLine, left: { nodes: number; spreads: number }): ReadQuantity {
  const expression = readFormula(source.formula, source.links);
  const spread = source.spread
    ? { expression: readFormula(source.spread.text, source.links), relative: source.spread.relative }
    : undefined;
  left.nodes -= countNodes(expression) + (spread ? countNodes(spread.expression) : 0);
  if (left.nodes < 0)
    throw new SheetFault(`the sheet is too long; its formulas have at most ${MOST_NODES_IN_ALL} parts`);
  if (spread && --left.spreads < 0) throw new SheetFault(`at most ${MOST_SPREADS} lines of a sheet may have a "+-"`);
  const names = namesIn(expression);
  if (spread) namesIn(spread.expression, names);
  return {
    line,
    source,
    expression,
    ...(spread ? { spread } : {}),
    ...(source.unit === undefined ? {} : { unit: readUnit(source.unit) }),
    needs: [...names],
  };
}

const countNodes = (e: Expression): number => 1 + childrenOf(e).reduce((sum, child) => sum + countNodes(child), 0);

function putInOrder(quantities: ReadonlyMap<string, ReadQuantity>, faults: Map<number, string>): string[] {
  const order: string[] = [];
  const done = new Set<string>();
  const trail: string[] = [];
  const visit = (name: string): void => {
    const at = trail.indexOf(name);
    if (at >= 0) nameCircle(trail.slice(at));
    const quantity = quantities.get(name);
    if (at >= 0 || done.has(name) || !quantity) return;
    trail.push(name);
    for (const needed of quantity.needs) visit(needed);
    trail.pop();
    done.add(name);
    order.push(name);
  };
  const nameCircle = (circle: readonly string[]): void => {
    const needs = circle.map((name, i) => `${name} needs ${circle[(i + 1) % circle.length]}`).join(', ');
    for (const name of circle) {
      const line = quantities.get(name)?.line;
      if (line !== undefined && !faults.has(line))
        faults.set(line, circle.length === 1 ? `${name} needs itself` : `a circle: ${needs}`);
    }
  };
  for (const name of quantities.keys()) visit(name);
  return order;
}
