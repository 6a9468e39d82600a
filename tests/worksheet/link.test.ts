// A worksheet as a link, blank and handed in.
import { describe, expect, test } from 'vitest';
import { isSkillLink, isWorksheetLink, readSkillLink, readWorksheetLink, writeWorksheetLink } from '../../sim/index.ts';
import { answered, blankWorksheet } from './blank.ts';

describe.each(['double-back-tuck', 'arms-in-spin', 'landing'])('%s', (id) => {
  const blank = blankWorksheet(id);
  test('comes back from its link, in under two and a half thousand letters', () => {
    const link = writeWorksheetLink(blank);
    expect(link.length).toBeLessThan(2500);
    expect(isWorksheetLink(`https://bench.example/#${link}`)).toBe(true);
    expect(isWorksheetLink(`https://bench.example/#${link.slice(0, 9)}%`)).toBe(true);
    expect(readWorksheetLink(`https://bench.example/#${link}`)).toEqual(blank);
  });
});

test('handed in, with letters of any alphabet', () => {
  const one = answered('Ødegård Жук 李', ['1,05 s', '', '', '', '']);
  expect(readWorksheetLink(writeWorksheetLink(one))).toEqual(one);
});

describe('what is none', () => {
  const link = writeWorksheetLink(blankWorksheet());
  test('damage is placed', () => {
    const at = 300;
    const spoilt = `${link.slice(0, at)}${link[at] === 'A' ? 'B' : 'A'}${link.slice(at + 1)}`;
    expect(() => readWorksheetLink(spoilt)).toThrow(/damaged near its (29\d|30\d|31\d|32\d)/);
    expect(() => readWorksheetLink(link.slice(0, 200))).toThrow('cut off after 200 letters');
    expect(() => readWorksheetLink(link.replace('w1.', 'w2.'))).toThrow('newer');
  });
  test('neither reads as a skill', () => {
    expect(isSkillLink(link)).toBe(false);
    expect(() => readSkillLink(link)).toThrow('no link of a skill');
    expect(() => readWorksheetLink('1.abc')).toThrow('no link');
  });
});
