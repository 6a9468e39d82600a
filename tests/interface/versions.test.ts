// Versions beside the document: one undo for both, places are letters, damage is passed over.
import { describe, expect, it } from 'vitest';
import type { SkillFile } from '../../sim/index.ts';
import * as past from '../../src/document/history.ts';
import {
  addVersion,
  findLastKept,
  type KeptVersion,
  MOST_VERSIONS,
  promoteVersion,
  readVersions,
  removeVersion,
  renameVersion,
  replaceLast,
  swapVersion,
  type Versions,
  writeVersions,
} from '../../src/document/versions.ts';

const file = (title: string): SkillFile => ({ title }) as SkillFile;
const version = (name: string, isKept = false): KeptVersion => ({ name, file: file(name), isKept });
const names = (list: Versions): string[] => list.map((v) => v.name);

describe('history with something beside the document', () => {
  const h0 = past.makeHistory(file('one'));
  const h1 = past.edit(h0, file('one'), 'keep', writeVersions([version('b')]));
  const h2 = past.edit(h1, file('two'), 'change');
  const h3 = past.edit(h2, file('b'), 'swap', writeVersions([version('two')]));

  it('a step may change the versions alone, the document alone, or both', () => {
    expect([h1, h2, h3].map((h) => h.done.length)).toEqual([1, 2, 3]);
    expect(names(readVersions(h2.beside))).toEqual(['b']);
    expect(h3.doc.title).toBe('b');
    expect(names(readVersions(h3.beside))).toEqual(['two']);
  });

  it('undo takes back both at once, redo brings both back', () => {
    const back = past.undo(h3);
    expect([back.doc.title, names(readVersions(back.beside))]).toEqual(['two', ['b']]);
    const first = past.undo(past.undo(back));
    expect([first.doc.title, readVersions(first.beside)]).toEqual(['one', []]);
    const again = past.redo(past.redo(past.redo(first)));
    expect(again.doc).toEqual(h3.doc);
    expect(again.beside).toEqual(h3.beside);
  });

  it('a gesture given up leaves the versions as they are, and a step that changes nothing is none', () => {
    const given = past.abandon(past.setDraft(h2, file('three')));
    expect([given.doc.title, names(readVersions(given.beside))]).toEqual(['two', ['b']]);
    expect(past.edit(h2, file('two'), 'nothing', writeVersions([version('b')])).done.length).toBe(2);
  });
});

describe('versions', () => {
  it('letters are places, eight with the document; none is replaced unless it is asked for', () => {
    let list: Versions = [];
    for (const name of ['1', '2', '3', '4', '5', '6', '7']) list = addVersion(list, version(name)) ?? [];
    expect(list.length).toBe(MOST_VERSIONS);
    expect(MOST_VERSIONS).toBe(7);
    expect(addVersion(list, version('8'))).toBeUndefined();
    expect(names(replaceLast(list, version('8')))).toEqual(['1', '2', '3', '4', '5', '6', '8']);
  });

  it('swapping twice is nothing', () => {
    const list = [version('b'), version('c')];
    const once = swapVersion(file('a'), list, 1, 'a');
    expect([once.doc.title, names(once.versions)]).toEqual(['c', ['b', 'a']]);
    const twice = swapVersion(once.doc, once.versions, 1, 'c');
    expect([twice.doc.title, names(twice.versions)]).toEqual(['a', ['b', 'c']]);
  });

  it('a version that becomes the document leaves its place', () => {
    const { doc, versions } = promoteVersion(file('a'), [version('b'), version('c')], 0);
    expect([doc.title, names(versions)]).toEqual(['b', ['c']]);
    expect(names(removeVersion([version('b'), version('c')], 0))).toEqual(['c']);
  });

  it('a name is tidied, and an empty one changes nothing', () => {
    const list = [version('b')];
    expect(names(renameVersion(list, 0, '  loose \n wrap '))).toEqual(['loose wrap']);
    expect(renameVersion(list, 0, '   ')).toBe(list);
  });

  it('the last one kept of the document is found', () => {
    expect(findLastKept([version('b', true), version('c'), version('d', true)])).toBe(2);
    expect(findLastKept([version('b')])).toBe(-1);
  });

  it('what is damaged is passed over', () => {
    expect(readVersions(undefined)).toEqual([]);
    expect(readVersions('x')).toEqual([]);
    expect(names(readVersions([null, 3, { name: 'b' }, { name: 'c', file: {} }] as never))).toEqual(['c']);
    expect(readVersions(writeVersions([version('b', true)]))).toEqual([version('b', true)]);
  });
});
