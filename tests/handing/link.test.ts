// A link gives back what was handed on, exactly or not at all, and says where it is damaged.
import { createHash } from 'node:crypto';
import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import { DICTIONARY_1 } from '../../sim/handing/dictionary-1.ts';
import { writeLetters } from '../../sim/handing/letters.ts';
import { isSkillLink, readSkillLink, writeSkillLink } from '../../sim/handing/link.ts';
import { LinkError, type LinkFault } from '../../sim/handing/link-error.ts';
import { MOST_LETTERS } from '../../sim/handing/pack.ts';
import { parseChain } from '../../sim/index.ts';
import { someOf } from '../corpus.ts';
import { ALL, handOn, NONE, ready, readySkill, whoOf } from './ready.ts';

const full = readySkill('back-straight-full');
const letters = writeSkillLink(handOn(full, NONE));

function faultOf(text: string): LinkFault {
  try {
    readSkillLink(text);
  } catch (error) {
    if (error instanceof LinkError) return error.fault;
    throw error;
  }
  throw new Error('it was read');
}
const packedOf = (payload: unknown): string => textOf(JSON.stringify(payload));
const textOf = (text: string): string =>
  `1.${writeLetters(deflateSync(strToU8(text), { dictionary: strToU8(DICTIONARY_1) }))}`;
const bare = { ...handOn(full, ALL).file };

test('a text of a hundred thousand brackets before a link is read in a moment', () => {
  // by length alone: a walk from the end, not a search from each place
  const link = writeSkillLink(handOn(ready[0][1], NONE));
  expect(readSkillLink(`${')'.repeat(100_000)}#${link}`).kept).toContain('name');
});

describe('a link', () => {
  test.each(ready)('%s comes back as it was handed on, with all or with nothing along', (_, file) => {
    for (const along of [ALL, NONE]) {
      const handed = handOn(file, along);
      expect(readSkillLink(`https://bench.example/#${writeSkillLink(handed)}`)).toEqual(handed);
    }
  });

  // the same numbers in, by every bit, are the same flight: nothing in it is left to chance
  test.each(someOf(ready, 4))('%s is flown from the same numbers, by every bit, when all goes along', (_, file) => {
    const spec = (one: typeof file) => parseChain({ ...one, athlete: whoOf(one) }, { athletes, shapes });
    expect(spec(readSkillLink(writeSkillLink(handOn(file, ALL))).file)).toEqual(spec(file));
  });

  test('of every ready skill is under a thousand letters, with all but its remark along', () => {
    for (const [id, { note: _, ...file }] of ready) {
      expect(writeSkillLink(handOn(file, NONE)).length, id).toBeLessThan(1000);
      expect(writeSkillLink(handOn(file, ALL)).length, id).toBeLessThan(1000);
    }
  });

  test('without ticks has neither name nor mass nor age nor club nor remark', () => {
    for (const [id, file] of ready) {
      const { name, club, ...who } = whoOf(file) as { name: string; club?: string; massKg?: number; ageYears?: number };
      const text = JSON.stringify(readSkillLink(writeSkillLink(handOn(file, NONE))).file);
      for (const word of [name, club, file.note, `"massKg":${who.massKg},`, '"ageYears"'])
        if (word) expect(text.includes(word), `${id}: ${word}`).toBe(false);
    }
  });

  test('is found in an address, alone, over lines, and before the stop of a sentence', () => {
    const skill = readSkillLink(letters);
    const lines = letters.replace(/(.{60})/g, '$1\r\n');
    for (const text of [
      `#${letters}`,
      `  ${letters}\n`,
      `http://a.example/b/?rows=all#${lines}`,
      `(a.example/#${letters}).`,
    ]) {
      expect(isSkillLink(text)).toBe(true);
      expect(readSkillLink(text)).toEqual(skill);
    }
    for (const text of ['', '#top', 'skill.json', '1.5', '#1', 'https://bench.example/#part-2.3'])
      expect(faultOf(text).kind, text).not.toBe('content');
    expect(isSkillLink('out/skill-1.json')).toBe(false);
  });
});

describe('the dictionary of form 1', () => {
  test('is frozen: with one letter changed no link of form 1 would open', () => {
    expect(createHash('sha256').update(DICTIONARY_1).digest('hex')).toBe(
      '2fcff4432a519a6bf325d285ca2d3999fb133cc6f142f055d463b20f9788c425',
    );
  });

  test('a link of the first day opens', () => {
    expect(
      readSkillLink(
        '1.ASrNXFsSgyAMvIoH6AdVEPjtFXr_uzR4hiBuZEpw-Rptfqkg2YZNVPvvXg-jShLgbYbeIYKzwFE7LW7ijsoAgHiiGWeymLl36SukCIeeDZNyUB4AwLgEBPL2gu2h21IZmfCtkLA1aw3xP6ahTpbsljSD6VcOZwT_51Y8qOOzY92Jwuzg9TdlYoUuJHL3MONlq-7HVQzeMhSM7-RH-3EY_5xzeRU0t_ZBP2fiSF6_znMJbgfrTi_kEdhv3QOUsyecWLXYnlzPfN89WwSzzoFe7tyMA6choRi06klZOXxxX44s27HWbTnJLTNQBrCa3r8rQVpcI95xhgPFCRZtQd65JdTGJFe6g8GkmMWH1Y8SCxeFtqMmdGZH9kHsaLNCclGbweLmGLGYHERC6VUp5JK6kCd1n34vNzGC93wc',
      ).file.title,
    ).toBe('Back somersault, tucked');
  });
});

describe('a damaged link', () => {
  test('with one letter changed anywhere is refused, and its place is right within 32 letters but for one in fifty', () => {
    let far = 0;
    for (let i = 2; i < letters.length; i++) {
      const other = letters[i] === 'A' ? 'B' : 'A';
      const fault = faultOf(letters.slice(0, i) + other + letters.slice(i + 1));
      expect(fault.kind).toBe('damaged');
      if (fault.kind === 'damaged' && Math.abs(fault.letter - i - 1) > 32) far++;
    }
    // measured 6 of 418; by its frame one block in 64 is passed over
    expect(far / letters.length).toBeLessThan(1 / 50);
  });

  test('with a letter that no link has is placed exactly', () => {
    const text = `https://bench.example/#${letters.slice(0, 100)}%${letters.slice(101)}`;
    expect(faultOf(text)).toEqual({ kind: 'damaged', letter: text.indexOf('%') + 1, isExact: true });
    expect(() => readSkillLink(text)).toThrow(`This link is damaged at its ${text.indexOf('%') + 1}`);
  });

  test('with a letter lost, put in or two changed places is refused', () => {
    for (let i = 3; i < letters.length - 1; i += 7) {
      for (const text of [
        letters.slice(0, i) + letters.slice(i + 1),
        `${letters.slice(0, i)}x${letters.slice(i)}`,
        letters.slice(0, i) + letters[i + 1] + letters[i] + letters.slice(i + 2),
      ])
        if (text !== letters) expect(['damaged', 'cut']).toContain(faultOf(text).kind);
    }
  });

  test('that is cut off says so, wherever it is cut', () => {
    for (let n = 3; n < letters.length; n++) expect(faultOf(letters.slice(0, n)).kind, String(n)).toBe('cut');
  });

  test('with letters behind its end is placed at the first of them', () => {
    expect(faultOf(`${letters}AAAA`)).toEqual({ kind: 'damaged', letter: letters.length + 1, isExact: true });
  });
});

describe('a link made to do harm', () => {
  test('of a newer form is refused by its number, and of form 0 too', () => {
    expect(faultOf(letters.replace(/^1/, '2'))).toEqual({ kind: 'newer', version: 2 });
    expect(faultOf(letters.replace(/^1/, '0'))).toEqual({ kind: 'none' });
    expect(faultOf('#999999.AAAA').kind).toBe('newer');
  });

  test('of more letters than a link may have is refused before it is unpacked', () => {
    expect(faultOf(`1.${'A'.repeat(MOST_LETTERS + 1)}`).kind).toBe('long');
    expect(faultOf(`1.${'A'.repeat(10_000_000)}`).kind).toBe('long');
  });

  test('that unpacks to megabytes is refused early', () => {
    const bomb = textOf(`{"skill":${' '.repeat(5_000_000)}{}}`);
    expect(bomb.length).toBeLessThan(MOST_LETTERS);
    expect(() => readSkillLink(bomb)).toThrow(/unpacks to more than 200 kB/);
  });

  test.each([
    ['no JSON', '{"skill":'],
    ['a list', '[]'],
    ['nothing', 'null'],
    ['a prototype as a key', '{"skill":{"__proto__":{"x":1}}}'],
    ['a prototype as the link', '{"__proto__":{"kept":["name"]},"skill":{}}'],
    [
      'constructor in the athlete',
      JSON.stringify({ skill: { ...bare, athlete: { ...bare.athlete, constructor: 1 } } }),
    ],
    ['a field it does not know', JSON.stringify({ skill: bare, more: 1 })],
    ['kept twice', JSON.stringify({ kept: ['name', 'name'], skill: bare })],
    ['kept what is nothing', JSON.stringify({ kept: ['height'], skill: bare })],
    ['a field of the skill it does not know', JSON.stringify({ skill: { ...bare, script: '' } })],
    ['the same field twice', `{"skill":1,"skill":${JSON.stringify(bare)}}`],
    ['deep nesting', `{"skill":{"shapes":${'{"a":'.repeat(60)}1${'}'.repeat(60)}}}`],
    ['a file version of the future', JSON.stringify({ skill: { ...bare, version: 9 } })],
  ])('%s is refused as a file would be', (_, text) => {
    expect(faultOf(textOf(text)).kind).toBe('content');
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  test('with markup in its title is read as text', () => {
    const title = '<img src=x onerror=alert(1)>';
    expect(readSkillLink(packedOf({ skill: { ...bare, title } })).file.title).toBe(title);
  });

  test('with bytes that are no deflated text is refused', () => {
    for (const seed of [1, 7, 99]) {
      const bytes = Uint8Array.from({ length: 200 }, (_, i) => (i * seed * 97 + 13) & 255);
      expect(faultOf(`1.${writeLetters(bytes)}`).kind).toBe('content');
    }
  });

  test('a skill that is too long for a link is refused with its length', () => {
    const noise = Array.from({ length: 400 }, (_, i) => Number(((Math.sin(i * 999) * 1e4) % 90).toFixed(9)));
    const samples = ['hipFlexion', 'kneeFlexion', 'lumbarFlexion'].map((angle, k) => ({
      angle,
      startS: 0,
      rateHz: 240,
      deg: noise.map((v) => v / (k + 3)),
    }));
    const phases = full.phases.map((phase) =>
      phase.kind === 'flight' ? { ...phase, schedule: { ...phase.schedule, samples } } : phase,
    );
    expect(() => writeSkillLink(handOn({ ...full, phases }, NONE))).toThrow(/too long: \d+ letters, at most 8000/);
  });
});
