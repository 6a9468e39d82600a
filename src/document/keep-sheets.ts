/**
 * Keeps one's own estimate sheets in the browser, each under its own name and written at once, so that a reload loses nothing
 * and two tabs do not overwrite each other's sheets. What is read back is checked; what a newer build wrote is left alone.
 */
import type { SheetFile } from '../../sim/index.ts';
import type { OwnSheet, SheetDesk } from './own-sheets.ts';

const PREFIX = 'shapeflight.sheet.';
const OPEN = 'shapeflight.open-sheet';
/** Where older builds kept the one sheet that they had. */
const OLD = 'shapeflight.sheet';
const VERSION = 1;

export interface SheetStores {
  readonly local: Storage | undefined;
  /** of this tab alone */
  readonly tab: Storage | undefined;
}

interface KeptDesk {
  readonly own: Record<string, OwnSheet>;
  readonly open?: string;
  /** the sheet of an older build, and the ready sheet it began as */
  readonly old?: OwnSheet;
}

export function readDesk({ local, tab }: SheetStores): KeptDesk {
  const own: Record<string, OwnSheet> = {};
  let open: string | undefined;
  let old: OwnSheet | undefined;
  try {
    for (let i = 0; i < (local?.length ?? 0); i++) {
      const key = local?.key(i) ?? '';
      const id = nameSheet(key);
      const found = id && parseSheet(local?.getItem(key));
      if (id && found) own[id] = found;
    }
    // a tab remembers which; where all was cleared there is nothing to remember
    const last = local?.getItem(OPEN) ?? undefined;
    open = last === undefined ? undefined : (tab?.getItem(OPEN) ?? last);
    old = parseSheet(local?.getItem(OLD));
  } catch {
    // forbidden: nothing is kept there
  }
  return { own, ...(open === undefined ? {} : { open }), ...(old === undefined ? {} : { old }) };
}

/** Writes what changed, and what is no longer there though it should be. False: the browser refused. */
export function writeDesk({ local, tab }: SheetStores, desk: SheetDesk, before: SheetDesk | undefined): boolean {
  try {
    for (const [id, one] of Object.entries(desk.own)) {
      const key = PREFIX + id;
      if (before?.own[id] !== one || local?.getItem(key) === null)
        local?.setItem(key, JSON.stringify({ version: VERSION, ...one }));
    }
    for (const id of Object.keys(before?.own ?? {})) if (!Object.hasOwn(desk.own, id)) local?.removeItem(PREFIX + id);
    tab?.setItem(OPEN, desk.open);
    local?.setItem(OPEN, desk.open);
    return local !== undefined;
  } catch {
    return false;
  }
}

/** The older build's sheet has a name of its own now. */
export function dropOld({ local }: SheetStores): void {
  try {
    local?.removeItem(OLD);
  } catch {
    // it stays, and is taken over once more
  }
}

/** The id in the name of a kept sheet. */
export const nameSheet = (key: string | null): string | undefined =>
  key?.startsWith(PREFIX) ? key.slice(PREFIX.length) : undefined;

export function parseSheet(text: string | null | undefined): OwnSheet | undefined {
  try {
    const {
      from,
      sheet,
      version = VERSION,
    } = (JSON.parse(text ?? 'null') ?? {}) as {
      from?: unknown;
      sheet?: Partial<SheetFile>;
      version?: unknown;
    };
    const isWhole =
      version === VERSION &&
      sheet !== undefined &&
      typeof sheet.title === 'string' &&
      Array.isArray(sheet.lines) &&
      sheet.lines.every((line) => typeof line === 'string');
    if (!isWhole) return undefined;
    return { sheet: sheet as SheetFile, ...(typeof from === 'string' ? { from } : {}) };
  } catch {
    return undefined;
  }
}
