// One's own estimate sheets: no choice and no edit loses one; what is kept comes back, also from an older build.
import { describe, expect, it } from 'vitest';
import type { SheetFile } from '../../sim/index.ts';
import { edit, makeHistory, undo } from '../../src/document/history.ts';
import { dropOld, readDesk, writeDesk } from '../../src/document/keep-sheets.ts';
import {
  addSheet,
  changeSheet,
  freeTitle,
  listOwn,
  openSheet,
  removeSheet,
  type SheetDesk,
} from '../../src/document/own-sheets.ts';
import { MemoryStorage } from './memory-storage.ts';

const sheet = (title: string, ...lines: string[]): SheetFile => ({
  format: 'shapeflight-sheet',
  version: 1,
  title,
  lines,
});
const ready = { id: 'energy', sheet: sheet('Energy', 'a = 1 J', 'b = 2 J') };
const empty: SheetDesk = { own: {}, open: 'energy' };
let made = 0;
const names = { newId: () => `id${++made}`, copyOf: (title: string) => `Copy of ${title}` };
const titles = (desk: SheetDesk): string[] => listOwn(desk).map((one) => one.sheet.title);

describe('own sheets', () => {
  it('an edited ready sheet becomes a copy, once', () => {
    const next = sheet('Energy', 'a = 1 J', 'b = 3 J');
    const first = changeSheet(empty, ready, next, names);
    expect(titles(first)).toEqual(['Copy of Energy']);
    expect(first.own[first.open]).toEqual({ sheet: { ...next, title: 'Copy of Energy' }, from: 'energy' });
    const shown = { id: first.open, sheet: first.own[first.open].sheet };
    const second = changeSheet(first, shown, { ...shown.sheet, lines: ['a = 9 J', 'b = 3 J'] }, names);
    expect(titles(second)).toEqual(['Copy of Energy']);
    expect(second.own[second.open].sheet.lines).toEqual(['a = 9 J', 'b = 3 J']);
  });

  it('a second copy of the same sheet has a title of its own', () => {
    const first = changeSheet(empty, ready, sheet('Energy', 'a = 5 J'), names);
    const second = changeSheet(openSheet(first, 'energy'), ready, sheet('Energy', 'a = 6 J'), names);
    expect(titles(second)).toEqual(['Copy of Energy', 'Copy of Energy 2']);
    expect(freeTitle(second, 'Copy of Energy')).toBe('Copy of Energy 3');
  });

  it('the sheet of the skill that one’s own is the same as is edited there, not copied again', () => {
    const mine = addSheet(empty, 'mine', sheet('My sheet', 'T = 1 s'));
    const ofSkill = { id: 'skill', sheet: sheet('My sheet', 'T = 1 s') };
    const next = changeSheet(openSheet(mine, 'skill'), ofSkill, sheet('My sheet', 'T = 2 s'), names);
    expect(Object.keys(next.own)).toEqual(['mine']);
    expect(next).toMatchObject({ open: 'mine', own: { mine: { sheet: { lines: ['T = 2 s'] } } } });
  });

  it('choosing another sheet keeps one’s own, and one step back opens it again', () => {
    const mine = addSheet(empty, 'mine', sheet('My sheet', ...Array.from({ length: 8 }, (_, i) => `x_${i} = ${i} m`)));
    const chosen = edit(makeHistory(mine), openSheet(mine, 'energy'), 'Open Energy');
    expect(titles(chosen.doc)).toEqual(['My sheet']);
    expect(undo(chosen).doc).toEqual(mine);
  });

  it('deleting is undone whole', () => {
    const mine = addSheet(empty, 'mine', sheet('My sheet', 'T = 1 s'));
    const gone = edit(makeHistory(mine), removeSheet(mine, 'mine', 'energy'), 'Delete My sheet');
    expect(gone.doc).toEqual({ own: {}, open: 'energy' });
    expect(undo(gone).doc).toEqual(mine);
  });
});

describe('kept sheets', () => {
  const stores = () => ({ local: new MemoryStorage(), tab: new MemoryStorage() });
  const mine = addSheet(empty, 'mine', sheet('My sheet', 'T = 1 s'));

  it('come back after a reload, with the open one; a new tab opens the last', () => {
    const kept = stores();
    const two = addSheet(mine, 'two', sheet('Two', 'x = 1 m'), 'energy');
    expect(writeDesk(kept, two, undefined)).toBe(true);
    expect(readDesk(kept)).toEqual(two);
    expect(readDesk({ ...kept, tab: new MemoryStorage() })).toEqual(two);
    writeDesk(kept, removeSheet(two, 'mine', 'two'), two);
    expect(Object.keys(readDesk(kept).own)).toEqual(['two']);
  });

  it('two tabs do not overwrite each other’s sheets', () => {
    const here = stores();
    const there = { local: here.local, tab: new MemoryStorage() };
    writeDesk(here, mine, undefined);
    const hereNext = addSheet(mine, 'here', sheet('Here', 'a = 1 m'));
    const thereNext = { ...mine, own: { mine: { sheet: sheet('My sheet', 'T = 2 s') } } };
    writeDesk(there, thereNext, mine);
    writeDesk(here, hereNext, mine);
    expect(readDesk(here).own).toEqual({ ...thereNext.own, here: hereNext.own.here });
  });

  it('what was cleared from outside is written again with the next edit', () => {
    const kept = stores();
    writeDesk(kept, mine, undefined);
    kept.local.clear();
    writeDesk(kept, openSheet(mine, 'energy'), mine);
    expect(readDesk(kept).own).toEqual(mine.own);
  });

  it('the sheet of an older build is found, and given up once it has a name', () => {
    const kept = stores();
    const old = { sheet: sheet('Energy', 'a = 7 J'), from: 'energy' };
    kept.local.setItem('shapeflight.sheet', JSON.stringify(old));
    expect(readDesk(kept)).toEqual({ own: {}, old });
    dropOld(kept);
    expect(readDesk(kept)).toEqual({ own: {} });
  });

  it('damage and a newer build’s sheet are passed over, and left as they are', () => {
    const kept = stores();
    const texts = {
      bad: '{',
      lines: '{"version":1,"sheet":{"title":"x"}}',
      newer: '{"version":2,"sheet":{"title":"x","lines":[]}}',
    };
    for (const [id, text] of Object.entries(texts)) kept.local.setItem(`shapeflight.sheet.${id}`, text);
    expect(readDesk(kept).own).toEqual({});
    writeDesk(kept, mine, undefined);
    for (const [id, text] of Object.entries(texts)) expect(kept.local.getItem(`shapeflight.sheet.${id}`)).toBe(text);
  });

  it('a browser that refuses is said', () => {
    expect(writeDesk({ local: undefined, tab: undefined }, mine, undefined)).toBe(false);
    const full = Object.assign(new MemoryStorage(), {
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    });
    expect(writeDesk({ local: full, tab: undefined }, mine, undefined)).toBe(false);
  });
});
