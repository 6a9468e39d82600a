/** How the rows under the floor share its height: least heights first, the rest grows; what has no room gives way. */
import type { Box } from './pen.ts';

export interface RowWish {
  readonly id: string;
  readonly least: number;
  readonly grow: number;
  readonly gap: number;
  /** higher gives way earlier; 0 never */
  readonly yields: number;
}

export function planRows(wishes: readonly RowWish[], height: number): ReadonlyMap<string, Box> {
  const need = (rows: readonly RowWish[]): number => rows.reduce((sum, r) => sum + r.least + r.gap, 0);
  let rows = [...wishes];
  while (need(rows) > height) {
    const first = rows.reduce((a, b) => (b.yields > a.yields ? b : a));
    if (first.yields === 0) break;
    rows = rows.filter((r) => r !== first);
  }
  const spare = Math.max(0, height - need(rows));
  const growing = rows.reduce((sum, r) => sum + r.grow, 0) || 1;
  const plan = new Map<string, Box>();
  let y = 0;
  for (const r of rows) {
    y += r.gap;
    const tall = r.least + (spare * r.grow) / growing;
    plan.set(r.id, { y: Math.round(y), height: Math.round(tall) });
    y += tall;
  }
  return plan;
}
