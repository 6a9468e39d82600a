// A sheet computed, and its lines by name.
import { computeSheet } from '../../sim/estimate/compute-sheet.ts';
import type { Links, Quantity } from '../../sim/estimate/sheet-result.ts';

export function sheetOf(lines: readonly string[], links: Links = {}, seed = 1) {
  const result = computeSheet(lines, links, seed);
  return {
    result,
    of: (name: string): Quantity => {
      const found = result.lines.find((l) => l.kind === 'quantity' && l.name === name);
      if (found?.kind !== 'quantity') {
        const faults = result.lines.flatMap((l) => (l.kind === 'fault' ? `${l.line + 1}: ${l.message}` : []));
        throw new Error(`no result "${name}"; faults: ${faults.join('; ')}`);
      }
      return found;
    },
    /** value in the unit of the line */
    value(name: string): number {
      const q = this.of(name);
      return q.value / q.unit.factor;
    },
    fault: (line: number): string => {
      const found = result.lines[line];
      return found.kind === 'fault' ? found.message : '';
    },
    faults: result.lines.flatMap((l) => (l.kind === 'fault' ? [`${l.line + 1}: ${l.message}`] : [])),
  };
}
