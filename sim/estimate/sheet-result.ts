/** What a sheet comes to. Plain data, so that it passes from a worker. Values in coherent SI units. */
import type { Assumption } from './assumption.ts';
import type { Dimension } from './dimension.ts';
import type { Expression } from './expression.ts';
import type { Axis } from './line.ts';
import type { PlainBody } from './plain-body.ts';

/** A readout of the skill by its words, or why there is none. */
export type LinkValue =
  | { readonly value: number; readonly dimension: Dimension; readonly unit: string }
  | { readonly missing: string };

/** Readouts by their words; see readLinks. */
export type Links = Readonly<Record<string, LinkValue>>;

interface SheetUnit {
  /** as typed, as "kg m^2" */
  readonly name: string;
  readonly factor: number;
}

/** One assumption taken back: what becomes of the ratio. */
export interface Switch {
  readonly assumptions: readonly Assumption[];
  /** the line whose value was taken from the simulation; or none, when the simulation was made to assume it too */
  readonly name?: string;
  readonly estimate: number;
  readonly simulated: number;
  readonly ratio: number;
}

export interface Compared {
  /** the readout's words */
  readonly text: string;
  readonly simulated?: number;
  /** why there is none */
  readonly missing?: string;
  /** estimate / simulated */
  readonly ratio?: number;
  readonly ratioLow?: number;
  readonly ratioHigh?: number;
  readonly switches: readonly Switch[];
  /** index of the switch that closes most of the gap; none when there is no gap or none closes it */
  readonly cause?: number;
  readonly sentence: string;
}

export interface Quantity {
  readonly kind: 'quantity';
  readonly line: number;
  readonly name: string;
  readonly expression: Expression;
  readonly value: number;
  readonly dimension: Dimension;
  readonly unit: SheetUnit;
  /** its own ±, as typed */
  readonly ownSpread?: number;
  /** least and greatest value while every quantity stays within its ±; without bound: infinite. Missing: exact */
  readonly low?: number;
  readonly high?: number;
  /** ends of the middle 95 % of the draws, and draws without a value */
  readonly drawLow?: number;
  readonly drawHigh?: number;
  readonly drawsFailed?: number;
  readonly assumptions: readonly Assumption[];
  readonly note: string;
  readonly compared?: Compared;
}

export interface Drawing {
  readonly kind: 'drawing';
  readonly line: number;
  readonly body: PlainBody;
  readonly of: string;
  readonly about: Axis;
  readonly at: string;
}
interface Words {
  readonly kind: 'words';
  readonly line: number;
  readonly text: string;
}
interface Faulty {
  readonly kind: 'fault';
  readonly line: number;
  readonly message: string;
}
export type LineResult = Quantity | Drawing | Words | Faulty;

export interface SheetResult {
  /** one for each line */
  readonly lines: readonly LineResult[];
  readonly seed: number;
}
