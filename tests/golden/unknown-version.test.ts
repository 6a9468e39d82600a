// A version that this build does not know: refused by name and number, and what is kept of it is left byte for byte.
import { describe, expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { FieldError, migrateKept, parseSkill, type SkillFile } from '../../sim/index.ts';
import { edit, makeHistory, open, setMark, undo } from '../../src/document/history.ts';
import { parseSession } from '../../src/document/keep-record.ts';
import { findNewer, isFromNewerBuild } from '../../src/document/record-version.ts';
import { makeShelf } from '../../src/document/shelf.ts';
import { MemoryRecords } from '../interface/memory-records.ts';

const LATER = [3, 4, 17];
const skill = skills['back-tuck'] as SkillFile;
const of = (version: number) => ({ ...skill, version, pieces: [] }) as unknown as SkillFile;

function faultOf(run: () => unknown): FieldError {
  try {
    run();
  } catch (error) {
    if (error instanceof FieldError) return error;
  }
  throw new Error('it was not refused');
}

describe.each(LATER)('version %i', (version) => {
  test('a skill file is refused by the field, its number and the newest that is known', () => {
    const { field, message } = faultOf(() => parseSkill(of(version), { athletes, shapes }));
    expect(field).toBe('version');
    expect(message).toMatch(new RegExp(`^version: ${version}\\b.*at most 2 .*newer Shapeflight`));
  });

  test('a shelf entry is listed, refused when it is opened, and left as it is by saving, renaming and looking', async () => {
    const store = new MemoryRecords();
    const shelf = makeShelf({ store, now: () => 1, newName: () => 'copy', channel: undefined, migrate: migrateKept });
    const record = { kind: 'skill', id: 'a', revision: 4, savedAt: 0, value: of(version) };
    await store.set('a', structuredClone(record));
    const [entry] = await shelf.list();
    if (entry.kind !== 'skill') throw new Error('no skill');
    expect(faultOf(() => parseSkill(entry.value, { athletes, shapes })).message).toContain(String(version));
    expect(await shelf.rename('a', 'Another name')).toBeUndefined();
    const saved = await shelf.saveSkill(skill, { id: 'a', revision: 4 }, (title) => `${title} (copy)`);
    expect(saved).toMatchObject({ isCopy: true, entry: { id: 'copy' } });
    expect(await store.get('a')).toEqual(record);
  });

  test('a session, or the skill in one, is not read and known as a later one', () => {
    const session = { version, savedAt: 1, cursorS: 0, history: makeHistory(skill) };
    const inside = { ...session, version: 2, history: makeHistory(of(version)) };
    for (const record of [session, inside]) {
      expect(parseSession(record, migrateKept)).toBeUndefined();
      expect(isFromNewerBuild(record)).toBe(true);
    }
    expect(findNewer(session)).toEqual({ of: 'record', has: version, reads: 2 });
    expect(findNewer(inside)).toEqual({ of: 'skill', has: version, reads: 2 });
    expect(isFromNewerBuild({ ...session, version: 2 })).toBe(false);
  });

  test('a skill of a later version is found wherever a session holds it', () => {
    const old = makeHistory(skill);
    const beside = (...files: SkillFile[]) => files.map((file) => ({ name: 'B', file, isKept: false }) as never);
    const opened = open(open(old, of(version), 'Open it'), skill, 'Open the old one');
    const kept = edit(old, skill, 'Keep B', beside(of(version)));
    const histories: Record<string, unknown> = {
      'a version beside it': kept,
      'a step back': opened,
      'a step forward': undo(open(old, of(version), 'Open it')),
      'a step that put a version beside it': edit(kept, skill, 'Delete B', []),
      'a step that changed one beside it': edit({ ...old, beside: beside(skill) }, skill, 'Change B', kept.beside),
      'the beginning of a gesture': { ...setMark(makeHistory(of(version))), doc: skill },
    };
    for (const [where, history] of Object.entries(histories)) {
      const record = { version: 2, savedAt: 1, cursorS: 0, history };
      expect(findNewer(record), where).toEqual({ of: 'skill', has: version, reads: 2 });
      expect(parseSession(record, migrateKept), where).toBeUndefined();
    }
  });
});
