// What damage has found, kept as it was cut down: each is run every time. A find of `npm run fuzz` becomes a row.
import { skills } from '../../../presets/index.ts';
import { utf8 } from './damage-text.ts';
import type { Input } from './kind.ts';

const sound = skills['back-tuck'];
const plain = JSON.stringify(sound);
const athlete = (more: object): object => ({
  kind: 'human',
  name: 'A',
  sex: 'female',
  massKg: 60,
  statureM: 1.6,
  ...more,
});
const session = (version: number, doc: unknown, done: unknown = []): object => ({
  version,
  savedAt: 1,
  cursorS: 0,
  history: { doc, done, undone: [] },
});

export interface Found {
  readonly kind: string;
  readonly what: string;
  readonly content: string | object;
}

export const FOUND: readonly Found[] = [
  { kind: 'skills', what: 'a field of every object', content: plain.replace('{', '{"__proto__":1,') },
  {
    kind: 'athletes',
    what: 'a field of every object, deeper',
    content: JSON.stringify(athlete({})).replace('{', '{"constructor":{"a":1},'),
  },
  { kind: 'skills', what: 'a version beyond all bounds', content: plain.replace('"version":2', '"version":1e400') },
  {
    kind: 'athletes',
    what: 'a mass beyond all bounds',
    content: JSON.stringify(athlete({})).replace(':60', ':-1e400'),
  },
  { kind: 'skills', what: 'a field that turns letters round', content: { ...sound, '\u202ea': 1 } },
  { kind: 'skills', what: 'a field with dots, quotes and brackets', content: { ...sound, 'a.b["c"].d[0]': 1 } },
  { kind: 'skills', what: 'half a letter', content: { ...sound, athlete: { ref: '\ud800' } } },
  {
    kind: 'skills',
    what: 'a letter that is cut in two',
    content: { ...sound, athlete: { ref: `${'a'.repeat(59)}\u{1f938}` } },
  },
  {
    kind: 'skills',
    what: 'measured masses above the mass',
    content: { ...sound, athlete: athlete({ segments: { thighL: { massKg: 40 } } }) },
  },
  {
    kind: 'kept',
    what: 'a document of version 1 in a record of version 2',
    content: session(2, { ...sound, version: 1, phases: undefined, ...sound.phases[0] }),
  },
  { kind: 'kept', what: 'a phase that is nothing', content: session(2, { ...sound, phases: [null, ...sound.phases] }) },
  {
    kind: 'kept',
    what: 'a step without its place',
    content: session(2, sound, [{ title: 'Move', difference: [{ before: 1, after: 2 }] }]),
  },
  { kind: 'kept', what: 'a step that is no list', content: session(2, sound, [{ title: 'Move', difference: true }]) },
];

export const inputOf = ({ content, what }: Found): Input => ({
  file: 'session.json',
  bytes: utf8(typeof content === 'string' ? content : JSON.stringify(content)),
  what,
});
