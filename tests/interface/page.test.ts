// The page's document, flight and cursor, wired as the page wires them; without anything that draws.
import { batch, createRoot } from 'solid-js';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import { createStageProviders } from '../../src/app/stage-extras.ts';
import { getFields } from '../../src/document/fields.ts';
import { getId, makeHistory, open } from '../../src/document/history.ts';
import type { KeptSession } from '../../src/document/keep-record.ts';
import type { Engine } from '../../src/engine/engine.ts';
import { useLanes } from '../../src/features/joints/lane-list.ts';
import type { StageExtras } from '../../src/pictures/stage-input.ts';
import { readyEngine } from './ready-engine.ts';

const first = skills['back-straight-full'];
const second = skills['back-tuck'] ?? Object.values(skills).find((file) => file !== first);
let engine: Engine;
let dispose = (): void => {};
const flown = vi.fn<Engine['fly']>();
const written = vi.fn();

beforeAll(async () => {
  engine = await readyEngine();
  // the colours of the page are set on its root element
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterAll(() => vi.unstubAllGlobals());
beforeEach(() => {
  dispose();
  flown.mockReset().mockImplementation(engine.fly);
  written.mockReset();
});

function makePage(kept?: KeptSession): Page {
  const keeper: Services['keeper'] = {
    kept,
    write: async (session) => {
      written(session);
      return true;
    },
    leave: () => {},
    check: async () => {},
    watch: () => {},
  };
  const services = {
    flying: { ...engine, fly: flown },
    presets: { first, standIn: first, shapes, skills: [], athletes: [] },
    keeper,
    tools: [],
  } as unknown as Services;
  return createRoot((end) => {
    dispose = end;
    return createPage(services);
  });
}

function withValue(file: SkillFile, id: string, value: number): SkillFile {
  const field = getFields(file, engine.findAthlete(file)).find((one) => one.id === id);
  if (!field) throw new Error(`no field ${id}`);
  return field.write(file, value);
}
/** with another speed upward at take-off, m/s */
const withUp = (file: SkillFile, up: number): SkillFile => withValue(file, 'up', up);
/** Without gravity nothing lands. */
const unflyable = (file: SkillFile): SkillFile => withValue(file, 'gravity', 0);
const keptOf = (history: KeptSession['history'], cursorS: number): KeptSession =>
  ({ history, cursorS, savedAt: 1 }) as unknown as KeptSession;

describe('document', () => {
  test.each([
    ['that is no JSON', () => '{'],
    ['that is no skill', () => '{"format":"shapeflight-skill","title":1}'],
    ['that cannot be flown', () => JSON.stringify(unflyable(first))],
  ])('a file %s is refused and loses nothing', (_, text) => {
    const page = makePage();
    page.doc.edit(withUp(first, 4.5), 'slower');
    const { doc, flight } = page;
    const before = { history: doc.history(), result: flight.result(), at: page.cursor.at() };
    doc.readText('bad.json', text());
    expect(doc.fileFault()?.name).toBe('bad.json');
    expect(doc.history()).toBe(before.history);
    expect(flight.result()).toBe(before.result);
    expect(flight.outcome().fault).toBeUndefined();
    expect(page.cursor.at()).toBe(before.at);
  });

  test('a drag is one step, kept when it ends, and Escape goes back to where it began', () => {
    const { doc } = makePage();
    for (const up of [4.9, 4.8, 4.7]) doc.draft(withUp(doc.begin(), up));
    expect(doc.history().done).toHaveLength(0);
    expect(written).not.toHaveBeenCalled();
    doc.settle('slower');
    expect(doc.history().done.map((step) => step.title)).toEqual(['slower']);
    expect(written).toHaveBeenCalledTimes(1);
    doc.draft(withUp(doc.begin(), 4.2));
    expect(doc.abandon()).toBe(true);
    expect(doc.file()).toEqual(withUp(first, 4.7));
    doc.undo();
    expect(doc.file()).toEqual(first);
  });

  test('opening gives a number that no other document has; undo and redo of it give each its own back', () => {
    const { doc } = makePage();
    const a = doc.id();
    doc.open(structuredClone(second), 'b');
    const b = doc.id();
    doc.undo();
    expect(doc.id()).toBe(a);
    doc.redo();
    expect(doc.id()).toBe(b);
    doc.undo();
    doc.edit(withUp(first, 4.8), 'an edit ends what could be redone');
    expect(doc.id()).toBe(a);
    doc.open(structuredClone(second), 'c');
    expect(new Set([a, b, doc.id()]).size).toBe(3);
  });

  test('the numbers go on after a reload', () => {
    const history = open(makeHistory(first), structuredClone(second), 'b');
    const { doc } = makePage(keptOf(history, 0));
    expect(doc.id()).toBe(getId(history));
    doc.open(structuredClone(first), 'c');
    expect(doc.id()).toBeGreaterThan(getId(history));
  });
});

describe('flight', () => {
  test('the first document is flown exactly once, fresh or kept', () => {
    makePage().flight.result();
    expect(flown).toHaveBeenCalledTimes(1);
    dispose();
    flown.mockClear();
    makePage(keptOf(makeHistory(second), 0.3)).flight.result();
    expect(flown).toHaveBeenCalledTimes(1);
  });

  test('a file that is opened is flown exactly once', () => {
    const page = makePage();
    flown.mockClear();
    page.doc.readText('b.json', JSON.stringify(second));
    expect(page.flight.result().file.title).toBe(second.title);
    expect(flown).toHaveBeenCalledTimes(1);
  });

  test('what is called unflyable here is', () => {
    for (const file of [first, second]) expect(() => engine.fly(unflyable(file))).toThrow();
  });

  test('a fault keeps the last valid flight with its document, and ends with the next that flies', () => {
    const { doc, flight } = makePage();
    const valid = flight.result();
    doc.edit(unflyable(first), 'too low');
    expect(flight.result()).toBe(valid);
    expect(flight.outcome().fault?.message).toBeTruthy();
    doc.open(unflyable(second), 'b');
    expect(flight.result()).toBe(valid);
    expect(flight.id()).not.toBe(doc.id());
    doc.undo();
    doc.undo();
    expect(flight.outcome().fault).toBeUndefined();
    expect(flight.id()).toBe(doc.id());
  });

  test('a kept document that no longer flies opens the first skill, says so, and undo reaches the past', () => {
    const lost = unflyable(second);
    const { doc, flight } = makePage(keptOf(makeHistory(lost), 0));
    expect(flight.result().file).toEqual(first);
    expect(doc.fileFault()?.name).toBe(second.title);
    doc.undo();
    expect(doc.file()).toEqual(lost);
  });

  test('while a hand drags the flight before is announced, also when all comes in one batch', () => {
    const { doc, flight } = makePage();
    const { outline } = flight.result();
    batch(() => doc.draft(withUp(doc.begin(), 4)));
    expect(flight.before()).toBe(outline);
    expect(flight.result().draft).toBe(true);
    doc.settle('slower');
    expect(flight.before()).toBeUndefined();
    expect(flight.result().draft).toBe(false);
  });
});

describe('cursor', () => {
  test('stays in the flight, also when that gets shorter', () => {
    const { cursor, doc, flight } = makePage();
    const end = (): number => flight.result().flight.duration;
    cursor.set(99);
    expect(cursor.at()).toBe(end());
    const before = end();
    doc.edit(withUp(first, 4), 'slower');
    expect(end()).toBeLessThan(before);
    expect(cursor.at()).toBe(end());
    cursor.set(-1);
    expect(cursor.at()).toBe(0);
    dispose();
    expect(makePage(keptOf(makeHistory(first), 99)).cursor.at()).toBe(before);
  });

  test('goes to events and from shape to shape', () => {
    const { cursor, flight } = makePage();
    cursor.goTo('apex');
    expect(cursor.at()).toBe(flight.anchors().apex);
    cursor.goTo('takeoff');
    const starts = flight.spans().map((span) => Math.max(span.from, 0));
    const later = starts.filter((s) => s > 0);
    for (const s of later) {
      cursor.goToShape(1);
      expect(cursor.at()).toBe(s);
    }
    cursor.goToShape(1);
    expect(cursor.at()).toBe(flight.anchors().touchdown);
    cursor.goToShape(-1);
    expect(cursor.at()).toBe(later.at(-1));
  });
});

describe('what belongs to a document', () => {
  test('the answer under the headline: the last said, gone with the document, and cleared by who said it alone', () => {
    const { doc, shell } = makePage();
    const answer = { lead: 'Less height:', rest: '25° short.', from: 'change' } as const;
    shell.answer.say({ lead: 'Arms in:', rest: 'twists 3.0 times as fast.', from: 'comparison' });
    shell.answer.say(answer);
    expect(shell.answer.said()).toBe(answer);
    doc.edit(withUp(first, 4.8), 'slower');
    expect(shell.answer.said()).toBe(answer);
    shell.answer.clear('comparison');
    expect(shell.answer.said()).toBe(answer);
    doc.open(structuredClone(second), 'b');
    expect(shell.answer.said()).toBeUndefined();
    doc.undo();
    expect(shell.answer.said()).toBeUndefined();
    shell.answer.say(answer);
    shell.answer.clear('change');
    expect(shell.answer.said()).toBeUndefined();
  });

  test('two skills of one title do not share the lanes that are shown', () => {
    const page = makePage();
    const twin = { ...structuredClone(second), title: first.title };
    const lanes = createRoot(() => useLanes(page, 4));
    page.doc.open(twin, 'b');
    const shown = lanes.shown().map((lane) => lane.id);
    const fresh = createRoot(() => useLanes(page, 4));
    expect(shown).toEqual(fresh.shown().map((lane) => lane.id));
  });
});

describe('what tools add to the stage', () => {
  const body = (size: number): StageExtras => ({ plainBodies: [{ kind: 'rod', about: 'long', size }] });

  test('the last that provides a field has it, and what it covered comes back when it goes', () => {
    createRoot((end) => {
      const stage = createStageProviders();
      createRoot(() => stage.provide(() => body(1)));
      const last = createRoot((stop) => {
        stage.provide(() => body(2));
        return stop;
      });
      expect(stage.extras()).toEqual(body(2));
      last();
      expect(stage.extras()).toEqual(body(1));
      end();
    });
  });
});

test('a kept skill that no longer flies is said in the words of the page, and undo reaches it', () => {
  const doc = { ...second, title: 'W'.repeat(5000) };
  const page = makePage({ version: 2, savedAt: 1, cursorS: 0, history: makeHistory(doc) });
  const { name, reason } = page.doc.fileFault() ?? { name: '', reason: '' };
  expect([name, reason]).toEqual([`${'W'.repeat(60)}…`, expect.stringMatching(/^The title [^;]*\.$/)]);
  page.doc.undo();
  expect(page.doc.file()).toEqual(doc);
});
