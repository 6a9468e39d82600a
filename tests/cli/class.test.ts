// The command "class": what a class handed in, on stdout and as CSV.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CAUTION, formatWorksheet } from '../../sim/index.ts';
import { answered, blankWorksheet } from '../worksheet/blank.ts';
import { makeFolder, run } from './run.ts';

const blank = blankWorksheet();
const one = (name: string, texts: readonly string[]) => JSON.parse(formatWorksheet(answered(name, texts, blank)));

describe('class', () => {
  const made = makeFolder({
    'wren.json': one('Wren A.', ['1.05 s', '1.27 m', '3', '1.9 rev/s', 'It opens.']),
    'ivo.json': one('Ivo D.', ['1.05 s', '5.1 m', 'open:3']),
    'notes.txt': 'dear teacher',
    'blank.json': JSON.parse(formatWorksheet(blank)),
  });
  test('every answer beside what the flight gives, and what is no worksheet last', async () => {
    const csv = made.at('answers.csv');
    const { code, out, err } = await run(
      'class',
      ...['wren.json', 'ivo.json', 'notes.txt', 'blank.json'].map(made.at),
      '--csv',
      csv,
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('2 handed in, 1 complete.');
    expect(out).toMatch(/2 {2}How high does the mass centre rise\? {2}simulated 1\.274 m; 1 of 2 within a tenth/);
    expect(out).toMatch(/2 +Ivo D\. +1\.05 s +5\.1 m \(whole time\?\) +not locked +09:41/);
    expect(out).toContain(
      'question 2: 1 of them: the whole air time where half was meant, or a speed twice too large?',
    );
    expect(out).toMatch(/No\. 3, notes\.txt: text of another kind/);
    expect(out).toContain('No. 4, blank.json: nobody wrote in it');
    expect(out).toContain(CAUTION);
    const text = readFileSync(csv, 'utf8');
    expect(text).toMatch(/^# program: Shapeflight/);
    expect(text).not.toContain(made.at(''));
    expect(text.split('\n').filter((line) => line.startsWith('Wren A.,'))).toHaveLength(5);
  });
  test('what it cannot do says why', async () => {
    expect(await run('class')).toMatchObject({ code: 2, err: expect.stringContaining('FILE is missing') });
    expect(await run('class', made.at('blank.json'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('nobody wrote in it'),
    });
    expect(await run('class', made.at('gone.json'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('gone.json'),
    });
    expect(await run('class', made.at('wren.json'), '--json', 'x')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--csv'),
    });
    expect(await run('class', made.at('wren.json'), '--csv', made.at('wren.json'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('is the input'),
    });
  });
});
