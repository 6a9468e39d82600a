/** The lines of a sheet, read and put in order: every quantity after those it needs, circles named. */
import { childrenOf, type Expression, namesIn, type Unit } from './expression.ts';
import { LONGEST_LINE, MOST_LINES, MOST_NODES_IN_ALL, MOST_SPREADS } from './limits.ts';
import { type DrawLine, nameOf, parseLine, type QuantityLine } from './line.ts';
import { readFormula, readUnit } from './read-formula.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import { BODY_WEIGHT, findSpelling, findUnit } from './units.ts';

export interface ReadQuantity {
  /** index of its line */
  readonly line: number;
  readonly source: QuantityLine;
  readonly expression: Expression;
  readonly spread?: { readonly expression: Expression; readonly relative: boolean };
  readonly unit?: Unit;
  /** what it is set against */
  readonly against?: Expression;
  /** names of other lines in its formula */
  readonly needs: readonly string[];
}

export interface ReadDrawing {
  readonly line: number;
  readonly source: DrawLine;
  readonly mass?: Expression;
}

export interface ReadSheet {
  readonly lines: number;
  /** every name that a line gives, of lines with a fault too: index of its line */
  readonly lineOf: ReadonlyMap<string, number>;
  readonly quantities: ReadonlyMap<string, ReadQuantity>;
  /** names, each after what it needs; those with a fault are not among them */
  readonly order: readonly string[];
  readonly drawn: readonly ReadDrawing[];
  readonly words: ReadonlyMap<number, string>;
  /** by line */
  readonly faults: Map<number, SheetFault>;
}

export function readSheet(lines: readonly string[]): ReadSheet {
  const faults = new Map<number, SheetFault>();
  const quantities = new Map<string, ReadQuantity>();
  const drawn: ReadDrawing[] = [];
  const words = new Map<number, string>();
  const left = { nodes: MOST_NODES_IN_ALL, spreads: MOST_SPREADS };
  const lineOf = namesOf(lines);
  const names = new Set(lineOf.keys());
  lines.forEach((text, line) => {
    try {
      if (line >= MOST_LINES) throw new SheetFault(`A sheet has at most ${MOST_LINES} lines.`);
      const source = parseLine(text);
      if (source.kind === 'words') words.set(line, source.text);
      else if (source.kind === 'draw') {
        const mass = source.mass && inWeights(readFormula(source.mass, names), names);
        drawn.push({ line, source, ...(mass ? { mass } : {}) });
      } else {
        const first = lineOf.get(source.name);
        if (first !== undefined && first !== line)
          throw new SheetFault(`${quote(source.name)} has a formula in line ${first + 1} already.`, source.name);
        if (findUnit(source.name))
          throw new SheetFault(
            `${quote(source.name)} is a unit; choose another name, as ${source.name}_1.`,
            source.name,
          );
        quantities.set(source.name, readQuantity(line, source, names, left));
      }
    } catch (error) {
      if (!(error instanceof SheetFault)) throw error;
      faults.set(line, error);
    }
  });
  return { lines: lines.length, lineOf, quantities, order: putInOrder(quantities, faults), drawn, words, faults };
}

function namesOf(lines: readonly string[]): Map<string, number> {
  const found = new Map<string, number>();
  lines.slice(0, MOST_LINES).forEach((text, line) => {
    const name = text.length > LONGEST_LINE ? undefined : nameOf(text);
    if (name !== undefined && !found.has(name) && !findUnit(name)) found.set(name, line);
  });
  return found;
}

function readQuantity(
  line: number,
  source: QuantityLine,
  names: ReadonlySet<string>,
  left: { nodes: number; spreads: number },
): ReadQuantity {
  const readHere = (tokens: QuantityLine['formula']): Expression => {
    const e = inWeights(readFormula(tokens, names), names);
    left.nodes -= countNodes(e);
    if (left.nodes < 0)
      throw new SheetFault(`The sheet is too long; its formulas have at most ${MOST_NODES_IN_ALL} parts.`);
    return e;
  };
  const expression = readHere(source.formula);
  const spread = source.spread
    ? { expression: readHere(source.spread.tokens), relative: source.spread.relative }
    : undefined;
  if (spread && --left.spreads < 0) throw new SheetFault(`At most ${MOST_SPREADS} lines of a sheet may have a "+-".`);
  const against = source.against ? readHere(source.against.tokens) : undefined;
  const needs = namesIn(expression);
  if (spread) namesIn(spread.expression, needs);
  return {
    line,
    source,
    expression,
    ...(spread ? { spread } : {}),
    ...(source.unit === undefined ? {} : { unit: readUnit(source.unit) }),
    ...(against ? { against } : {}),
    needs: [...needs],
  };
}

/** A body weight is the weight of the line "mass", else of the athlete. */
function inWeights(e: Expression, names: ReadonlySet<string>): Expression {
  const inside = (part: Expression): Expression => inWeights(part, names);
  switch (e.kind) {
    case 'unit':
      return e.unit === BODY_WEIGHT ? weightOf(names) : e;
    case 'minus':
      return { ...e, a: inside(e.a) };
    case 'operation':
      return { ...e, a: inside(e.a), b: inside(e.b) };
    case 'call':
      return { ...e, args: e.args.map(inside) };
    default:
      return e;
  }
}

export const weightOf = (names: ReadonlySet<string>): Expression => ({
  kind: 'operation',
  operator: '*',
  a: names.has('mass') ? { kind: 'name', name: 'mass' } : { kind: 'link', text: 'mass' },
  b: names.has('g') ? { kind: 'name', name: 'g' } : { kind: 'unit', unit: findSpelling('g') as Unit },
});

const countNodes = (e: Expression): number => 1 + childrenOf(e).reduce((sum, child) => sum + countNodes(child), 0);

function putInOrder(quantities: ReadonlyMap<string, ReadQuantity>, faults: Map<number, SheetFault>): string[] {
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
        faults.set(line, new SheetFault(circle.length === 1 ? `${name} needs itself.` : `A circle: ${needs}.`));
    }
  };
  for (const name of quantities.keys()) visit(name);
  return order;
}
