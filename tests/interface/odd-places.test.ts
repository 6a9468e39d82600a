// Numbers, dates, names and clocks as odd places have them (tests/reliability/odd-places.ts).
import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { timeStamp } from '../../src/features/class/time-stamp.ts';
import { sayDay, sayMoment } from '../../src/ui/dates.ts';
import { inWords } from '../../src/ui/names.ts';
import { parseNumber } from '../../src/ui/numbers.ts';
import { parseQuantity } from '../../src/ui/units.ts';
import { oddPlaces } from '../reliability/odd-places.ts';

const zone = process.env.TZ;
afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

describe('numbers', () => {
  it.each([
    ['1,05', 1.05],
    ['١٫٠٥', 1.05],
    ['\u061c-١٫٠٥', -1.05],
    ['۱٫۰۵', 1.05],
    ['१.०५', 1.05],
    ['１．０５', 1.05],
    ['\u200f1.05', 1.05],
    ['١٬٠٢٠', 1020],
    ['1\u202f020', 1020],
  ])('%s is read', (typed, value) => {
    expect(parseNumber(typed)).toBe(value);
  });
  it.each(['1.020,5', '1,020.5', '', '٫', 'Ⅷ', '½', '1e3', '٠x'])('"%s" is no number', (typed) => {
    expect(parseNumber(typed)).toBeNaN();
  });
  it('with a unit too', () => {
    expect(parseQuantity('length', '٥ ft ٣ in')).toBeCloseTo(1.6002, 4);
    expect(parseQuantity('length', '١٫٥')).toBe(1.5);
  });
});

describe('dates', () => {
  it.each([
    ['Asia/Kolkata', '2026-03-02T15:11:00+05:30', '2 Mar, 15:11'],
    ['America/St_Johns', '2026-03-02T06:11:00-03:30', '2 Mar, 06:11'],
    ['Pacific/Chatham', '2026-03-02T23:26:00+13:45', '2 Mar, 23:26'],
    ['Asia/Kathmandu', '2026-03-02T15:26:00+05:45', '2 Mar, 15:26'],
  ])('in %s a time has its offset to the minute', (name, stamp, said) => {
    process.env.TZ = name;
    const at = new Date('2026-03-02T09:41:00Z');
    expect(timeStamp(at)).toBe(stamp);
    expect(Date.parse(timeStamp(at))).toBe(at.getTime());
    expect(sayMoment(at.getTime())).toBe(said);
  });
  it('in the night a clock is put back, two times of one reading are two', () => {
    process.env.TZ = 'Europe/Vienna';
    const stamps = ['2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z'].map((at) => timeStamp(new Date(at)));
    expect(stamps).toEqual(['2026-10-25T02:30:00+02:00', '2026-10-25T02:30:00+01:00']);
  });
  it('are of the day that it is here', () => {
    process.env.TZ = 'Pacific/Chatham';
    expect(sayDay(new Date('2026-11-30T11:00:00Z'))).toBe('1 December 2026');
    process.env.TZ = 'America/St_Johns';
    expect(sayDay(new Date('2026-12-01T02:00:00Z'))).toBe('30 November 2026');
  });
});

describe('names', () => {
  it.each(['Ilse Marrow', 'Zoë é', '🤸🏽‍♀️', 'A'.repeat(200), '李', 'Back 1½'])('%s is as it was given', (name) => {
    expect(inWords(name)).toBe(name);
  });
  it.each(['סלטה', 'قفزة 360°', 'a\u202eb', 'a\u2067b', '\u200fa'])('%s is kept apart', (name) => {
    expect(inWords(name)).toMatch(/^\u2068[^\u202a-\u202e\u2066-\u2069]*\u2069$/);
  });
});

it('every odd place is walked by a test', () => {
  const dir = new URL('../browser/', import.meta.url);
  const specs = readdirSync(dir)
    .filter((name) => name.startsWith('odd-places'))
    .map((name) => readFileSync(new URL(name, dir), 'utf8'))
    .join();
  expect(Object.keys(oddPlaces).filter((id) => !specs.includes(`'${id}'`))).toEqual([]);
});
