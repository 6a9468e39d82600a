// Links of skills and worksheets: cut, changed, of other versions, packed with other words, and bombs.
import { deflateSync, strToU8 } from 'fflate';
import { fileOfWorksheet } from '../../../sim/files/worksheet-file.ts';
import { DICTIONARY_1 } from '../../../sim/handing/dictionary-1.ts';
import { writeLetters } from '../../../sim/handing/letters.ts';
import {
  type Along,
  athleteOf,
  keepBack,
  LinkError,
  readSkillLink,
  readWorksheetLink,
  writeSkillLink,
  writeWorksheetLink,
} from '../../../sim/index.ts';
import { wordFault } from '../../../src/app/say/fault-words.ts';
import { damageJson } from './damage-json.ts';
import { BYTES_RULES, utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { checkSentence, checkShared, hold, LawBroken, type Outcome } from './law.ts';
import type { Random } from './random.ts';
import { READY, shelf, WORKSHEETS } from './sound.ts';

const dictionary = strToU8(DICTIONARY_1);
const ALL: Along = { name: true, age: true, mass: true, sheets: true, film: true };
const NONE: Along = { name: false, age: false, mass: false, sheets: false, film: false };
const pack = (start: string, text: Uint8Array, by: Uint8Array | undefined = dictionary): string =>
  `${start}${writeLetters(deflateSync(text, by ? { dictionary: by } : {}))}`;

interface Sound {
  readonly link: string;
  readonly start: string;
  /** what it packs */
  readonly payload: unknown;
}

/** Made once: to pack is what costs. */
const made = new Map<string, Sound>();
function soundOf(r: Random): Sound {
  const isSheet = r.isHit(0.25);
  const at = r.int(isSheet ? WORKSHEETS.length : READY.length);
  const along = r.isHit(0.5) ? ALL : NONE;
  const key = `${isSheet} ${at} ${along.name}`;
  const known = made.get(key) ?? (isSheet ? worksheetSound(at) : skillSound(at, along));
  made.set(key, known);
  return known;
}

function worksheetSound(at: number): Sound {
  const { format: _, version: _1, ...payload } = fileOfWorksheet(WORKSHEETS[at]);
  return { link: writeWorksheetLink(WORKSHEETS[at]), start: 'w1.', payload };
}

function skillSound(at: number, along: Along): Sound {
  const [, file] = READY[at];
  const one = keepBack(file, athleteOf(file, shelf), along);
  const { format: _, ...skill } = one.file;
  return { link: writeSkillLink(one), start: '1.', payload: { kept: one.kept, skill } };
}

const LETTERS = [...'ABCabc019-_%.~ =+/\n\u0000é'];
const CHANCE = [...'ABCDEFabcdef0123456789-_'];

interface LinkRule {
  readonly name: string;
  readonly make: (sound: Sound, r: Random) => string;
}
const cutAt = (link: string, at: number, put: string, away: number): string =>
  link.slice(0, at) + put + link.slice(at + away);

const RULES: readonly LinkRule[] = [
  { name: 'cut off', make: ({ link }, r) => link.slice(0, r.int(link.length)) },
  { name: 'a letter changed', make: ({ link }, r) => cutAt(link, r.int(link.length), r.of(LETTERS), 1) },
  { name: 'a letter put in', make: ({ link }, r) => cutAt(link, r.int(link.length), r.of(LETTERS), 0) },
  { name: 'letters lost', make: ({ link }, r) => cutAt(link, r.int(link.length), '', 1 + r.int(40)) },
  { name: 'twice', make: ({ link }) => `${link}${link}` },
  {
    name: 'another version',
    make: ({ link }, r) =>
      link.replace(
        /^w?\d+\./,
        r.of(['2.', 'w2.', '0.', 'w0.', '999999.', 'w999999.', '01.', '1..', '-1.', '1e9.', 'x1.']),
      ),
  },
  { name: 'the other kind', make: ({ link, start }) => link.replace(start, start === '1.' ? 'w1.' : '1.') },
  {
    name: 'an address around it',
    make: ({ link }, r) =>
      `${r.of(['https://x.invalid/a?b=c#', '#', 'javascript:1#', '##', '<a href="#', ' \n#'])}${link}${r.of(['', '"', '>.', '\n\n', '#', '&x=1'])}`,
  },
  {
    name: 'folded',
    make: ({ link }, r) => link.replace(/(.{50})/g, `$1${r.of(['\n', '\r\n> ', ' ', '=\n', '\u200b', '\u00ad'])}`),
  },
  {
    name: 'damaged before it was packed',
    make: ({ payload, start }, r) => pack(start, utf8(damageJson(payload, r).text)),
  },
  {
    name: 'bytes damaged before they were packed',
    make: ({ payload, start }, r) => pack(start, r.of(BYTES_RULES).apply(utf8(JSON.stringify(payload)), r)),
  },
  {
    name: 'packed with other words',
    make: ({ payload, start }, r) =>
      pack(
        start,
        utf8(JSON.stringify(payload)),
        r.isHit(0.5) ? undefined : utf8('another dictionary, which nobody has'),
      ),
  },
  {
    name: 'a bomb',
    make: ({ start }, r) => pack(start, utf8(r.of([' ', '[', '{"a":', '0']).repeat(r.of([150_000, 250_000, 600_000])))),
  },
  {
    name: 'a bomb in a title',
    make: ({ start }, r) =>
      pack(
        start,
        utf8(
          JSON.stringify({
            skill: {
              version: 2,
              title: 'x'.repeat(r.of([190_000, 500_000])),
              athlete: { ref: 'ilse-marrow' },
              phases: [],
            },
          }),
        ),
      ),
  },
  {
    name: 'packed bytes damaged',
    make: ({ payload, start }, r) =>
      `${start}${writeLetters(
        r
          .of(BYTES_RULES)
          .apply(deflateSync(utf8(JSON.stringify(payload)), { dictionary }), r)
          .slice(0, 60_000),
      )}`,
  },
  {
    name: 'letters by chance',
    make: ({ start }, r) =>
      `${start}${Array.from({ length: r.of([30, 200, 9000, 40_000]) }, () => r.of(CHANCE)).join('')}`,
  },
];

export const linksKind: CorpusKind = {
  name: 'links',
  make: (r) => {
    const { name, make } = r.of(RULES);
    return { file: 'link.txt', bytes: utf8(make(soundOf(r), r)), what: name };
  },
  run: (input): Outcome => checkShared(() => runLink(textOf(input) ?? '')),
};

function runLink(link: string): Outcome {
  const isWorksheet = /(?:^\s*|#)w\d{1,6}\./.test(link);
  try {
    if (isWorksheet) {
      const sheet = readWorksheetLink(link);
      hold(
        JSON.stringify(readWorksheetLink(writeWorksheetLink(sheet))) === JSON.stringify(sheet),
        'the link of what was read gives another worksheet',
      );
    } else {
      const one = readSkillLink(link);
      hold(
        JSON.stringify(readSkillLink(writeSkillLink(one)).file) === JSON.stringify(one.file),
        'the link of what was read gives another skill',
      );
    }
    return 'read';
  } catch (error) {
    if (error instanceof LawBroken) throw error;
    if (!(error instanceof LinkError))
      throw new LawBroken(
        error instanceof Error
          ? `${error.name}: ${error.message} ${error.stack?.split('\n').slice(1, 4).join(' |')}`
          : String(error),
      );
    checkSentence(error.message, link);
    checkSentence(wordFault(error.cause instanceof Error ? error.cause : error), link);
    return 'refused';
  }
}
