// What happens at the same time: a release that is waited for, a drag that another document is opened under, a save that ends late.
import { createRoot } from 'solid-js';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { readDropped } from '../../src/app/dropped-files.ts';
import { useLaying } from '../../src/app/laying.ts';
import { createPage, type Page, PageContext } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import { useShelf } from '../../src/app/shelf.ts';
import { edit, makeHistory, undo } from '../../src/document/history.ts';
import type { KeptSession } from '../../src/document/keep-record.ts';
import type { SkillEntry } from '../../src/document/shelf.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { filing } from '../../src/engine/read-files.ts';
import { LONGEST_RELEASE_MS, makeAskRelease } from '../../src/engine/release.ts';
import { useCompareState } from '../../src/features/compare/compare-state.ts';
import { JobTimeoutError, type Pool, WorkerLostError } from '../../src/jobs/pool.ts';
import { readyEngine } from './ready-engine.ts';

const first = skills['back-straight-full'] as SkillFile;
const giant = skills['giant-double-straight'] as SkillFile;
const tuck =
  skills['back-tuck'] ?? (Object.values(skills).find(({ phases }) => phases[0].kind === 'flight') as SkillFile);

const ends: (() => void)[] = [];
beforeAll(() => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterEach(() => {
  for (const end of ends.splice(0)) end();
});
afterAll(() => vi.unstubAllGlobals());

const tasks = async (count = 3): Promise<void> => {
  for (let i = 0; i < count; i++) await new Promise((resolve) => setTimeout(resolve));
};

/** An engine whose releases fail, or never come, until they are let through. */
async function heldBack(error?: Error) {
  const whole = await readyEngine();
  let isHeld = true;
  const asks: (() => void)[] = [];
  const { calcRelease, contactFor, buildSkill, parseSkill } = await import('../../sim/index.ts');
  const engine = makeEngine({ athletes, shapes }, async (file) => {
    if (isHeld && error) throw error;
    if (isHeld) await new Promise<void>((resolve) => asks.push(resolve));
    const skill = buildSkill(parseSkill(file, { athletes, shapes }));
    return calcRelease(skill, await contactFor(skill));
  });
  const release = async (): Promise<void> => {
    isHeld = false;
    for (const ask of asks.splice(0)) ask();
    await vi.waitFor(() => undefined);
    await tasks();
  };
  return { engine, release, whole };
}

function open(engine: Services['flying'], more: Partial<Services> = {}, kept?: KeptSession): Page {
  const services = {
    flying: engine,
    presets: { first, standIn: first, shapes, skills: [], athletes: [] },
    keeper: { kept, write: async () => true, leave: () => {}, check: async () => {}, watch: () => {} },
    tools: [],
    load: { comparing: () => new Promise(() => {}) },
    ...more,
  } as unknown as Services;
  return createRoot((end) => {
    ends.push(end);
    return createPage(services);
  });
}
/** what a hook gives inside of the page */
const within = <T>(page: Page, hook: () => T): T =>
  createRoot((end) => {
    ends.push(end);
    let got: T | undefined;
    PageContext.Provider({
      value: page,
      get children() {
        got = hook();
        return undefined;
      },
    });
    return got as T;
  });
const blocksOf = (file: SkillFile) =>
  file.phases.flatMap((p) => (p.kind === 'flight' ? (p.schedule.blocks ?? []) : []));
const renamed = (file: SkillFile, title: string): SkillFile => ({ ...file, title });

test('the shapes of one document never edit another whose swing is not known', async () => {
  const { engine, release } = await heldBack();
  const page = open(engine);
  const laying = within(page, useLaying);
  expect(page.flight.spans().length).toBeGreaterThan(0);
  page.doc.open(structuredClone(giant), 'giant');
  expect(page.flight.outcome().isWaiting).toBe(true);
  expect([page.flight.edited(), page.flight.spans(), page.flight.lanes()]).toEqual([undefined, [], []]);
  const before = page.doc.history();
  laying.replace(0, 'tuck');
  laying.lay('tuck', 0.4);
  expect(page.doc.history()).toBe(before);
  await release();
  await vi.waitFor(() => expect(page.flight.edited()).toEqual(giant));
  expect(page.flight.spans().map(({ shape }) => shape)).toEqual(blocksOf(giant).map(({ shape }) => shape));
  laying.replace(0, 'tuck');
  expect(blocksOf(page.doc.file())[0].shape).toBe('tuck');
});

test('spans name the places of the document where its own last flight had others', async () => {
  const page = open(await readyEngine());
  const { doc, flight } = page;
  const short = structuredClone(first);
  for (const phase of short.phases) {
    if (phase.kind !== 'flight') continue;
    phase.schedule.blocks?.splice(0, 1);
  }
  doc.edit({ ...short, gravityMPerS2: 0 }, 'one shape fewer, and cannot be flown');
  expect(flight.outcome().fault).toBeDefined();
  expect(flight.spans()).toHaveLength(blocksOf(doc.file()).length);
});

test('a release that takes too long is given up, and can be tried again', async () => {
  const given: unknown[] = [];
  const pool = {
    run: (_job: string, _subject: unknown, options: unknown) => {
      given.push(options);
      return { done: new Promise(() => {}), cancel() {}, finish() {} };
    },
  } as unknown as Pool;
  void makeAskRelease(shapes, pool)(giant, (await readyEngine()).findAthlete(giant));
  expect(given).toEqual([{ limitMs: LONGEST_RELEASE_MS }]);
  const { engine, release } = await heldBack(new JobTimeoutError('too long'));
  const page = open(engine);
  page.doc.open(structuredClone(giant), 'giant');
  await tasks();
  expect(page.flight.outcome().fault?.canRetry).toBe(true);
  await release();
  page.flight.retry();
  await vi.waitFor(() => expect(page.flight.result().file).toEqual(giant));
});

const entry = { kind: 'skill', id: 'e1', revision: 3, savedAt: 1, value: renamed(tuck, 'my tuck') } as SkillEntry;

test('a drag between the press and the opening is a step of the document before; the one that is opened is untouched', async () => {
  const { doc } = open(await readyEngine());
  doc.openEntry(entry);
  doc.draft(renamed(doc.begin(), 'dragged'));
  await tasks();
  expect(doc.file()).toEqual(entry.value);
  // the hand goes on, and lets go
  doc.draft(renamed(doc.begin(), 'dragged on'));
  doc.settle('drag');
  expect(doc.file()).toEqual(entry.value);
  expect(doc.origin()).toEqual({ id: 'e1', revision: 3 });
  expect(doc.isHeld()).toBe(false);
  doc.undo();
  expect([doc.file().title, doc.origin()]).toEqual(['dragged', undefined]);
  // and the next gesture is one as ever
  doc.draft(renamed(doc.begin(), 'next'));
  doc.settle('next');
  expect(doc.file().title).toBe('next');
});

test('an entry of the shelf is undone by the name of what was done', async () => {
  const { doc } = open(await readyEngine());
  doc.openEntry(entry);
  await tasks();
  expect(doc.undoTitle()).toBe('Open my tuck');
});

test.each([
  ['pending', undefined],
  ['lost', new WorkerLostError('not loaded')],
])('a kept document whose swing is %s stays open with its whole history', async (_, error) => {
  const { engine, release } = await heldBack(error);
  const history = undo(edit(makeHistory(giant), renamed(giant, 'later'), 'rename'));
  await Promise.race([engine.ready(giant), tasks()]);
  const page = open(engine, {}, { history, cursorS: 0.2 } as KeptSession);
  expect(page.doc.history()).toBe(history);
  expect([page.doc.redoTitle(), page.doc.fileFault()]).toEqual(['rename', undefined]);
  const { isWaiting, fault } = page.flight.outcome();
  expect([isWaiting, fault?.canRetry]).toEqual(error ? [undefined, true] : [true, undefined]);
  expect([page.flight.result().file, page.flight.edited()]).toEqual([first, undefined]);
  await release();
  page.flight.retry();
  await vi.waitFor(() => expect(page.flight.result().file).toEqual(giant));
  expect(page.flight.outcome().fault).toBeUndefined();
});

test('a save that ends after another skill was opened leaves that one its place', async () => {
  let end = (): void => {};
  const shelf = {
    list: async () => [],
    damaged: () => [],
    watch: () => () => {},
    saveSkill: (file: SkillFile) =>
      new Promise((resolve) => {
        end = () => resolve({ entry: { ...entry, id: 'old', revision: 1, value: file }, isCopy: false });
      }),
  } as unknown as Services['shelf'];
  const page = open(await readyEngine(), { shelf });
  const saved = within(page, useShelf).save();
  page.doc.open(structuredClone(tuck), 'tuck', { id: 'tuck', revision: 7 });
  end();
  await saved;
  expect(page.doc.origin()).toEqual({ id: 'tuck', revision: 7 });
});

test('a version whose swing was lost is flown when it is tried again', async () => {
  const { engine, release } = await heldBack(new WorkerLostError('gone'));
  const page = open(engine);
  const state = within(page, useCompareState);
  state.setStays(true);
  page.doc.editVersions(page.doc.file(), [{ name: 'giant', file: giant, isKept: false }], 'add');
  await tasks();
  page.flight.retry();
  await tasks();
  expect(state.flown()[1].fault).toBeDefined();
  await release();
  page.flight.retry();
  await vi.waitFor(() => expect(state.flown()[1].result?.file).toEqual(giant));
});

test('files that are dropped together are opened each in a task of its own', async () => {
  const opened: string[] = [];
  const inNext: number[] = [];
  const doc = {
    readText: (name: string, _text: string, _join: unknown, end: (end: 'taken') => void) => {
      opened.push(name);
      setTimeout(() => inNext.push(opened.length));
      end('taken');
    },
    id: () => 0,
  };
  const host = { doc, shell: { tool: () => undefined }, services: { load: { filing: async () => filing } } };
  const files = ['a', 'b', 'c'].map((name) => new File([JSON.stringify(tuck)], name));
  await readDropped(host as unknown as Parameters<typeof readDropped>[0], files);
  expect(opened).toEqual(['c', 'b', 'a']);
  expect(inNext).toEqual([1, 2, 3]);
});
