// Several files at once: what can be read goes to its place one after the other, the first that was named is open at the end, and one notice names what was refused.
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { athletes } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { readDropped } from '../../src/app/dropped-files.ts';
import type { Page } from '../../src/app/page.ts';
import { filing } from '../../src/engine/read-files.ts';
import { endPages, heavy, light, made, pageOf, tasks } from './far-side.ts';

beforeAll(() => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterEach(endPages);
afterAll(() => vi.unstubAllGlobals());

const fileOf = (name: string, content: unknown): File =>
  new File([typeof content === 'string' ? content : JSON.stringify(content)], name);
const own = {
  format: 'shapeflight-athlete',
  version: 1,
  athlete: { ...(Object.values(athletes)[0] as object), name: 'Bo Lind' },
};
const titled = (title: string): SkillFile => ({ ...light, title });

function open(): { page: Page; asked: ReturnType<typeof made>['asked']; drop(...files: File[]): Promise<void> } {
  const { engine, asked } = made();
  const page = pageOf(engine, { load: { filing: async () => filing } as never });
  return { page, asked, drop: (...files) => readDropped(page, files) };
}
/** What undo comes by, from what is open backwards. */
function titlesBack({ doc }: Page): string[] {
  const titles = [doc.file().title];
  while (doc.undoTitle() !== undefined) {
    doc.undo();
    titles.push(doc.file().title);
  }
  return titles;
}

test('light ones: the first is open, undo leads to the others, and it is said', async () => {
  const { page, drop } = open();
  await drop(...['A', 'B', 'C'].map((title) => fileOf(`${title}.json`, titled(title))));
  expect(page.doc.fileFault()).toBeUndefined();
  expect(page.shell.notice()?.text).toBe('3 skills were opened. A is shown; undo leads to the others.');
  expect(titlesBack(page)).toEqual(['A', 'B', 'C', light.title]);
});

test('heavy ones and a light one: each comes, none cancels another', async () => {
  const { page, asked, drop } = open();
  const done = drop(fileOf('A.json', heavy('A')), fileOf('B.json', titled('B')), fileOf('C.json', heavy('C')));
  await vi.waitFor(() => expect(asked.length).toBe(1));
  await asked[0].answer();
  await vi.waitFor(() => expect(asked.length).toBe(2));
  await asked[1].answer();
  await done;
  expect(asked.map(({ isCancelled }) => isCancelled)).toEqual([false, false]);
  expect(titlesBack(page)).toEqual(['A', 'B', 'C', light.title]);
});

test('a cancel, and another skill that is opened meanwhile, end it: what was not opened is named', async () => {
  for (const act of [
    (page: Page) => page.doc.opening.cancel(),
    (page: Page) => page.doc.readText('x.json', JSON.stringify(titled('X'))),
  ]) {
    const { page, asked, drop } = open();
    const done = drop(fileOf('A.json', titled('A')), fileOf('B.json', heavy('B')), fileOf('C.json', titled('C')));
    await vi.waitFor(() => expect(asked.length).toBe(1));
    act(page);
    await done;
    expect(page.doc.fileFault()).toMatchObject({
      said: '2 of 3 files were not opened.',
      reason: '\nA.json: it was cancelled.\nB.json: it was cancelled.\n',
      kept: 'The rest was opened.',
    });
    endPages();
  }
});

test('a second drop ends the first, which says what it had not opened', async () => {
  const { page, asked, drop } = open();
  const first = drop(fileOf('A.json', titled('A')), fileOf('B.json', heavy('B')));
  await vi.waitFor(() => expect(asked.length).toBe(1));
  const second = drop(fileOf('C.json', titled('C')));
  await Promise.all([first, second]);
  expect(page.doc.file().title).toBe('C');
  expect(page.doc.fileFault()?.reason).toMatch(/A\.json: .*\nB\.json: /);
});

test('every refusal is named with its reason, in the order of the files; a long list is cut', async () => {
  const { page, drop } = open();
  const bad = Array.from({ length: 17 }, (_, i) => fileOf(`bad${i + 1}.json`, i === 1 ? '' : `{"format":"x${i}"}`));
  await drop(fileOf('good.json', titled('Good')), ...bad);
  expect(page.doc.file().title).toBe('Good');
  const fault = page.doc.fileFault();
  expect(fault).toMatchObject({ said: '17 of 18 files were not opened.', kept: 'The rest was opened.' });
  const lines = fault?.reason.trim().split('\n') ?? [];
  expect(lines).toHaveLength(6);
  expect(lines[0]).toMatch(/^bad1\.json: .*“x0”/);
  expect(lines[1]).toMatch(/^bad2\.json: The file is empty\./);
  expect(lines.at(-1)).toBe('and 12 more.');
});

test('one refused of several is said as one alone, and not that nothing was changed', async () => {
  const { page, drop } = open();
  await drop(fileOf('bad.json', '{'), fileOf('good.json', titled('Good')));
  expect(page.doc.file().title).toBe('Good');
  expect(page.doc.fileFault()).toMatchObject({ name: 'bad.json', kept: 'The rest was opened.' });
  expect(page.doc.fileFault()?.reason).not.toMatch(/\n/);
});

test('what is said of one that was refused goes when another is opened', async () => {
  const { page, drop } = open();
  await drop(fileOf('bad.json', '{'));
  expect(page.doc.fileFault()?.name).toBe('bad.json');
  await drop(fileOf('good.json', titled('Good')));
  expect([page.doc.file().title, page.doc.fileFault()]).toEqual(['Good', undefined]);
});

test('a refusal alone is said as ever', async () => {
  const { page, drop } = open();
  await drop(fileOf('bad.json', '{'));
  expect(page.doc.fileFault()).toEqual({ name: 'bad.json', reason: expect.stringMatching(/not valid JSON/) });
});

test('one too many is named too', async () => {
  const { page, drop } = open();
  await drop(...Array.from({ length: 31 }, (_, i) => fileOf(`${i + 1}.json`, i < 29 ? '' : titled('Last'))));
  expect(page.doc.file().title).toBe('Last');
  expect(page.doc.fileFault()?.said).toBe('30 of 31 files were not opened.');
});

test('an athlete that a long skill names goes into it and not onto the shelf as well', async () => {
  const { page, asked, drop } = open();
  const long = { ...heavy('Long'), athlete: { ref: 'sub/bo "1".json' } };
  const text = `${JSON.stringify(long)}${' '.repeat(150_000)}`;
  const done = drop(fileOf('bo "1".json', own), fileOf('long.json', text));
  await vi.waitFor(() => expect(asked.length).toBe(1));
  await asked[0].answer();
  await done;
  await tasks();
  expect(page.doc.fileFault()).toBeUndefined();
  expect(page.doc.file().title).toBe('Long');
  expect(page.doc.athlete().name).toBe('Bo Lind');
  expect(page.doc.athleteRead()).toBeUndefined();
});

test('a long file of an athlete is an athlete', async () => {
  const { page, drop } = open();
  await drop(fileOf('bo.json', `${JSON.stringify(own)}${' '.repeat(150_000)}`));
  expect(page.doc.fileFault()).toBeUndefined();
  expect(page.doc.athleteRead()?.name).toBe('Bo Lind');
  expect(page.doc.undoTitle()).toBeUndefined();
});

test('skills that need no other file are not held back by one that is refused', async () => {
  const { page, drop } = open();
  await drop(fileOf('A.json', { ...light, title: 'A', athlete: { ref: 'gone.json' } }), fileOf('B.json', titled('B')));
  expect(page.doc.file().title).toBe('B');
  expect(page.doc.fileFault()?.name).toBe('A.json');
});
