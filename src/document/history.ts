/**
 * What was done, as differences, and the mark that an unfinished gesture started from. A drag is one step however many
 * moves it has; Escape goes back to the mark. Immutable: every call returns a new history. What is beside the
 * document (its kept versions) has its changes in the same steps, so that one undo takes back whatever was done last.
 */
import { applyDifference, calcDifference, type Difference, type Json } from './difference.ts';

/** The entry of a shelf that a document belongs to, as it was when it was last read or saved. */
export interface Origin {
  readonly id: string;
  readonly revision: number;
}

export interface HistoryStep {
  /** what was done, in words, for "Undo move of the left arm" */
  readonly title: string;
  readonly difference: Difference;
  /** of what is beside the document */
  readonly beside?: Difference;
  /** another document was opened: where the one before and this one belong */
  readonly opened?: {
    readonly before?: Origin;
    readonly after?: Origin;
    readonly ids?: readonly [number, number];
    readonly originalBefore?: string;
    readonly originalAfter?: string;
  };
}

export interface History<T> {
  readonly doc: T;
  readonly done: readonly HistoryStep[];
  readonly undone: readonly HistoryStep[];
  /** the document as it was when the gesture under way began */
  readonly mark?: T;
  /** plain data beside the document; no gesture changes it */
  readonly beside?: Json;
  readonly origin?: Origin;
  /** number of the document: given when it is opened, and back with the undo of that */
  readonly id?: number;
  /** the last number given */
  readonly lastId?: number;
  /** the text of an older version that the document was made from, until it is saved */
  readonly original?: string;
}

export const HISTORY_LIMIT = 300;

export function makeHistory<T>(doc: T): History<T> {
  return { doc, done: [], undone: [] };
}

/** Starts a gesture: what follows until `settle` is one step. */
export function setMark<T>(h: History<T>): History<T> {
  return h.mark === undefined ? { ...h, mark: h.doc } : h;
}

/** Shows a document within a gesture, without a step of its own. */
export function setDraft<T>(h: History<T>, doc: T): History<T> {
  return { ...setMark(h), doc };
}

/** Ends a gesture: one step from the mark to the document now; none if nothing changed. */
export function settle<T>(h: History<T>, title: string, beside = h.beside): History<T> {
  if (h.mark === undefined) return h;
  const difference = calcDifference(h.mark as Json, h.doc as Json);
  const besides = calcDifference(h.beside ?? null, beside ?? null);
  const { mark: _, ...plain } = h;
  if (difference.length + besides.length === 0) return plain;
  const step: HistoryStep = { title, difference, ...(besides.length > 0 ? { beside: besides } : {}) };
  return {
    ...plain,
    done: [...h.done, step].slice(-HISTORY_LIMIT),
    undone: [],
    ...(beside === undefined ? {} : { beside }),
  };
}

/** Escape: back to the mark. */
export function abandon<T>(h: History<T>): History<T> {
  if (h.mark === undefined) return h;
  const { mark, ...plain } = h;
  return { ...plain, doc: mark };
}

/** One step; `beside` when that changes too. */
export function edit<T>(h: History<T>, doc: T, title: string, beside = h.beside): History<T> {
  return settle(setDraft(h, doc), title, beside);
}

/** Another document in one step, with the place on the shelf that it belongs to and the text that it was migrated from. */
export function open<T>(h: History<T>, doc: T, title: string, origin?: Origin, original?: string): History<T> {
  const base = abandon(h);
  const next = edit(base, doc, title);
  if (next.done === base.done) return withPlace(next, origin, original);
  const id = (base.lastId ?? 0) + 1;
  const opened = {
    before: base.origin,
    after: origin,
    ids: [getId(base), id] as const,
    ...(base.original === undefined ? {} : { originalBefore: base.original }),
    ...(original === undefined ? {} : { originalAfter: original }),
  };
  const done = [...next.done.slice(0, -1), { ...next.done[next.done.length - 1], opened }];
  return withPlace({ ...next, id, lastId: id, done }, origin, original);
}

/** Number of the document. */
export const getId = <T>(h: History<T>): number => h.id ?? 0;

/** Saved to that entry, or no longer of any. What was saved needs its original no more. */
export function withOrigin<T>(h: History<T>, origin: Origin | undefined): History<T> {
  return withPlace(h, origin, origin ? undefined : h.original);
}

function withPlace<T>(h: History<T>, origin: Origin | undefined, original: string | undefined): History<T> {
  const { origin: _, original: __, ...plain } = h;
  return { ...plain, ...(origin ? { origin } : {}), ...(original === undefined ? {} : { original }) };
}

/** What is beside it, with a step's change made or taken back. */
function turn<T>(h: History<T>, step: HistoryStep, to: 'before' | 'after'): Pick<History<T>, 'doc' | 'beside'> {
  const doc = applyDifference(h.doc, step.difference, to);
  return step.beside ? { doc, beside: applyDifference(h.beside ?? null, step.beside, to) } : { doc };
}

export const undo = <T>(h: History<T>): History<T> => walk(h, 'before');
export const redo = <T>(h: History<T>): History<T> => walk(h, 'after');

/** One step back, to how it was before, or forward again. */
function walk<T>(h: History<T>, to: 'before' | 'after'): History<T> {
  const base = abandon(h);
  const { done, undone } = base;
  const isBack = to === 'before';
  const step = (isBack ? done : undone).at(-1);
  if (!step) return base;
  const walked = {
    ...base,
    ...turn(base, step, to),
    done: isBack ? done.slice(0, -1) : [...done, step],
    undone: isBack ? [...undone, step] : undone.slice(0, -1),
  };
  const { opened } = step;
  if (!opened) return walked;
  return isBack
    ? asOpened(walked, opened.before, opened.originalBefore, opened.ids?.[0])
    : asOpened(walked, opened.after, opened.originalAfter, opened.ids?.[1]);
}

/** `later`, which began without knowing of `base`, as what was opened after it: its first step back leads there. */
export function putUnder<T>(base: History<T>, later: History<T>, title: string): History<T> {
  let began = abandon(later);
  while (began.done.length > 0) began = undo(began);
  // the numbers of documents of both are in one row
  const shift = (later.lastId ?? 0) + 1;
  const moved = ({ opened, ...step }: HistoryStep): HistoryStep =>
    opened
      ? { ...step, opened: { ...opened, ...(opened.ids && { ids: [opened.ids[0] + shift, opened.ids[1] + shift] }) } }
      : step;
  const below = abandon(base);
  const opening: HistoryStep = {
    title,
    difference: calcDifference(below.doc as Json, began.doc as Json),
    beside: calcDifference(below.beside ?? null, began.beside ?? null),
    opened: {
      ...(below.origin && { before: below.origin }),
      ...(began.origin && { after: began.origin }),
      ids: [getId(below) + shift, getId(began)],
      ...(below.original === undefined ? {} : { originalBefore: below.original }),
      ...(began.original === undefined ? {} : { originalAfter: began.original }),
    },
  };
  return {
    ...later,
    done: [...below.done.map(moved), opening, ...later.done].slice(-HISTORY_LIMIT),
    lastId: (below.lastId ?? 0) + shift,
  };
}

/** Steps kept by an older build have no numbers: the document keeps the one it has. */
const asOpened = <T>(
  h: History<T>,
  origin: Origin | undefined,
  original: string | undefined,
  id = getId(h),
): History<T> => ({ ...withPlace(h, origin, original), id });
