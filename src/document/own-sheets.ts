/**
 * The estimate sheets of one's own, and which sheet is open. Plain and immutable, with a history of its own beside that of the
 * skill: an edit of a sheet that is not one's own makes a copy, so that no sheet is ever lost by choosing another.
 */
import type { SheetFile } from '../../sim/index.ts';

export interface OwnSheet {
  readonly sheet: SheetFile;
  /** the ready sheet that it began as a copy of */
  readonly from?: string;
}

export interface SheetDesk {
  /** by id */
  readonly own: Readonly<Record<string, OwnSheet>>;
  /** id of an own sheet, of a ready one, or of the one kept with the skill */
  readonly open: string;
}

/** What is shown: one of one's own, or one that is given (ready, or kept with the skill). */
export interface ShownSheet {
  readonly id: string;
  readonly sheet: SheetFile;
}

export const isOwn = (desk: SheetDesk, id: string): boolean => Object.hasOwn(desk.own, id);

/** In the order of their titles. */
export const listOwn = (desk: SheetDesk): ShownSheet[] =>
  Object.entries(desk.own)
    .map(([id, { sheet }]) => ({ id, sheet }))
    .sort((a, b) => a.sheet.title.localeCompare(b.sheet.title) || (a.id < b.id ? -1 : 1));

export const openSheet = (desk: SheetDesk, id: string): SheetDesk => ({ ...desk, open: id });

/** A title that no own sheet has: "Energy", "Energy 2", "Energy 3". */
export function freeTitle(desk: SheetDesk, title: string): string {
  const taken = new Set(Object.values(desk.own).map(({ sheet }) => sheet.title));
  let free = title;
  for (let n = 2; taken.has(free); n++) free = `${title} ${n}`;
  return free;
}

/** One more sheet of one's own, open. */
export function addSheet(desk: SheetDesk, id: string, sheet: SheetFile, from?: string): SheetDesk {
  const added = { sheet: { ...sheet, title: freeTitle(desk, sheet.title) }, ...(from === undefined ? {} : { from }) };
  return { own: { ...desk.own, [id]: added }, open: id };
}

interface CopyNames {
  readonly newId: () => string;
  readonly copyOf: (title: string) => string;
}

/** The shown sheet becomes `next`: itself where it is one's own, else the own sheet that is the same, else a copy. */
export function changeSheet(desk: SheetDesk, shown: ShownSheet, next: SheetFile, names: CopyNames): SheetDesk {
  const isSame = ({ sheet }: OwnSheet): boolean =>
    sheet.title === shown.sheet.title && JSON.stringify(sheet.lines) === JSON.stringify(shown.sheet.lines);
  const id = isOwn(desk, shown.id) ? shown.id : Object.keys(desk.own).find((one) => isSame(desk.own[one]));
  if (id !== undefined) return { own: { ...desk.own, [id]: { ...desk.own[id], sheet: next } }, open: id };
  const isRenamed = next.title !== shown.sheet.title;
  return addSheet(desk, names.newId(), isRenamed ? next : { ...next, title: names.copyOf(next.title) }, shown.id);
}

export function removeSheet(desk: SheetDesk, id: string, open: string): SheetDesk {
  const { [id]: _, ...own } = desk.own;
  return { own, open };
}
