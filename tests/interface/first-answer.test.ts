// What is awaited under the headline keeps its room and hides what can be pressed beside it: never for an answer that will not come.
import { createRoot } from 'solid-js';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { FieldError } from '../../sim/math/field-error.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import type { Comparing } from '../../src/engine/compare.ts';
import type { Engine } from '../../src/engine/engine.ts';
import { useFirstQuestion } from '../../src/features/compare/first-question.ts';
import { readyEngine } from './ready-engine.ts';

const first = skills['arms-in-spin'] as SkillFile;
const other = skills['back-tuck'] as SkillFile;
const BROKEN = 'Broken';
let engine: Engine;
let dispose = (): void => {};

vi.mock('../../src/app/page.ts', async (original) => {
  const real = await original<typeof import('../../src/app/page.ts')>();
  // for a page without components: who asks for a kept state has the page itself
  return { ...real, keptState: (make: unknown) => make };
});
beforeAll(async () => {
  engine = await readyEngine();
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('matchMedia', () => ({ matches: false }));
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterAll(() => vi.unstubAllGlobals());
afterEach(() => dispose());

function openPage(comparing: () => Promise<Comparing>): Page {
  const fly: Engine['fly'] = (file, from) => {
    if (file.title === BROKEN) throw new FieldError('title', BROKEN, 'a skill that can be flown');
    return engine.fly(file, from);
  };
  const keeper: Services['keeper'] = {
    kept: undefined,
    write: async () => true,
    leave: () => {},
    check: async () => {},
    watch: () => {},
  };
  const services = {
    flying: { ...engine, fly },
    presets: { first, standIn: first, shapes, skills: [], athletes: [] },
    keeper,
    load: { comparing },
    tools: [],
  } as unknown as Services;
  return createRoot((end) => {
    dispose = end;
    const page = createPage(services);
    (useFirstQuestion as unknown as (page: Page) => ReturnType<typeof useFirstQuestion>)(page).load();
    return page;
  });
}
const isAwaited = ({ shell }: Page): boolean => shell.answer.isAwaited();

test('where what answers cannot be loaded nothing is awaited, of this skill nor of the next', async () => {
  const page = openPage(() => Promise.reject(new Error('no network')));
  expect(isAwaited(page)).toBe(true);
  await Promise.resolve();
  await Promise.resolve();
  expect(isAwaited(page)).toBe(false);
  page.doc.open(other, 'Open');
  expect(page.flight.id()).toBe(page.doc.id());
  expect(isAwaited(page)).toBe(false);
});

test('of a skill that cannot be flown nothing is awaited; of one that can it is', () => {
  const page = openPage(() => new Promise(() => {}));
  page.doc.open({ ...other, title: BROKEN }, 'Open');
  expect(page.flight.outcome().fault).toBeDefined();
  expect(isAwaited(page)).toBe(false);
  page.doc.open(other, 'Open');
  expect(page.flight.outcome().fault).toBeUndefined();
  expect(isAwaited(page)).toBe(true);
});
