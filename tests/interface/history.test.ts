// The history as laws: undo takes back exactly, redo brings back exactly, a gesture is one step.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyDifference, calcDifference, type Json } from '../../src/document/difference.ts';
import {
  abandon,
  edit,
  HISTORY_LIMIT,
  type History,
  makeHistory,
  open,
  redo,
  setDraft,
  settle,
  undo,
  withOrigin,
} from '../../src/document/history.ts';
import { parseHistory, wholeSteps } from '../../src/document/keep-history.ts';

const SEED = 20_260_701;
// an absent value is an absent field in JSON; documents come from JSON text, so no undefined, no -0
const json = fc.jsonValue({ maxDepth: 4 }).map((v) => JSON.parse(JSON.stringify(v)) as Json);

it('a kept step that leads to no list beside the document is left out, with those behind it', () => {
  const step = (path: (string | number)[], isBeside: boolean) => ({
    title: 'a step',
    difference: isBeside ? [] : [{ path, before: 1, after: 2 }],
    ...(isBeside ? { beside: [{ path, before: 1, after: 2 }] } : {}),
  });
  const whole = step(['note'], false);
  for (const isBeside of [false, true]) {
    const bad = step(isBeside ? [4_294_967_290] : ['phases', 4_294_967_290], isBeside);
    const kept = { doc: { title: 'a', phases: [] }, beside: [], done: [whole, bad, whole], undone: [] };
    const read = wholeSteps(parseHistory(kept) as History<unknown>);
    expect(read.done).toEqual([whole]);
  }
});

describe('differences', () => {
  it('lead from one document to the other and back', () => {
    fc.assert(
      fc.property(json, json, (a, b) => {
        const d = calcDifference(a, b);
        expect(applyDifference(a, d, 'after')).toEqual(b);
        expect(applyDifference(b, d, 'before')).toEqual(a);
      }),
      { numRuns: 500, seed: SEED },
    );
  });

  it('make no list longer than it is: a kept step may name any place', () => {
    for (const place of [1, 4_294_967_290, Number.MAX_SAFE_INTEGER, '4294967290', 'length'])
      expect(() => applyDifference({ keys: [1] }, [{ path: ['keys', place], before: 9 }], 'before')).toThrow(
        RangeError,
      );
  });

  it('leave the document they are applied to untouched', () => {
    const a = { keys: [{ deg: 1 }, { deg: 2 }] };
    const before = structuredClone(a);
    applyDifference(a, calcDifference(a, { keys: [{ deg: 1 }, { deg: 9 }] }), 'after');
    expect(a).toEqual(before);
  });

  it('name only the place that changed', () => {
    const d = calcDifference({ a: { b: [1, 2] }, c: 3 }, { a: { b: [1, 5] }, c: 3 });
    expect(d).toEqual([{ path: ['a', 'b', 1], before: 2, after: 5 }]);
  });
});

describe('history', () => {
  it('undo and redo walk through every document that was', () => {
    fc.assert(
      fc.property(fc.array(json, { minLength: 1, maxLength: 12 }), (docs) => {
        let h = makeHistory<Json>({});
        const seen: Json[] = [h.doc];
        for (const doc of docs) {
          h = edit(h, doc, 'change');
          if (h.done.length === seen.length) seen.push(h.doc);
        }
        for (let i = seen.length - 2; i >= 0; i--) {
          h = undo(h);
          expect(h.doc).toEqual(seen[i]);
        }
        for (let i = 1; i < seen.length; i++) {
          h = redo(h);
          expect(h.doc).toEqual(seen[i]);
        }
      }),
      { numRuns: 200, seed: SEED },
    );
  });

  it('a drag of many moves is one step, and Escape goes back to its mark', () => {
    let h = makeHistory({ x: 0 });
    for (let x = 1; x <= 50; x++) h = setDraft(h, { x });
    expect(abandon(h)).toEqual({ doc: { x: 0 }, done: [], undone: [] });
    h = settle(h, 'drag');
    expect(h.done).toHaveLength(1);
    expect(undo(h).doc).toEqual({ x: 0 });
  });

  it('a gesture that changes nothing is no step', () => {
    const h = settle(setDraft(makeHistory({ x: 1 }), { x: 1 }), 'nothing');
    expect(h.done).toHaveLength(0);
    expect(h.mark).toBeUndefined();
  });

  it('a new edit drops what was undone, and the past is bounded', () => {
    let h = edit(edit(makeHistory({ x: 0 }), { x: 1 }, 'a'), { x: 2 }, 'b');
    h = edit(undo(h), { x: 3 }, 'c');
    expect(h.undone).toHaveLength(0);
    for (let x = 10; x < HISTORY_LIMIT + 50; x++) h = edit(h, { x }, 'more');
    expect(h.done).toHaveLength(HISTORY_LIMIT);
  });
});

describe('where a document belongs', () => {
  it('goes with the document through opening, undo and redo', () => {
    const a = { id: 'a', revision: 2 };
    const b = { id: 'b', revision: 1 };
    let h = withOrigin(makeHistory({ x: 0 }), a);
    h = edit(h, { x: 1 }, 'edit');
    expect(h.origin).toEqual(a);
    h = open(h, { x: 5 }, 'opening', b);
    h = edit(h, { x: 6 }, 'edit');
    expect(h.origin).toEqual(b);
    h = undo(undo(h));
    expect(h).toMatchObject({ doc: { x: 1 }, origin: a });
    h = redo(h);
    expect(h).toMatchObject({ doc: { x: 5 }, origin: b });
    h = open(h, { x: 9 }, 'a demo');
    expect(h.origin).toBeUndefined();
    expect(undo(h).origin).toEqual(b);
  });

  it('changes without a step when the same document is opened from elsewhere', () => {
    const b = { id: 'b', revision: 1 };
    const h = open(makeHistory({ x: 0 }), { x: 0 }, 'opening', b);
    expect(h.done).toHaveLength(0);
    expect(h.origin).toEqual(b);
  });
});
