/**
 * The two parts of mathjs that a sheet uses: its parser of expressions and its table of units. Its evaluator is not
 * loaded: what the parser returns is taken apart by read-formula.ts, and computing is ours. The unit class is put
 * together with the functions for plain numbers (69 kB gzip; with those for every kind of number it is 95 kB).
 */
import { createUnitClass } from 'mathjs';
import {
  absDependencies,
  addDependencies,
  create,
  divideDependencies,
  equalDependencies,
  fixDependencies,
  formatDependencies,
  isNumericDependencies,
  multiplyDependencies,
  numberDependencies,
  parseDependencies,
  powDependencies,
  roundDependencies,
  subtractDependencies,
} from 'mathjs/number';

declare module 'mathjs' {
  /** exported, though its types do not say so */
  export function createUnitClass(given: Record<string, unknown>): unknown;
}

/** A node of a parsed expression, as far as it is looked at. */
export interface ParsedNode {
  readonly type: string;
  readonly value?: unknown;
  readonly name?: unknown;
  readonly fn?: unknown;
  readonly op?: unknown;
  readonly implicit?: boolean;
  readonly args?: readonly ParsedNode[];
  readonly content?: ParsedNode;
}

interface UnitValue {
  /** in coherent SI units */
  readonly value: number;
  /** exponents of mass, length, time, current, temperature, luminous intensity, amount, angle, data */
  readonly dimensions: readonly number[];
}

const parts = create({
  absDependencies,
  addDependencies,
  divideDependencies,
  equalDependencies,
  fixDependencies,
  formatDependencies,
  isNumericDependencies,
  multiplyDependencies,
  numberDependencies,
  parseDependencies,
  powDependencies,
  roundDependencies,
  subtractDependencies,
}) as unknown as Record<string, unknown>;

/** Temperatures and complex units, which a sheet has none of, are all that these stand in for. */
class Share {
  readonly n: number;
  readonly d: number;
  constructor(n: number, d: number) {
    this.n = n;
    this.d = d;
  }
}

const UnitClass = createUnitClass({
  config: { number: 'number' },
  addScalar: parts.add,
  subtractScalar: parts.subtract,
  multiplyScalar: parts.multiply,
  divideScalar: parts.divide,
  pow: parts.pow,
  abs: parts.abs,
  fix: parts.fix,
  round: parts.round,
  equal: parts.equal,
  isNumeric: parts.isNumeric,
  format: parts.format,
  number: parts.number,
  Complex: { I: 0 },
  BigNumber: Number,
  Fraction: Share,
}) as new (
  value: number,
  name: string,
) => UnitValue;

export const parseExpression = parts.parse as (text: string) => ParsedNode;
export const unitOf = (name: string): UnitValue => new UnitClass(1, name);
