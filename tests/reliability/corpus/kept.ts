// What the browser keeps, damaged: sessions, entries of the shelf, sheets. The page opens whatever is there, and says what it could not read.

import { buildSkill, migrateKept, parseSkill, type SkillFile } from '../../../sim/index.ts';
import { undo } from '../../../src/document/history.ts';
import { parseSession } from '../../../src/document/keep-record.ts';
import { parseSheet as parseKeptSheet } from '../../../src/document/keep-sheets.ts';
import { findNewer } from '../../../src/document/record-version.ts';
import { makeShelf } from '../../../src/document/shelf.ts';
import { makeEngine } from '../../../src/engine/engine.ts';
import { MemoryRecords } from '../../interface/memory-records.ts';
import { damageJson } from './damage-json.ts';
import { utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { freezeDeep, hold, LawBroken, type Outcome, tryRead } from './law.ts';
import { SHEETS, SKILL_SEEDS, shelf } from './sound.ts';

const files = import.meta.glob<{ readonly records: readonly { readonly value: unknown }[] }>(
  '../../golden/v1/stores/*.json',
  { eager: true, import: 'default' },
);
const old = freezeDeep(Object.values(files).flatMap(({ records }) => records.map(({ value }) => value)));

const step = { title: 'Move', difference: [{ path: ['title'], before: 'a', after: 'b' }] };
const session = (doc: unknown): unknown => ({
  version: 2,
  savedAt: 5,
  cursorS: 0.2,
  owner: 'a',
  history: { doc, done: [step], undone: [step], id: 1, lastId: 1, beside: [{ name: 'A', file: doc }] },
});
const entry = (value: unknown): unknown => ({ kind: 'skill', id: 'a', revision: 1, savedAt: 5, value });

export const keptKind: CorpusKind = {
  name: 'kept',
  make: (r) => {
    const way = r.int(4);
    const [, doc] = r.of(SKILL_SEEDS.filter(([, one]) => (one as { version?: unknown }).version === 2));
    const sound = [
      () => session(doc),
      () => entry(doc),
      () => ({ version: 1, from: 'a', sheet: r.of(SHEETS)[1] }),
      () => r.of(old),
    ][way]();
    const { text, what } = damageJson(sound, r);
    return { file: ['session.json', 'entry.json', 'sheet.json', 'old.json'][way], bytes: utf8(text), what };
  },
  run: async (input): Promise<Outcome> => {
    const text = textOf(input) ?? '';
    let record: unknown;
    const sheet = parseKeptSheet(text);
    if (sheet) hold(typeof sheet.sheet.title === 'string', 'a sheet without a title');
    try {
      record = JSON.parse(text);
    } catch {
      return 'refused';
    }
    return run(record, text);
  },
};

async function run(record: unknown, text: string): Promise<Outcome> {
  try {
    findNewer(record);
    const kept = parseSession(record, migrateKept);
    const entries = await listEntries(record);
    const found = [kept?.history.doc, ...entries].filter((one) => one !== undefined);
    for (const doc of found) checkDocument(doc, text);
    if (kept && kept.history.done.length > 0) undo(kept.history);
    return found.length > 0 ? 'read' : 'refused';
  } catch (error) {
    if (error instanceof LawBroken) throw error;
    throw new LawBroken(
      error instanceof Error
        ? `${error.name}: ${error.message} ${error.stack?.split('\n').slice(1, 4).join(' |')}`
        : String(error),
    );
  }
}

async function listEntries(record: unknown): Promise<SkillFile[]> {
  const store = new MemoryRecords();
  try {
    await store.set('a', record);
  } catch {
    // nested deeper than any store takes: it was never kept
    return [];
  }
  const list = await makeShelf({
    store,
    now: () => 1,
    newName: () => 'b',
    channel: undefined,
    migrate: migrateKept,
  }).list();
  return list.flatMap((one) => (one.kind === 'skill' ? [one.value] : []));
}

const engine = makeEngine(shelf);
/** What the page shows of it is a flight or a sentence. */
function checkDocument(doc: SkillFile, text: string): void {
  tryRead(() => {
    // of a version that is unknown here it is for the reader of files to say so, as where the shelf opens it
    if (!migrateKept(doc)) return engine.readFile(doc);
    const leg = engine.legs.count(doc) > 1 ? engine.legs.fileOf(doc, 0) : doc;
    return buildSkill(parseSkill(leg, shelf));
  }, text);
}
