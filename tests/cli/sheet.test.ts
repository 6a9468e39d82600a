// The command "sheet": an estimate on stdout, beside a skill if asked for, as CSV and as a page.
import { describe, expect, test } from 'vitest';
import { sheets } from '../../presets/sheet-shelf.ts';
import { CAUTION } from '../../sim/index.ts';
import { sampleSkill } from '../files/sample-skill.ts';
import { makeFolder, run } from './run.ts';

const text = `# Height by stopwatch
T = 1.2 s +- 0.02 s vs {air time} # stopwatch
rise = g * T^2 / 8 to m
g = 9.81 m/s^2
`;
const sheet = {
  format: 'shapeflight-sheet',
  version: 1,
  title: 'Own sheet',
  lines: ['mass = 55 kg', 'x = mass + 3 m', 'I_1 = mass * (0.5 m)^2 / 2', 'draw disc for I_1'],
};

describe('sheet', () => {
  const made = makeFolder({ 'height.txt': text, 'own.sheet.json': sheet, 'bad.sheet.json': { ...sheet, lines: 'x' } });

  test('a text file: values with their ±, and the caution', async () => {
    const { code, out, err } = await run('sheet', made.at('height.txt'));
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Height by stopwatch\n/);
    expect(out).toMatch(/2 +rise +1\.766 +0\.059 +m/);
    expect(out).toContain('no skill is open');
    expect(out).toContain(CAUTION);
  });

  test('beside a skill: simulated, ratio and what makes the difference', async () => {
    const { code, out } = await run('sheet', made.at('height.txt'), '--skill', 'double-back-tuck');
    expect(code).toBe(0);
    expect(out).toMatch(/1 +T +1\.200 +0\.020 +s +1\.048 +1\.14/);
    expect(out).toContain('simulated: ');
  });

  test('a sheet kept with a skill is set against that skill', async () => {
    const lines = ['T = 1.2 s vs {air time}'];
    const skill = { ...sampleSkill, worksheets: [{ title: 'With it', lines }] };
    const both = makeFolder({ 'with.json': skill, 'without.json': sampleSkill });
    const { code, out } = await run('sheet', both.at('with.json'));
    expect(code).toBe(0);
    expect(out).toContain(`With it; simulated: ${sampleSkill.title}`);
    expect(out).toMatch(/1 +T +1\.2 +s +\d/);
    const without = await run('sheet', both.at('without.json'));
    expect([without.code, without.err]).toEqual([2, expect.stringContaining('sheet')]);
  });

  test('a fault is shown with its line; the rest is computed', async () => {
    const { code, out } = await run('sheet', made.at('own.sheet.json'));
    expect(code).toBe(0);
    expect(out).toContain('line 2: kg (mass) and m (length) cannot be added');
    expect(out).toContain('I_1 is that of a disc of 55 kg with radius 0.5 m');
  });

  test('CSV and page are written whole', async () => {
    const { code } = await run('sheet', made.at('height.txt'), '--csv', made.at('o.csv'), '--page', made.at('o.html'));
    expect(code).toBe(0);
    const csv = made.rows('o.csv');
    expect(csv.split('\n')[0]).toMatch(/^line,typed,name,value,unit,plus_minus_95/);
    expect(Number(csv.split('\n')[2].split(',')[3])).toBeCloseTo(1.7658, 12);
    expect(csv).not.toContain('Caution');
    const page = made.read('o.html');
    expect(page).toContain('<mfrac>');
    expect(page).toContain(CAUTION);
  });

  test.each(Object.keys(sheets))('the ready sheet %s is known by its id', async (id) => {
    const { code, out } = await run('sheet', id);
    expect(code).toBe(0);
    expect(out).toContain(sheets[id].title);
  });

  test('--help lists the ready sheets', async () => {
    const { out } = await run('--help');
    for (const id of Object.keys(sheets)) expect(out).toContain(id);
  });

  test.each<[string[], string]>([
    [['sheet'], 'FILE is missing'],
    [['sheet', 'no-such'], 'no sheet that comes with Shapeflight'],
    [['sheet', '<bad.sheet.json>'], 'lines'],
    [['sheet', '<height.txt>', '--skill', 'no-such'], 'no-such'],
    [['sheet', '<height.txt>', '--csv', '<height.txt>'], 'is the input'],
    [['sheet', '<height.txt>', '--frames', 'x'], 'not an option of this command'],
    [['fly', 'back-tuck', '--csv', 'x'], 'not an option of this command'],
  ])('%j is exit 2 and one clear line', async (argv, words) => {
    const { code, out, err } = await run(...argv.map((a) => a.replace(/^<(.*)>$/, (_, name) => made.at(name))));
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^shapeflight: [^\n]+\n$/);
    expect(err).toContain(words);
  });
});
