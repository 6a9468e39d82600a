// A student's sheet in the room of a class: what locks, what is asked of the flight, what is kept and gone on with.
import { createRoot } from 'solid-js';
import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import { worksheets } from '../../presets/worksheet-shelf.ts';
import * as sim from '../../sim/index.ts';
import type { Page } from '../../src/app/page.ts';
import type { Classing, WorksheetNumbers } from '../../src/engine/class.ts';
import { makeAnswerKeep } from '../../src/features/class/answer-keep.ts';
import type { AnswerWork } from '../../src/features/class/answer-state.ts';
import { type ClassRoomState, makeClassRoom } from '../../src/features/class/class-state.ts';
import { sheetFileName } from '../../src/features/class/hand-in.ts';
import { isSameToThird, ratioPlace } from '../../src/features/class/ratio.ts';
import { clockOf, timeStamp } from '../../src/features/class/time-stamp.ts';
import { MemoryRecords } from './memory-records.ts';

const by = await sim.loadEstimate();
const NOW = new Date(2026, 2, 2, 9, 41, 5);

const ready = (id: string): sim.Worksheet => {
  const { skill, ...asks } = worksheets[id];
  return sim.parseWorksheet({ ...sim.worksheetHead, ...asks, skill: skills[skill] });
};
let names = 0;
const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/** Answers are read as ever; of the flight only which questions were asked for is noted. */
function makeRoom(records = new MemoryRecords()) {
  const opened: (readonly number[] | 'all')[] = [];
  const classing = {
    ready: [],
    rules: sim,
    read: (text: string) => sim.parseWorksheet(JSON.parse(text)),
    write: sim.formatWorksheet,
    digest: sim.digestOfWorksheet,
    compute: async ({ questions, answers }: sim.Worksheet, open: readonly number[] | 'all') => {
      opened.push(open);
      const read = questions.map((q, i) =>
        q.kind === 'number' ? by.readAnswerIn(answers[i].text ?? '', q.unit) : undefined,
      );
      return { sheet: [], workings: [], answers: read, simulated: [] } satisfies WorksheetNumbers;
    },
  } as unknown as Classing;
  const ports = { keep: makeAnswerKeep(records), now: () => NOW, newName: () => `name${++names}` };
  const notices: string[] = [];
  const shell = { notify: (notice?: { text: string }) => notices.push(notice?.text ?? '') };
  const room = createRoot(() => makeClassRoom({ shell } as unknown as Page, classing, ports));
  return { room, records, opened, notices };
}
const workOf = ({ room }: { room: ClassRoomState }): AnswerWork => {
  const work = room.work();
  if (!work) throw new Error('no sheet is open');
  return work;
};
async function openReady(id: string, records?: MemoryRecords) {
  const made = makeRoom(records);
  made.room.open(ready(id));
  await settled();
  return { ...made, work: workOf(made) };
}

describe('a lock', () => {
  it('takes the answer with its unit and the time, asks for the values of locked questions alone, and holds', async () => {
    const { work, opened } = await openReady('double-back-tuck');
    work.write(0, { working: '2 * 5 / 9.81', text: '1.05 s' });
    work.lock(0);
    await settled();
    expect(work.worksheet().answers[0]).toMatchObject({ text: '1.05 s', lockedAt: timeStamp(NOW) });
    await settled();
    expect(opened.at(0)).toEqual([]);
    expect(opened.at(-1)).toEqual([0]);
    work.write(0, { text: '9 s' });
    expect(work.worksheet().answers[0].text).toBe('1.05 s');
    expect([work.lockedCount(), work.next(), work.isComplete()]).toEqual([1, 1, false]);
  });

  it('asks once where the unit is missing, and a new letter takes the question back', async () => {
    const { work } = await openReady('double-back-tuck');
    work.write(0, { text: '1.05' });
    work.lock(0);
    await settled();
    expect(work.question()?.messages).toEqual(['1.05 s? No unit was written.']);
    expect(work.isLocked(0)).toBe(false);
    work.write(0, { text: '1.06' });
    expect(work.question()).toBeUndefined();
    work.lock(0);
    await settled();
    work.confirm();
    expect(work.worksheet().answers[0].text).toBe('1.06 s');
  });

  it('says why it does not lock: nothing written, another kind of quantity, one before it is open', async () => {
    const { work } = await openReady('double-back-tuck');
    work.lock(0);
    expect(work.said(0)).toBe('Write an answer first.');
    work.write(0, { text: '1.05 m' });
    expect(work.said(0)).toBeUndefined();
    work.lock(0);
    await settled();
    expect(work.said(0)).toContain('is asked for, in s');
    work.write(1, { text: '1.2 m' });
    work.lock(1);
    expect(work.said(1)).toBe('Lock answer 1 first.');
    expect(work.lockedCount()).toBe(0);
  });

  it('of a worksheet that locks together takes all at once, or none', async () => {
    const { work, opened } = await openReady('landing');
    work.lock(0);
    expect(work.isLocked(0)).toBe(false);
    const texts = ['1.3 m', '120 m/s^2', '8000', 'It has a peak.'];
    for (const [i, text] of texts.slice(0, 3).entries()) work.write(i, { text });
    work.lockAll();
    expect([work.said(3), work.lockedCount()]).toEqual(['Write an answer first.', 0]);
    work.write(3, { text: texts[3] });
    work.lockAll();
    await settled();
    expect(work.question()?.messages).toEqual(['8000 N? No unit was written.']);
    expect(opened.flat()).toEqual([]);
    work.confirm();
    await settled();
    expect(work.isComplete()).toBe(true);
    expect(opened.at(-1)).toEqual([0, 1, 2, 3]);
  });
});

describe('what is written', () => {
  it('is kept, found again when the worksheet is opened, and asked about before it is shown', async () => {
    const { work, records } = await openReady('double-back-tuck');
    work.setName('Wren A.');
    work.setGroup('10 blue');
    work.write(0, { text: '1.05 s' });
    await settled();
    expect(work.isKept()).toBe(true);

    const other = makeRoom(records);
    other.room.open(ready('double-back-tuck'));
    await settled();
    const offer = other.room.offer();
    expect(other.room.work()).toBeUndefined();
    expect(offer?.kept.map(({ name, locked }) => [name, locked])).toEqual([['Wren A.', 0]]);
    offer?.goOn(work.id());
    const again = workOf(other);
    expect([again.name(), again.group(), again.worksheet().answers[0].text]).toEqual(['Wren A.', '10 blue', '1.05 s']);

    const third = makeRoom(records);
    third.room.open(ready('double-back-tuck'));
    await settled();
    third.room.offer()?.blank();
    const blank = workOf(third);
    expect([blank.name(), blank.worksheet().answers[0]]).toEqual(['', {}]);
    blank.write(0, { text: '2 s' });
    await settled();
    expect(records.map.size).toBe(2);
    await work.forget();
    expect(records.map.size).toBe(1);
  });

  it('of another worksheet is not offered', async () => {
    const { work, records } = await openReady('double-back-tuck');
    work.write(0, { text: '1.05 s' });
    await settled();
    const { room } = await openReady('landing', records);
    expect(room.offer()).toBeUndefined();
  });

  it('is handed in with the name, and the same file opened again goes on where it was', async () => {
    const { work, records } = await openReady('double-back-tuck');
    work.setName(' Wren A. ');
    work.write(0, { text: '1.05 s' });
    work.lock(0);
    await settled();
    await settled();
    const text = sim.formatWorksheet(work.handedIn());
    expect(JSON.parse(text).student).toEqual({ name: 'Wren A.' });
    const other = makeRoom(records);
    other.room.receive([{ name: 'worksheet-wren-a.json', text }]);
    await settled();
    expect([workOf(other).id(), workOf(other).isLocked(0)]).toEqual([work.id(), true]);
  });

  it('two pages on one sheet write over nothing of each other: the second goes on beside it, once, and says so', async () => {
    const records = new MemoryRecords();
    const first = await openReady('double-back-tuck', records);
    first.work.write(0, { text: '1.05 s' });
    await settled();
    const [stored] = await makeAnswerKeep(records).list(first.work.id().split('/')[0]);
    const second = makeRoom(records);
    second.room.resume(stored);
    const there = workOf(second);
    expect(there.id()).toBe(first.work.id());
    // read here, and written there since
    first.work.write(0, { text: '1.06 s' });
    await settled();
    for (const text of ['1.2 s', '1.3 s']) {
      there.write(0, { text });
      await settled();
    }
    expect(there.id()).not.toBe(first.work.id());
    expect(second.notices).toEqual([expect.stringContaining('in another tab too')]);
    const all = await makeAnswerKeep(records).list(stored.id.split('/')[0]);
    expect(all.map(({ text }) => sim.parseWorksheet(JSON.parse(text)).answers[0].text).sort()).toEqual([
      '1.06 s',
      '1.3 s',
    ]);
    first.work.write(0, { text: '1.07 s' });
    await settled();
    expect([first.notices, (await makeAnswerKeep(records).get(first.work.id()))?.text]).toEqual([
      [],
      expect.stringContaining('1.07 s'),
    ]);
  });

  it('where the browser keeps nothing is said, and goes on', async () => {
    const records = new MemoryRecords();
    records.refuses = true;
    const { work, notices } = await openReady('double-back-tuck', records);
    expect(notices).toEqual([expect.stringContaining('cannot be read now')]);
    work.write(0, { text: '1.05 s' });
    await settled();
    expect([work.isKept(), work.worksheet().answers[0].text]).toEqual([false, '1.05 s']);
  });
});

describe('what is opened', () => {
  it('several files are a class; one that is no worksheet is refused and changes nothing', async () => {
    const { room, work } = await openReady('double-back-tuck');
    room.receive([{ name: 'notes.json', text: '{"format":"other"}' }]);
    expect([room.fault()?.name, room.work()]).toEqual(['notes.json', work]);
    // nothing was changed, says the sentence after it
    expect(room.fault()?.reason).toMatch(/[^.]\.$/);
    const files = ['a', 'b'].map((name) => ({ name, text: sim.formatWorksheet(work.handedIn()) }));
    room.receive(files);
    expect([room.view(), room.files().length]).toEqual(['table', 2]);
  });
});

describe('small parts', () => {
  it.each([
    ['Wren A.', 'worksheet-wren-a.json'],
    ['../..\\é 李', 'worksheet-é-李.json'],
    ['  ', 'worksheet-sheet.json'],
  ])('the file of %j is %s', (name, file) => expect(sheetFileName(name)).toBe(file));

  it('a time is one that a worksheet takes, and is read as a clock', () => {
    expect(timeStamp(NOW)).toMatch(/^2026-03-02T09:41:05[+-]\d\d:\d\d$/);
    expect(clockOf(timeStamp(NOW))).toBe('9:41');
  });

  it('four times is at the upper end, a quarter at the lower, the same in the middle', () => {
    expect([4, 1, 0.25, 90, -1].map((r) => ratioPlace(r)?.share)).toEqual([0, 0.5, 1, 0, undefined]);
    expect([isSameToThird(1.112, 1.108), isSameToThird(1.112, 1.124)]).toEqual([true, false]);
  });
});
