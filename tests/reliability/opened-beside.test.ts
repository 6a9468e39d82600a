// What costs much is opened when it has been read and flown beside the page; a start that did not come to its end is not begun with again.
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { makeStartMark } from '../../src/app/start-mark.ts';
import { makeHistory, open as openIn } from '../../src/document/history.ts';
import { JobTimeoutError } from '../../src/jobs/pool.ts';
import { endPages, heavy, light, made, pageOf, tasks } from './far-side.ts';
import { keysOf, NECK, withSchedule } from './heavy-parts.ts';

beforeAll(() => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterEach(endPages);
afterAll(() => vi.unstubAllGlobals());

describe('a heavy file is opened', () => {
  // as long as what is read beside the page, and soon flown
  const text = JSON.stringify(
    withSchedule(light, 'Dense', ({ base }) => ({ ...(base ? { base } : {}), keys: keysOf(NECK, 2000, 0.8) })),
  );

  test('when it has been read and flown: what is open stays until then and can be worked on', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text);
    expect(page.doc.opening.now()?.name).toBe('dense.json');
    await tasks(8);
    expect(page.doc.file().title).toBe(light.title);
    expect(page.flight.outcome().isWaiting).toBeUndefined();
    page.doc.edit({ ...page.doc.file(), title: 'Worked on meanwhile' }, 'x');
    expect(page.flight.result().file.title).toBe('Worked on meanwhile');
    expect(asked.length).toBe(1);
    await asked[0].answer();
    expect(page.doc.opening.now()).toBeUndefined();
    expect(page.doc.file().title).toBe('Dense');
    expect(page.flight.result().file).toBe(page.doc.file());
    expect(page.flight.lanes().reduce((n, { keys }) => n + keys.length, 0)).toBeGreaterThan(1900);
    page.doc.undo();
    expect(page.doc.file().title).toBe('Worked on meanwhile');
  });

  test('a cancel leaves everything as it was, and nothing comes after it', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    const before = page.doc.history();
    page.doc.readText('dense.json', text);
    await tasks(8);
    expect(page.doc.opening.cancel()).toBe(true);
    await tasks();
    expect(asked[0].isCancelled).toBe(true);
    expect(page.doc.opening.now()).toBeUndefined();
    expect(page.doc.fileFault()).toBeUndefined();
    expect(page.doc.history()).toEqual(before);
    // again, to its end
    page.flight.retry();
    page.doc.readText('dense.json', text);
    await tasks(8);
    await asked[1].answer();
    expect(page.doc.file().title).toBe('Dense');
  });

  test('at the limit it is refused in one line, and nothing was changed', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text);
    await tasks(8);
    await asked[0].fail(new JobTimeoutError('x'));
    expect(page.doc.fileFault()?.reason).toMatch(/took too long.*fewer keys or samples/);
    expect(page.doc.file()).toBe(page.flight.result().file);
    expect(page.doc.undoTitle()).toBeUndefined();
  });

  test('another that is opened meanwhile is the one that comes', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text);
    await tasks(8);
    page.doc.readText('light.json', JSON.stringify(skills['back-tuck']));
    expect(page.doc.opening.now()).toBeUndefined();
    await tasks();
    expect(asked[0].isCancelled).toBe(true);
    expect(page.doc.file().title).toBe((skills['back-tuck'] as SkillFile).title);
  });

  test('a long text with a fault names field and what is allowed, as a short one', async () => {
    const { engine } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text.replace('"deg":', '"deg":9999,"degree":'));
    await tasks(8);
    expect(page.doc.fileFault()?.reason).toMatch(/Key 1/);
    page.doc.readText('dense.json', text.slice(0, -200));
    await tasks(8);
    expect(page.doc.fileFault()?.name).toBe('dense.json');
    expect(page.doc.opening.now()).toBeUndefined();
  });

  test('an entry of the shelf that was cancelled is flown when it is opened again', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    const entry = { id: 'a', kind: 'skill', revision: 1, value: heavy('A') } as never;
    page.doc.openEntry(entry);
    await tasks();
    page.doc.opening.cancel();
    page.doc.openEntry(entry);
    await tasks();
    expect(page.doc.opening.now()?.name).toBe('A');
    page.doc.opening.cancel();
    await tasks();
    page.doc.openEntry(entry);
    await tasks();
    await asked.at(-1)?.answer();
    expect(page.doc.file().title).toBe('A');
    expect(page.flight.outcome().fault).toBeUndefined();
  });

  test('a document that was cancelled is flown when the same is opened again', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    const doc = heavy('A');
    for (let i = 0; i < 2; i++) {
      page.doc.openSoon(doc, 'Open A');
      await tasks();
      expect(page.doc.opening.now()?.name).toBe('A');
      page.doc.opening.cancel();
      await tasks();
      expect(page.doc.opening.now()).toBeUndefined();
    }
    page.doc.openSoon(doc, 'Open A');
    await tasks();
    await asked.at(-1)?.answer();
    expect(page.doc.file().title).toBe('A');
    expect(page.flight.outcome().fault).toBeUndefined();
  });

  test('an edit of it is flown beside the page; a cancel says so, with ways on', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.openSoon(heavy('A'), 'Open A');
    await tasks();
    await asked[0].answer();
    expect(page.doc.file().title).toBe('A');
    page.doc.edit(heavy('B'), 'Edit');
    expect(page.flight.outcome()).toMatchObject({ isWaiting: true, isBeside: true });
    expect(page.flight.result().file.title).toBe('A');
    page.flight.cancel();
    await tasks();
    expect(page.flight.outcome().fault).toMatchObject({ canRetry: true });
    page.flight.retry();
    await asked[2].answer();
    expect(page.flight.result().file.title).toBe('B');
  });
});

describe('one that waits for the flight before it', () => {
  test('is cancelled at once, and not begun with when that has come', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.edit(heavy('A'), 'Edit');
    page.doc.edit(heavy('B'), 'Edit');
    expect(page.flight.outcome()).toMatchObject({ isWaiting: true, isBeside: true });
    page.flight.cancel();
    expect(page.flight.outcome().fault).toMatchObject({ canRetry: true });
    await asked[0].answer();
    expect(asked.length).toBe(1);
    expect(page.flight.outcome().fault).toMatchObject({ canRetry: true });
    page.flight.retry();
    await asked[1].answer();
    expect(page.flight.result().file.title).toBe('B');
  });
});

describe('the next start', () => {
  const makeMark = (value: { now: string | null }) =>
    makeStartMark({
      read: () => value.now,
      write: (v) => {
        value.now = v;
      },
    });
  const kept = (doc: SkillFile) => ({ history: openIn(makeHistory(light), doc, 'Open'), cursorS: 0 }) as never;

  test('a kept heavy document is shown by the stand-in until it has been flown, and marked until then', async () => {
    const { engine, asked } = made();
    const value: { now: string | null } = { now: null };
    const page = pageOf(engine, { startMark: makeMark(value) }, kept(heavy('A')));
    expect(page.flight.outcome()).toMatchObject({ isWaiting: true, isBeside: true });
    expect(page.flight.result().file.title).toBe((skills['arms-in-spin'] as SkillFile).title);
    expect(page.doc.file().title).toBe('A');
    expect(value.now).toContain('A');
    await asked[0].answer();
    expect(page.flight.result().file.title).toBe('A');
    expect(value.now).toBe('');
  });

  test('one whose flight did not come to its end is not begun with again: the one before is open, the other offered and kept', async () => {
    const { engine, asked } = made();
    const value: { now: string | null } = { now: null };
    const a = heavy('A');
    pageOf(engine, { startMark: makeMark(value) }, kept(a));
    // the page went away in the middle
    const page = pageOf(engine, { startMark: makeMark(value) }, kept(a));
    expect(page.doc.file().title).toBe(light.title);
    expect(page.flight.outcome().isWaiting).toBeUndefined();
    const notice = page.shell.notice();
    expect(notice?.text).toMatch(/^A was not opened: last time the page closed before its flight was computed/);
    expect(notice?.action?.title).toBe('Open it');
    expect(notice?.dismiss).toBe('Leave it');
    expect(value.now).toBe('');
    // nothing of it is removed
    page.doc.undo();
    expect(page.doc.file()).toEqual(a);
    page.doc.redo();
    notice?.action?.run();
    await tasks();
    await asked.at(-1)?.answer();
    expect(page.doc.file().title).toBe('A');
  });

  test('one that is read late is not begun with again either', async () => {
    const { engine } = made();
    const value: { now: string | null } = { now: null };
    const a = heavy('A');
    pageOf(engine, { startMark: makeMark(value) }, kept(a));
    const mark = makeMark(value);
    // the flight that is shown until it comes takes the mark away
    mark.clear();
    expect(mark.wasCutShort(a)).toBe(true);
    expect(makeMark(value).wasCutShort(a)).toBe(false);
  });

  test('a page that goes away in good order, and another document, are begun with', () => {
    const { engine } = made();
    const value: { now: string | null } = { now: null };
    const page = pageOf(engine, { startMark: makeMark(value) }, kept(heavy('A')));
    page.keeping.leave();
    expect(value.now).toBe('');
    pageOf(engine, { startMark: makeMark(value) }, kept(heavy('A')));
    expect(pageOf(engine, { startMark: makeMark(value) }, kept(heavy('B'))).doc.file().title).toBe('B');
  });
});
