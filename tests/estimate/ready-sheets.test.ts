// The sheets that come with Shapeflight, against what they are meant to show. "common practice, no source": the values
// are those of the trade's folklore, with no publication behind them; the inputs are chosen by us so as to give them.
import { describe, expect, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import { sheets } from '../../presets/sheet-shelf.ts';
import { parseSheet, readLinks } from '../../sim/index.ts';
import { recordChecks } from '../validation/record.ts';
import { sheetOf } from './sheet-of.ts';
import { readingsOf } from './skill-result.ts';

const near = recordChecks('ready-sheets');
const alone = (id: string) => sheetOf(sheets[id].lines, readLinks(sheets[id].lines, undefined));

describe('every ready sheet', () => {
  test.each(Object.keys(sheets))('%s is a whole file, and names a skill that comes with Shapeflight', (id) => {
    expect(parseSheet(structuredClone(sheets[id]))).toEqual(sheets[id]);
    const { skill } = sheets[id];
    if (skill !== undefined) expect(Object.keys(skills)).toContain(skill);
  });
  test.each(Object.keys(sheets))('%s has no fault beside a skill', (id) => {
    const { lines, skill } = sheets[id];
    const sheet = sheetOf(lines, readLinks(lines, readingsOf(skill ?? 'back-straight-full')));
    expect(sheet.faults).toEqual([]);
  });
  test('there are the nine lessons', () => expect(Object.keys(sheets)).toHaveLength(9));
});

/** name, value wanted in the unit of the line, how far from it: half a unit of the last figure that is stated */
type Row = readonly [sheet: string, name: string, wanted: number, within: number];
// common practice, no source
const FOLKLORE: readonly Row[] = [
  ['giant-at-constant-speed', 'inward', 12.5, 0.05],
  ['giant-at-constant-speed', 'felt', 2.3, 0.05],
  ['rod-against-ball', 'ratio', 1.9, 0.05],
  ['energy-ledger', 'rise', 1.52, 0.005],
  ['energy-ledger', 'energy_height', 822, 0.5],
  ['mean-landing-deceleration', 'deceleration', 54, 0.5],
  ['mean-landing-deceleration', 'deceleration_g', 5.5, 0.05],
];

describe('common practice, no source', () => {
  test.each(FOLKLORE)('E1: %s, %s', (id, name, wanted, within) => {
    near('in the unit of its line', alone(id).value(name), wanted, within);
  });
  test.each(FOLKLORE)('%s: %s says so in its line', (id, name) => {
    const line = sheets[id].lines.find((l) => l.startsWith(`${name} = `));
    expect(line).toContain('common practice, no source');
  });
  test('12.5 m/s^2 and 2.3 g follow from one turn in 1.7 s at 3 ft', () => {
    const inward = ((2 * Math.PI) ** 2 * 0.9144) / 1.7 ** 2;
    expect(alone('giant-at-constant-speed').of('inward').value).toBeCloseTo(inward, 9);
    expect(alone('giant-at-constant-speed').value('felt')).toBeCloseTo(inward / 9.80665 + 1, 9);
  });
  test('5 ft are 1.115 s; the air time of 1.125 s gives 1.55 m and 837 J', () => {
    const lines = [...sheets['energy-ledger'].lines, 'energy_timed = mass * g * rise_timed to J'];
    const sheet = sheetOf(lines, readLinks(lines, undefined));
    expect(sheet.value('rise_timed')).toBeCloseTo(1.551, 3);
    expect(sheet.value('energy_timed')).toBeCloseTo(837, 0);
    expect(Math.sqrt((8 * 1.524) / 9.80665)).toBeCloseTo(1.115, 3);
  });
  test('a pass is the sum of its parts', () => {
    const sheet = alone('energy-ledger');
    const parts = ['energy_height', 'energy_flip', 'energy_twist'].map((name) => sheet.value(name));
    expect(sheet.value('energy_pass')).toBeCloseTo(
      parts.reduce((a, b) => a + b),
      9,
    );
  });
});

describe('beside the flight', () => {
  /** Middle of the twist of back-straight-full, arms in: measured 0.95. The flight's arms are not quite still. */
  const NEARLY = 0.1;
  test('the twist rate of the principal moments and the tilt is that of the flight while the arms are in', () => {
    const { lines } = sheets['rate-from-tilt'];
    const own = lines.map((l) => (l.startsWith('tilt') ? 'tilt = {tilt at 50 %}' : l));
    const { of } = sheetOf(own, readLinks(own, readingsOf('back-straight-full')));
    expect(Math.abs((of('rate').compared?.ratio ?? 0) - 1)).toBeLessThan(NEARLY);
  });
  test('no line of a ready sheet sets a mean against a peak without saying so', () => {
    for (const [id, { lines }] of Object.entries(sheets))
      for (const line of lines)
        if (/vs \{greatest/.test(line)) expect([id, line]).toEqual([id, expect.stringMatching(/if mean/)]);
  });
});

describe('closed forms', () => {
  // F1: v0 = g T / 2, rise = g T^2 / 8
  test.each([
    [0.8, 3.924, 0.785],
    [1.0, 4.905, 1.226],
    [1.2, 5.886, 1.766],
    [2.0, 9.81, 4.905],
  ])('F1: in the air for %d s, up with %d m/s, by %d m', (T, speed, rise) => {
    const lines = sheets['height-from-air-time'].lines.map((l) => (l.startsWith('airtime') ? `airtime = ${T} s` : l));
    const sheet = sheetOf([...lines, 'g = 9.81 m/s^2']);
    expect(sheet.value('speed_up')).toBeCloseTo(speed, 3);
    expect(sheet.value('rise')).toBeCloseTo(rise, 3);
  });

  test('F2: released at 3.7 m with 4.5 m/s up, landed at 1.0 m', () => {
    const sheet = sheetOf([
      'g = 9.81 m/s^2',
      'v = 4.5 m/s',
      'y_release = 3.7 m',
      'y_landing = 1.0 m',
      'apex = y_release + v^2 / (2 * g)',
      'T = (v + sqrt(v^2 + 2 * g * (y_release - y_landing))) / g to s',
      'v_landing = g * T - v to m/s',
    ]);
    expect(sheet.value('T')).toBeCloseTo(1.330999, 6);
    expect(sheet.value('apex')).toBeCloseTo(4.732, 3);
    expect(sheet.value('v_landing')).toBeCloseTo(8.557, 3);
  });

  test('F9: from 0.9 m over 0.3 m: 4.0 body weights', () =>
    expect(sheetOf(['push = 1 + 0.9 m / (0.3 m)']).value('push')).toBeCloseTo(4, 12));
  test('at an even push the mean over the way is the mean over the time', () => {
    const sheet = alone('mean-landing-deceleration');
    expect(sheet.value('push_over_the_way')).toBeCloseTo(sheet.value('push'), 9);
  });
});
