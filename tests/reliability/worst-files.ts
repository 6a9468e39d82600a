// The worst of the damaged files, opened on the page itself. Made of one sound skill; a new one is a row.
import { readFileSync } from 'node:fs';

interface Skill {
  [field: string]: unknown;
  phases: {
    [field: string]: unknown;
    takeoff: { [field: string]: unknown };
    end: unknown;
    schedule: { [field: string]: unknown; blocks: { [field: string]: unknown }[] };
  }[];
}

const text = readFileSync(new URL('../../presets/skills/back-tuck.json', import.meta.url), 'utf8');
const skill = (change: (file: Skill) => unknown): string => {
  const file = JSON.parse(text) as Skill;
  change(file);
  return JSON.stringify(file);
};
const set = (at: object, key: string, value: unknown): object =>
  Object.defineProperty(at, key, { value, enumerable: true, configurable: true, writable: true });
/** With the number of the mass written as it is given. */
const withMass = (raw: string): string =>
  skill((file) => {
    file.athlete = { kind: 'human', name: 'A', sex: 'male', massKg: 12345.5, statureM: 1.7 };
  }).replace('12345.5', raw);
const tree = (...segments: object[]): string =>
  skill((file) => {
    file.athlete = { kind: 'tree', name: 'Doll', segments };
  });
const segment = (name: string, more: object = {}): object => ({
  name,
  massKg: 1,
  centreM: [0, 0, 0],
  inertiaKgM2: [1, 1, 1, 0, 0, 0],
  ...more,
});
const bytes = (...list: readonly number[]): Uint8Array => Uint8Array.from(list);

export interface WorstFile {
  readonly name: string;
  readonly file: string;
  readonly bytes: () => Uint8Array;
}
const row = (name: string, content: string | Uint8Array | (() => string), file = 'bad.json'): WorstFile => ({
  name,
  file,
  bytes: () =>
    content instanceof Uint8Array
      ? content
      : new TextEncoder().encode(typeof content === 'string' ? content : content()),
});

const SCRIPT = '<img src="https://x.invalid/a.png" onerror="window.hit=1"><script>window.hit=1</script>';

/** Refused in a sentence. */
export const WORST_FILES: readonly WorstFile[] = [
  row('nothing', ''),
  row('spaces alone', ' \n\t\r\n '),
  row('zeros alone', new Uint8Array(4000)),
  row(
    'noise',
    Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919 + (i >> 3)) & 255),
  ),
  row('a picture', bytes(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0)),
  row('a packed file', bytes(0x50, 0x4b, 3, 4, 20, 0, 0, 0), 'skills.zip'),
  row('a page with a script', `<!doctype html><title>a</title>${SCRIPT}`, 'a.html'),
  row(
    'a drawing with a script',
    `<svg xmlns="http://www.w3.org/2000/svg" onload="window.hit=1">${SCRIPT}</svg>`,
    'a.svg',
  ),
  row('UTF-16', new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'))),
  row('Latin letters', new Uint8Array(Buffer.from(text.replace(/"title": "/, '"title": "Rückwärts '), 'latin1'))),
  row('cut off', text.slice(0, text.length / 2)),
  row('twice', `${text}${text}`),
  row('a comma too many', text.replace(/\}\s*$/, ',}')),
  row('a comment', `// made by hand\n${text}`),
  row('single quotes', text.replace(/"/g, "'")),
  row('no number', withMass('NaN')),
  row('a number beyond all bounds', withMass('1e400')),
  row('a number as text', withMass('"60 kg"')),
  row('a mass below nothing', withMass('-60')),
  row('nothing as JSON', 'null'),
  row('a list', '[1, 2, 3]'),
  row('a word', '"back tuck"'),
  row('nested a hundred thousand deep', () => '['.repeat(100_000)),
  row('nested deep inside', () =>
    skill((file) => set(file, 'note', 'DEEP')).replace('"DEEP"', `${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`),
  ),
  row(
    'a field __proto__',
    skill((file) => set(file, '__proto__', { polluted: true })),
  ),
  row(
    'a field constructor',
    skill((file) => set(file, 'constructor', { prototype: { polluted: true } })),
  ),
  row(
    'a field toString inside',
    skill(({ phases: [{ takeoff }] }) => set(takeoff, 'toString', 'a')),
  ),
  row(
    'a field that turns letters round',
    skill((file) => set(file, '\u202egnirts', 1)),
  ),
  row(
    'a field of markup',
    skill((file) => set(file, SCRIPT, 1)),
  ),
  row('a field twice', text.replace('"title"', '"title": "a", "title"')),
  row(
    'a title of markup that is too long',
    skill((file) => set(file, 'title', SCRIPT.repeat(40))),
  ),
  row('five million letters', () => skill((file) => set(file, 'title', 'x'.repeat(5e6)))),
  row(
    'a version to come',
    skill((file) => set(file, 'version', 99)),
  ),
  row(
    'a version as text',
    skill((file) => set(file, 'version', '2')),
  ),
  row(
    'another format',
    skill((file) => set(file, 'format', SCRIPT)),
  ),
  row('a map of a recording', '{"format":"shapeflight-recording-map","version":1}'),
  row('ten thousand keys and one', () =>
    skill(({ phases: [{ schedule }] }) => {
      schedule.keys = Array.from({ length: 10_001 }, (_, k) => ({
        angle: 'hipFlexion',
        at: { anchor: 'takeoff', s: k / 10_001 },
        deg: 0,
      }));
    }),
  ),
  row(
    'shapes in another order',
    skill(({ phases: [{ schedule }] }) => schedule.blocks.reverse()),
  ),
  row(
    'a shape that there is not',
    skill(({ phases: [{ schedule }] }) => set(schedule.blocks[0], 'shape', '__proto__')),
  ),
  row(
    'an athlete that there is not',
    skill((file) => set(file, 'athlete', { ref: '__proto__' })),
  ),
  row(
    'an athlete elsewhere on the disk',
    skill((file) => set(file, 'athlete', { ref: '../../../etc/passwd.json' })),
  ),
  row(
    'no phase',
    skill((file) => set(file, 'phases', [])),
  ),
  row(
    'twenty phases',
    skill((file) =>
      set(
        file,
        'phases',
        Array.from({ length: 20 }, () => file.phases[0]),
      ),
    ),
  ),
  row(
    'a phase of another kind',
    skill(({ phases: [flight] }) => set(flight, 'kind', 'constructor')),
  ),
  row(
    'no gravity, and never down',
    skill((file) => set(file, 'gravityMPerS2', 0)),
  ),
  row('a segment that is its own parent', tree(segment('a'), segment('b', { parent: 'b' }))),
  row('a body without extent', tree(segment('a', { inertiaKgM2: [0, 0, 0, 0, 0, 0] }))),
  row('two segments of one name', tree(segment('a'), segment('a', { parent: 'a' }))),
];

/** Opened, as words are in it and nothing else: what a script would do does not come about. */
export const WORDS_ALONE: readonly WorstFile[] = [
  row(
    'a title of markup',
    skill((file) => set(file, 'title', SCRIPT)),
  ),
  row(
    'a title that would end a page',
    skill((file) => set(file, 'title', '</title></svg><script>window.hit=1</script>')),
  ),
  row(
    'a title that turns letters round',
    skill((file) => set(file, 'title', 'Back \u202ekcut\u202c \u2066somersault')),
  ),
  row(
    'a title of half a letter',
    skill((file) => set(file, 'title', 'Back \ud800 tuck')),
  ),
  row(
    'a remark of markup',
    skill((file) => set(file, 'note', SCRIPT)),
  ),
  row(
    'an athlete of markup',
    skill((file) =>
      set(file, 'athlete', { kind: 'human', name: SCRIPT.slice(0, 80), sex: 'female', massKg: 50, statureM: 1.6 }),
    ),
  ),
];

/** In `npm test`: half of them by file, half by drop. */
export const WORST_SAMPLE = 12;
