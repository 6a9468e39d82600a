/** A sheet while it is computed: what is read, what is known so far, and a way to ask "what if". */
import { type CheckedUnit, unknownName } from './check-units.ts';
import type { Interval, Range } from './ranges.ts';
import type { ReadSheet } from './read-sheet.ts';
import type { Column } from './samples.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import type { Links } from './sheet-result.ts';

/** A quantity computed so far. */
export interface Known {
  readonly checked: CheckedUnit;
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
  /** value of a line when some lines are given other values, or moved by part of their own ± */
  recompute(name: string, instead: ReadonlyMap<string, number>, moved?: ReadonlyMap<string, number>): number;
}

/** A line that is needed and has a value: or why not. */
export function need(name: string, { read, known }: Sheet): Known {
  const found = known.get(name);
  if (found) return found;
  const other = read.quantities.get(name);
  if (!other) throw unknownName(name);
  throw new SheetFault(`needs ${quote(name)}, and line ${other.line + 1} has a fault`);
}

export function linkOf(text: string, links: Links): { value: number; checked: CheckedUnit } {
  const link = Object.hasOwn(links, text) ? links[text] : undefined;
  if (!link) throw new SheetFault(`{${text}}: no skill is open to read it from`);
  if ('missing' in link) throw new SheetFault(`{${text}}: ${link.missing}`);
  return { value: link.value, checked: { dimension: link.dimension, unit: link.unit } };
}
