/**
 * What was done, as differences, and the mark that an unfinished gesture started from. A drag is one step however many
 * moves it has; Escape goes back to the mark. Immutable: every call returns a new history.
 */
import { applyDifference, calcDifference, type Difference, type Json } from './difference.ts';

export interface HistoryStep {
  /** what was done, in words, for "Undo move of the left arm" */
  readonly title: string;
  readonly difference: Difference;
}

export interface History<T> {
  readonly doc: T;
  readonly done: readonly HistoryStep[];
  readonly undone: readonly HistoryStep[];
  /** the document as it was when the gesture under way began */
  readonly mark?: T;
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
export function settle<T>(h: History<T>, title: string): History<T> {
  if (h.mark === undefined) return h;
  const difference = calcDifference(h.mark as Json, h.doc as Json);
  const { doc, done, undone } = h;
  if (difference.length === 0) return { doc, done, undone };
  return { doc, done: [...done, { title, difference }].slice(-HISTORY_LIMIT), undone: [] };
}

/** Escape: back to the mark. */
export function abandon<T>(h: History<T>): History<T> {
  return h.mark === undefined ? h : { doc: h.mark, done: h.done, undone: h.undone };
}

export function edit<T>(h: History<T>, doc: T, title: string): History<T> {
  return settle(setDraft(h, doc), title);
}

export function undo<T>(h: History<T>): History<T> {
  const base = abandon(h);
  const step = base.done.at(-1);
  if (!step) return base;
  return {
    doc: applyDifference(base.doc, step.difference, 'before'),
    done: base.done.slice(0, -1),
    undone: [...base.undone, step],
  };
}

export function redo<T>(h: History<T>): History<T> {
  const base = abandon(h);
  const step = base.undone.at(-1);
  if (!step) return base;
  return {
    doc: applyDifference(base.doc, step.difference, 'after'),
    done: [...base.done, step],
    undone: base.undone.slice(0, -1),
  };
}
