/** Keeps the estimate sheet being written in the browser, so that a reload loses nothing. Checked before it is used. */
import type { SheetFile } from '../../sim/index.ts';

const KEY = 'shapeflight.sheet';

export interface KeptSheet {
  /** the ready sheet it started from; missing: one's own */
  readonly from?: string;
  readonly sheet: SheetFile;
}

export function readKeptSheet(store: Storage | undefined): KeptSheet | undefined {
  try {
    const found = JSON.parse(store?.getItem(KEY) ?? 'null') as Partial<KeptSheet> | null;
    const { from, sheet } = found ?? {};
    const isWhole =
      sheet !== undefined &&
      typeof sheet.title === 'string' &&
      Array.isArray(sheet.lines) &&
      sheet.lines.every((line) => typeof line === 'string');
    if (!isWhole) return undefined;
    return { sheet, ...(typeof from === 'string' ? { from } : {}) };
  } catch {
    return undefined;
  }
}

/** False: the browser refused. */
export function keepSheet(store: Storage | undefined, kept: KeptSheet): boolean {
  try {
    store?.setItem(KEY, JSON.stringify(kept));
    return store !== undefined;
  } catch {
    return false;
  }
}
