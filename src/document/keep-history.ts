/**
 * A history as it is read back: a field of another type is left out, and of the steps those stay that lead from the document
 * back, or on, without a gap. So a damaged place takes with it what lies behind it, and nothing else.
 */
import type { SkillFile } from '../../sim/index.ts';
import { applyDifference, type Json } from './difference.ts';
import type { History, HistoryStep, Origin } from './history.ts';
import { isObject } from './record-version.ts';

/** Undefined: there is no document in it. */
export function parseHistory(value: unknown): History<unknown> | undefined {
  if (!isObject(value) || !isDocument(value.doc)) return undefined;
  const { doc, done, undone, mark, beside, origin, id, lastId, original } = value;
  return {
    doc,
    done: listSteps(done),
    undone: listSteps(undone),
    ...(isDocument(mark) ? { mark } : {}),
    ...(beside === undefined ? {} : { beside: Array.isArray(beside) ? (beside as Json) : null }),
    ...(isOrigin(origin) ? { origin } : {}),
    ...(isCount(id) ? { id } : {}),
    ...(isCount(lastId) ? { lastId } : {}),
    ...(typeof original === 'string' ? { original } : {}),
  };
}

const isDocument = (x: unknown): x is { title: string } =>
  isObject(x) && !Array.isArray(x) && typeof x.title === 'string';
const isCount = (x: unknown): x is number => Number.isSafeInteger(x) && (x as number) >= 0;
const isOrigin = (x: unknown): x is Origin => isObject(x) && typeof x.id === 'string' && typeof x.revision === 'number';

/** From the last backwards, as far as they are whole. */
function listSteps(value: unknown): HistoryStep[] {
  const steps: unknown[] = Array.isArray(value) ? value : [];
  return steps.slice(steps.findLastIndex((step) => !isStep(step)) + 1) as HistoryStep[];
}

function isStep(step: unknown): step is HistoryStep {
  if (!isObject(step) || typeof step.title !== 'string' || !isDifference(step.difference)) return false;
  const { beside, opened } = step;
  return (beside === undefined || isDifference(beside)) && (opened === undefined || isOpening(opened));
}

const isDifference = (x: unknown): boolean =>
  Array.isArray(x) &&
  x.every(
    (change) =>
      isObject(change) &&
      Array.isArray(change.path) &&
      change.path.every((at) => typeof at === 'string' || isCount(at)),
  );

function isOpening(x: unknown): boolean {
  if (!isObject(x)) return false;
  const { before, after, ids, originalBefore, originalAfter } = x;
  return (
    [before, after].every((origin) => origin === undefined || isOrigin(origin)) &&
    [originalBefore, originalAfter].every((text) => text === undefined || typeof text === 'string') &&
    (ids === undefined || (Array.isArray(ids) && ids.length === 2 && ids.every(isCount)))
  );
}

/** Without the steps that lead to no document. */
export function wholeSteps(h: History<unknown>): History<SkillFile> {
  const cut = (steps: readonly HistoryStep[], to: 'before' | 'after'): HistoryStep[] => {
    // undo and redo leave a gesture under way first
    let doc = h.mark ?? h.doc;
    let beside = h.beside ?? null;
    const first = steps.findLastIndex((step) => {
      try {
        doc = applyDifference(doc, step.difference, to);
        if (step.beside) beside = applyDifference(beside, step.beside, to);
      } catch {
        return true;
      }
      return !isDocument(doc);
    });
    return steps.slice(first + 1);
  };
  return { ...h, done: cut(h.done, 'before'), undone: cut(h.undone, 'after') } as History<SkillFile>;
}
