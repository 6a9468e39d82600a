// What a build of version 1 kept in the browser: its documents are migrated, undo still works, its entries wait unchanged.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { migrateKept, type SkillFile } from '../../sim/index.ts';
import { applyDifference } from '../../src/document/difference.ts';
import { type History, redo, undo } from '../../src/document/history.ts';
import { parseSession } from '../../src/document/keep-record.ts';
import { migrateHistory } from '../../src/document/migrate-session.ts';
import { makeShelf, type ShelfEntry } from '../../src/document/shelf.ts';
import { MemoryRecords } from '../interface/memory-records.ts';

interface Stored {
  readonly records: { readonly key: string; readonly value: { version: number; history: History<unknown> } }[];
  readonly local?: { readonly key: string; readonly value: string }[];
}
const read = (name: string): Stored =>
  JSON.parse(readFileSync(path.join(import.meta.dirname, 'v1/stores', `${name}.json`), 'utf8'));

const sessions = read('sessions');
const kept = [
  ...sessions.records.map(({ key, value }) => ({ key, value })),
  ...(sessions.local ?? []).map(({ key, value }) => ({ key: `${key} (local)`, value: JSON.parse(value) })),
];

/** The old history one step back or on, as the old build did it. */
function oldTurn(h: History<unknown>, way: 'before' | 'after'): History<unknown> {
  const step = way === 'before' ? h.done.at(-1) : h.undone.at(-1);
  if (!step) return h;
  const doc = applyDifference(h.doc, step.difference, way);
  const beside = step.beside ? applyDifference(h.beside ?? null, step.beside, way) : h.beside;
  const moved =
    way === 'before'
      ? { done: h.done.slice(0, -1), undone: [...h.undone, step] }
      : { done: [...h.done, step], undone: h.undone.slice(0, -1) };
  return { ...h, doc, ...moved, ...(beside === undefined ? {} : { beside }) };
}

/** Documents in their order, without one that is the same as the one before it. */
function statesOf(docs: readonly unknown[]): string[] {
  const texts = docs.map((doc) => JSON.stringify(sorted(doc)));
  return texts.filter((text, i) => text !== texts[i - 1]);
}
function sorted(x: unknown): unknown {
  if (Array.isArray(x)) return x.map(sorted);
  if (typeof x !== 'object' || x === null) return x;
  return Object.fromEntries(
    Object.entries(x)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, v]) => [k, sorted(v)]),
  );
}

describe.each(kept)('the session $key', ({ value }) => {
  const session = parseSession(value, migrateKept);
  if (!session) throw new Error('it was not read');
  const { history } = session;

  test('shows the migrated document and keeps the text it came from', () => {
    expect(session.version).toBe(2);
    expect(history.doc).toEqual(migrateKept(value.history.doc));
    expect(JSON.parse(history.original ?? '')).toEqual(value.history.doc);
  });

  test('undo goes through every state that it went through, migrated, and redo back', () => {
    const old = [value.history.doc];
    for (let h = value.history; h.done.length > 0; ) {
      h = oldTurn(h, 'before');
      old.push(h.doc);
    }
    const now: unknown[] = [history.doc];
    let h: History<SkillFile> = history;
    while (h.done.length > 0) {
      h = undo(h);
      now.push(h.doc);
    }
    expect(statesOf(now)).toEqual(statesOf(old.map(migrateKept)));
    while (h.undone.length > 0) h = redo(h);
    const last = (() => {
      let o = value.history;
      while (o.undone.length > 0) o = oldTurn(o, 'after');
      return o;
    })();
    expect(sorted(h.doc)).toEqual(sorted(migrateKept(last.doc)));
  });

  test('versions beside it are migrated with it, at every step', () => {
    let h: History<SkillFile> = history;
    for (;;) {
      const list = Array.isArray(h.beside) ? (h.beside as unknown as { file: SkillFile }[]) : [];
      for (const { file } of list) expect(file.version).toBe(2);
      if (h.done.length === 0) break;
      h = undo(h);
    }
  });
});

test('a step that changed only what the swing or the push gives is left out; the others stay, by their titles', () => {
  const { value } = sessions.records[1];
  const titles = parseSession(value, migrateKept)?.history.done.map((step) => step.title);
  expect(value.history.done.map((step) => step.title).filter((t) => !titles?.includes(t))).toEqual(['Speed along']);
  // beside the swing and after it was taken away: the first changed nothing that was flown
  expect(titles?.filter((t) => t === 'Speed up')).toHaveLength(1);
});

test('a gesture under way keeps the document it began with', () => {
  const { history } = sessions.records[0].value;
  const migrated = migrateHistory({ ...history, mark: history.doc }, migrateKept);
  expect(migrated?.mark).toEqual(migrateKept(history.doc));
});

test('steps that do not fit their document are left out, and the document stays', () => {
  const { history } = sessions.records[0].value;
  const broken = { title: 'x', difference: [{ path: ['takeoff'], before: 3 }] };
  const migrated = migrateHistory({ ...history, done: [...history.done, broken] }, migrateKept);
  expect(migrated?.done).toEqual([]);
  expect(migrated?.doc).toEqual(migrateKept(history.doc));
});

describe('the shelf', () => {
  const open = () => {
    const store = new MemoryRecords();
    for (const { key, value } of read('shelf').records) store.map.set(key, value);
    const raw = (id: string) => store.map.get(id) as ShelfEntry;
    const shelf = makeShelf({ store, now: () => 1, newName: () => 'new', channel: undefined, migrate: migrateKept });
    return { raw, shelf };
  };

  test('is shown migrated, and looking at it writes nothing', async () => {
    const { raw, shelf } = open();
    const list = await shelf.list();
    expect(list).toHaveLength(read('shelf').records.length);
    for (const entry of list) {
      const { value } = read('shelf').records.find(({ key }) => key === entry.id) ?? {};
      expect(raw(entry.id)).toEqual(value);
      if (entry.kind !== 'skill') continue;
      expect(entry.value.version).toBe(2);
      expect(entry.original).toEqual((value as unknown as ShelfEntry).value);
    }
  });

  test('a new name keeps the document as it was beside the migrated one; saving lets it go', async () => {
    const { raw, shelf } = open();
    const before = raw('e3').value;
    await shelf.rename('e3', 'Another name');
    expect(raw('e3')).toMatchObject({ value: { version: 2, title: 'Another name' }, original: before });
    const entry = (await shelf.list()).find(({ id }) => id === 'e3');
    if (entry?.kind !== 'skill') throw new Error('no skill');
    await shelf.saveSkill(entry.value, { id: 'e3', revision: entry.revision }, (t) => t);
    expect(raw('e3')).not.toHaveProperty('original');
  });
});
