/** A sheet while it is computed: what is read, what is known so far, and a way to ask "what if". */
import { type CheckedUnit, unknownName } from './check-units.ts';
import type { Interval, Range } from './ranges.ts';
import type { ReadSheet } from './read-sheet.ts';
import type { Column } from './samples.ts';
import { SheetFault } from './sheet-fault.ts';
import type { Links } from './sheet-result.ts';

/** A quantity computed so far. */
export interface Known {
  readonly checked: CheckedUnit;
  /** the unit it is shown in */
  readonly shown: { readonly name: string; readonly factor: number };
  readonly value: number;
  readonly range: Range;
  /** the range made as narrow as can be shown */
  readonly ends: Interval;
  readonly column?: Column;
  /** half-width and index of its own ± */
  readonly own?: { readonly spread: number; readonly index: number };
}

export interface Sheet {
  readonly read: ReadSheet;
  readonly links: Links;
  readonly known: ReadonlyMap<string, Known>;
  /** what results are shown in */
  readonly measure: 'metric' | 'imperial';
  /** value of a line when some lines are given other values, or moved by part of their own ±; NaN where there is none */
  recompute(name: string, instead: ReadonlyMap<string, number>, moved?: ReadonlyMap<string, number>): number;
}

/** A line that is needed and has a value: or why not. */
export function need(name: string, { read, known }: Sheet): Known {
  const found = known.get(name);
  if (found) return found;
  const line = read.lineOf.get(name);
  if (line === undefined) throw unknownName(name, [...read.lineOf.keys()]);
  throw new WaitingFault(name, line);
}

/** A line that is right in itself: another has the fault. */
export class WaitingFault extends SheetFault {
  /** index of the other line */
  readonly line: number;
  constructor(name: string, line: number) {
    super(`It needs ${name}, and line ${line + 1} is not computed.`, name);
    this.line = line;
  }
}

/** Below this a readout of turning or of energy is rounding: a flight without twist has no 1e-17 of it. */
const NOTHING = 1e-9;

export function linkOf(text: string, links: Links): { value: number; checked: CheckedUnit } {
  const link = Object.hasOwn(links, text) ? links[text] : undefined;
  if (!link) throw new SheetFault(`{${text}}: no skill is open to read it from.`, `{${text}}`);
  if ('missing' in link) throw new SheetFault(`{${text}}: ${link.missing}.`, `{${text}}`);
  const value = Math.abs(link.value) < NOTHING ? 0 : link.value;
  return { value, checked: { dimension: link.dimension, unit: link.unit } };
}
