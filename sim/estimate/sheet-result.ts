/** What a sheet comes to. Plain data, so that it passes from a worker. Values in coherent SI units. */
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
  readonly assumptions: readonly string[];
  /** the line whose value was taken from the simulation; or none, when the simulation was made to assume it too */
  readonly name?: string;
  readonly estimate: number;
  readonly simulated: number;
  readonly ratio: number;
}

export interface Compared {
  /** the readout's words, or a formula of readouts as typed */
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
  /** of a mean set against a peak: what its ratio would be if all were right */
  readonly remark?: string;
  readonly sentence: string;
}

export interface Quantity {
  readonly kind: 'quantity';
  readonly line: number;
  readonly name: string;
  readonly expression: Expression;
  /** the formula with numbers in place of names; missing for a value that was put in */
  readonly numbers?: string;
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
  /** something it is divided by may be zero within its ±: it has no bound */
  readonly isOpen?: true;
  /** words of the list, and free text */
  readonly assumptions: readonly string[];
  readonly note: string;
  readonly compared?: Compared;
}

/** A length that makes the size of a plain body, and what it has to be for other sizes. */
export interface Edge {
  /** index of the line that holds the length */
  readonly line: number;
  readonly name: string;
  /** of its values */
  readonly unit: string;
  /** size in m, ascending; value in the unit */
  readonly points: readonly (readonly [size: number, value: number])[];
}

/** One way to correct a line, and the whole line then. */
export interface Fix {
  readonly title: string;
  readonly text: string;
}

export interface Drawing {
  readonly kind: 'drawing';
  readonly line: number;
  readonly body: PlainBody;
  readonly of: string;
  readonly about: Axis;
  readonly at: string;
  /** where its size can be dragged */
  readonly edge?: Edge;
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
  /** the piece of the line that it is about */
  readonly part?: string;
  readonly fixes?: readonly Fix[];
  /** it is right in itself: the line whose fault it waits for */
  readonly waitsFor?: number;
}
export type LineResult = Quantity | Drawing | Words | Faulty;

export interface SheetResult {
  /** one for each line */
  readonly lines: readonly LineResult[];
  readonly seed: number;
}
