// Nothing is exported that nobody takes, and nothing is kept for tests alone but what is named here with its reason.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { countNames, findUnused, readModule } from './arrows/exports.ts';
import { findSources } from './arrows/graph.ts';
import { findReads, findUnread, listTextKeys } from './arrows/text-keys.ts';

const root = path.resolve(import.meta.dirname, '..');
const resolve = (from: string, name: string): string =>
  path.posix.join(path.posix.dirname(from), name.replace(/\?.*$/, ''));
const scripts = ['src', 'tests'].flatMap((folder) =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.mjs'))
    .map((name) => `${folder}/${name}`),
);
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');
const modules = [...findSources(root, ['sim', 'src', 'presets', 'tests']), ...scripts, 'vite.config.ts'].map((file) =>
  readModule(file, read(file), resolve),
);
const shipped = modules.filter((m) => /^(sim|src)\/.*\.tsx?$/.test(m.path));

/** Taken by tests alone, and why each stays. */
const FOR_TESTS: Readonly<Record<string, string>> = {
  // the library, for those who compute with it from their own programs: a generator of steps, run to its end
  'sim/skill/compare-table.ts compareSkills': 'versions flown and compared in one call',
  'sim/skill/tilt-account.ts calcTiltAccount': 'the account of the tilt in one call',
  'sim/search/solve.ts solve': 'a target solved in one call',
  'sim/search/forgiving.ts findForgiving': 'the most forgiving answer in one call',
  'sim/search/twist-search.ts findTwist': 'the most twist in one call',
  'sim/body/strength.ts strengthCurve': 'the strength of one action of a body in one call',
  'sim/files/frames-csv.ts frameColumns': 'the columns of a CSV before one is written',
  'sim/recording/read-recording.ts readRecording': 'a recording read at once, without pauses',
  'sim/skill/chain-instant.ts makeChainReader': 'a chain read at any time, in its own frame',
  'sim/contact/rail.ts unevenApart':
    'how far apart along the floor the uneven rails are, from the diagonal of the norms',
  // what ready skills are held to
  'sim/measure/technique.ts techniqueUnit': 'the units of it',
  // the shipped schemas and commands have their callers in scripts
  'sim/files/json-schema.ts formatJsonSchema': 'written into docs by `npm run schema`',
  'src/cli/main.ts main': 'started from its bundle by shapeflight.mjs',
  // read whole where a test has to see all of it
  'sim/estimate/units.ts UNIT_NAMES': 'every unit is compared with those of mathjs',
};

test('every export of sim and src is taken by another file', () => expect(findUnused(shipped, modules)).toEqual([]));

test('what no shipped file uses, its own included, is on the list', () => {
  const withoutTests = modules.filter((m) => !m.path.startsWith('tests/'));
  const own = new Map(shipped.map((m) => [m.path, new Set(m.own)]));
  const found = findUnused(shipped, withoutTests).filter((key) => {
    const [file, name] = key.split(' ');
    return own.get(file)?.has(name) && countNames(read(file)).get(name) === 1;
  });
  expect(found.sort()).toEqual(Object.keys(FOR_TESTS).sort());
});

test('a name is counted where it is code, not in comments or texts', () => {
  const counts = countNames("export const lone = 1; // lone\n/** lone */ export const pair = 'lone'; pair;");
  expect([counts.get('lone'), counts.get('pair')]).toEqual([1, 2]);
});

test('an export that only its door passes on is found, and one that is taken through the door is not', () => {
  const [a, door, page] = [
    readModule('sim/a.ts', 'export const kept = 1; export const left = 2; export interface Lone {}', resolve),
    readModule('sim/index.ts', "export { kept, left } from './a.ts';", resolve),
    readModule('src/page.ts', "import { kept } from '../sim/index.ts'; kept;", resolve),
  ];
  expect(findUnused([a, door], [a, door, page])).toEqual(['sim/a.ts left', 'sim/a.ts Lone', 'sim/index.ts left']);
});

test('what is taken from a late room by a member counts as taken', () => {
  const room = readModule('sim/room.ts', 'export const swing = 1; export const idle = 2;', resolve);
  const user = readModule('src/a.ts', "const room = await import('../sim/room.ts'); room.swing;", resolve);
  expect(findUnused([room], [room, user])).toEqual(['sim/room.ts idle']);
});

test('one name for one thing: no two files export a type or class of the same name', () => {
  const declaredIn = new Map<string, string[]>();
  for (const file of shipped.map((m) => m.path))
    for (const [, name] of read(file).matchAll(/^export (?:abstract )?(?:interface|type|class) (\w+)/gm))
      declaredIn.set(name, [...(declaredIn.get(name) ?? []), file]);
  expect(declaredIn.size).toBeGreaterThan(500);
  expect([...declaredIn].filter(([, files]) => files.length > 1)).toEqual([]);
});

const wordFiles = (names: readonly string[]) => names.filter((name) => /(^|[/-])words\.ts$/.test(name));

test('every text is read somewhere', () => {
  const sources = findSources(root, ['sim', 'src']);
  const files = sources.map((file) => [file, readFileSync(path.join(root, file), 'utf8')] as const);
  const words = wordFiles(sources);
  expect(words.length).toBeGreaterThan(25);
  const reads = findReads(files);
  const keys = words.flatMap((file) => listTextKeys(file, files.find(([name]) => name === file)?.[1] ?? ''));
  expect(keys.length).toBeGreaterThan(1000);
  expect(findUnread(keys, reads)).toEqual([]);
});

test('a text that nothing reads is found; one asked for by a computed key is not', () => {
  const keys = listTextKeys(
    'src/words.ts',
    "export const texts = { shown: 'a', idle: () => 'b', ways: { by: 'c' }, of: { one: 'd', two: 'e' } as const };",
  );
  expect(keys).toEqual([
    'texts.shown',
    'texts.idle',
    'texts.ways',
    'texts.ways.by',
    'texts.of',
    'texts.of.one',
    'texts.of.two',
  ]);
  const reads = findReads([['src/a.ts', 'const t = texts; use(t.shown, t.of.one); const by = t.ways[way];']]);
  expect(findUnread(keys, reads)).toEqual(['texts.idle', 'texts.of.two']);
});
