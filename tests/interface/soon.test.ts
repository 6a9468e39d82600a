// A step that is made soon: flown in one task, shown in the next, and found made by whatever is done before.
import { createRoot } from 'solid-js';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { startDrag } from '../../src/ui/drag.ts';

const first = skills['back-straight-full'] as SkillFile;
const titled = (title: string): SkillFile => ({ ...first, title });
const task = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

const flying = makeEngine({ athletes, shapes });
let flights = 0;
/** what listens to acts, ahead of all others */
let acts: Map<string, () => void>;
const ends: (() => void)[] = [];

beforeAll(() => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('addEventListener', (name: string, listen: () => void, how: unknown) => {
    expect(how).toEqual({ capture: true });
    acts.set(name, listen);
  });
});
beforeEach(() => {
  acts = new Map();
  flights = 0;
});
afterEach(() => {
  for (const end of ends.splice(0)) end();
});
afterAll(() => vi.unstubAllGlobals());

function open(): Page {
  const services = {
    flying: {
      ...flying,
      fly: (file: SkillFile, near?: FlightResult) => {
        flights++;
        return flying.fly(file, near);
      },
    },
    presets: { first, standIn: first, shapes, skills: [], athletes: [] },
    keeper: { write: async () => true, leave: () => {}, check: async () => {}, watch: () => {} },
    tools: [],
    load: { comparing: () => new Promise(() => {}) },
  } as unknown as Services;
  const page = createRoot((end) => {
    ends.push(end);
    return createPage(services);
  });
  page.flight.result();
  flights = 0;
  return page;
}
const titleOf = ({ doc, flight }: Page): string[] => [doc.file().title, flight.result().file.title];

test('it is flown in the next task and shown in the one after, by that one flight', async () => {
  const page = open();
  page.doc.editSoon(titled('one'), 'a name');
  expect([titleOf(page), flights]).toEqual([[first.title, first.title], 0]);
  await task();
  expect([titleOf(page), flights]).toEqual([[first.title, first.title], 1]);
  await task();
  expect([titleOf(page), flights]).toEqual([['one', 'one'], 1]);
  page.doc.undoSoon();
  await task();
  expect([titleOf(page), flights]).toEqual([['one', 'one'], 2]);
  await task();
  expect([titleOf(page), flights]).toEqual([[first.title, first.title], 2]);
});

test('as many presses in one task as there are steps undo and redo as many', async () => {
  const page = open();
  for (const title of ['one', 'two', 'three']) page.doc.edit(titled(title), title);
  for (let i = 0; i < 3; i++) page.doc.undoSoon();
  page.doc.redoSoon();
  for (let i = 0; i < 4; i++) await task();
  expect(titleOf(page)).toEqual(['one', 'one']);
  expect(page.doc.redoTitle()).toBe('two');
});

const gesture = ({ doc }: Page): void => {
  doc.begin();
  doc.draft(titled('led'));
};

test.each<[string, (page: Page) => void, string, string | undefined]>([
  ['an edit', ({ doc }) => doc.edit({ ...doc.file(), athlete: first.athlete, title: 'more' }, 'more'), 'more', 'more'],
  ['undo', ({ doc }) => doc.undo(), first.title, undefined],
  [
    'a gesture that is let go of',
    (page) => {
      gesture(page);
      page.doc.settle('led');
    },
    'led',
    'led',
  ],
  [
    'a gesture that is taken back',
    (page) => {
      gesture(page);
      page.doc.abandon();
    },
    'soon',
    'soon',
  ],
  ['a key', () => acts.get('keydown')?.(), 'soon', 'soon'],
  ['a press', () => acts.get('pointerdown')?.(), 'soon', 'soon'],
  ['leaving the page', () => acts.get('pagehide')?.(), 'soon', 'soon'],
])('%s before it is shown finds it made, and nothing is made twice', async (_, act, title, step) => {
  const page = open();
  page.doc.editSoon(titled('soon'), 'soon');
  act(page);
  expect(page.doc.file().title).toBe(title);
  for (let i = 0; i < 4; i++) await task();
  expect(titleOf(page)).toEqual([title, title]);
  expect(page.doc.undoTitle()).toBe(step);
});

test.each(['undoSoon', 'redoSoon'] as const)(
  '%s in a gesture takes back that alone, and the hand is let go',
  async (way) => {
    vi.stubGlobal('window', new EventTarget());
    const page = open();
    for (const title of ['one', 'two']) page.doc.edit(titled(title), title);
    page.doc.undo();
    const grip = Object.assign(new EventTarget(), { setPointerCapture: () => {} });
    const at = (clientX: number) => ({
      button: 0,
      buttons: 1,
      pointerId: 1,
      pointerType: 'mouse',
      clientX,
      clientY: 0,
    });
    const move = async (x: number): Promise<void> => {
      window.dispatchEvent(Object.assign(new Event('pointermove'), at(x)));
      await task();
    };
    startDrag({ ...at(0), currentTarget: grip } as unknown as PointerEvent, {
      move: () => gesture(page),
      end: () => page.doc.settle('led'),
      cancel: () => void page.doc.abandon(),
    });
    await move(30);
    expect([page.doc.isHeld(), page.doc.file().title]).toEqual([true, 'led']);
    page.doc[way]();
    await move(50);
    window.dispatchEvent(Object.assign(new Event('pointerup'), at(50)));
    for (let i = 0; i < 3; i++) await task();
    expect([page.doc.isHeld(), ...titleOf(page)]).toEqual([false, 'one', 'one']);
    expect([page.doc.undoTitle(), page.doc.redoTitle()]).toEqual(['one', 'two']);
  },
);

test('one that cannot be flown is said when it is shown', async () => {
  const page = open();
  const bad = structuredClone(first);
  for (const phase of bad.phases)
    if (phase.kind === 'flight' && phase.takeoff) phase.takeoff.velocityMPerS = { up: -30 } as never;
  page.doc.editSoon({ ...bad, title: 'bad' }, 'bad');
  for (let i = 0; i < 4; i++) await task();
  expect(page.flight.outcome().fault).toBeDefined();
  page.doc.undoSoon();
  for (let i = 0; i < 4; i++) await task();
  expect([page.flight.outcome().fault, ...titleOf(page)]).toEqual([undefined, first.title, first.title]);
});
