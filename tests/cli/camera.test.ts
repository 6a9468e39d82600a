// The command "camera": a filming plan on stdout, and what the camera sees as CSV.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

describe('camera', () => {
  const made = makeFolder();
  test('says what moves how far, what is hidden, what holds it; the CSV has a row for each picture', async () => {
    const csv = made.at('seen.csv');
    const { code, out, err } = await run(
      'camera',
      'back-straight-full',
      '--off-square',
      '-12',
      '--away',
      '6',
      '--csv',
      csv,
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/At 120 frames a second from 6 m, the (left|right) hand moves \d+ cm and \d+ pixels a frame/);
    expect(out).toMatch(
      /The feet leave the picture at the bottom and top, first at 0\.00 s; 7\.\d m would hold all of it\./,
    );
    expect(out).toContain('One camera gives tilt only through the count of twists.');
    expect(out).toMatch(/-12 deg off square/);
    expect(out).toMatch(/right shoulder: half of the time, 0\.00 to 0\.24 s, /);
    expect(out).toContain('Ask everyone in view before you film.');
    expect(out).toContain(CAUTION);
    const text = readFileSync(csv, 'utf8');
    expect(text).toMatch(/^# program: Shapeflight/);
    expect(text).toContain('call: shapeflight camera back-straight-full --away 6 --off-square -12');
    const rows = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
    // 0.936 s at 120 a second, the one at take-off, and the line of names
    expect(rows).toHaveLength(112 + 1 + 1);
  });
  test('at 240 frames what is usual fits into a frame', async () => {
    const { code, out } = await run('camera', 'back-tuck', '--frames', '240', '--shutter', '1/2000');
    expect(code).toBe(0);
    expect(out).toMatch(/shutter 1\/2000 s, read line by line in 4\.2 ms/);
  });
  test('what it cannot be says which option, and what is allowed', async () => {
    const fails = async (...argv: string[]) => {
      const { code, out, err } = await run('camera', ...argv);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    expect(await fails()).toContain('SKILL is missing');
    expect(await fails('back-tuck', '--away', '0.2')).toMatch(/--away: 0\.2 is not possible; allowed: 1 to 100 m/);
    expect(await fails('back-tuck', '--off-square', '120')).toMatch(/--off-square: 120 is not possible; allowed: -90/);
    expect(await fails('back-tuck', '--lines', '0.02')).toMatch(/--lines: 0\.02 .*at most the time of a frame/);
    expect(await fails('back-tuck', '--picture', 'large')).toContain('as 1920x1080');
    expect(await fails('back-tuck', '--view', 'wide')).toContain('"wide" is not a number');
    expect(await fails('back-tuck', '--up', '1', '--up', '2')).toContain('--up is given twice');
    expect(await fails('back-tuck', '--zoom', '2')).toContain('--zoom is not an option');
    expect(
      await fails('back-straight-full', '--away', '1', '--off-square', '90', '--csv', made.at('none.csv')),
    ).toMatch(/--away: 1 /);
    expect(made.list()).toEqual(['seen.csv']);
  });
});
