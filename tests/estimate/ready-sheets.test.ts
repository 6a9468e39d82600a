// The sheets that come with Shapeflight, against what they are meant to show. "common practice, no source": the values
// are those of the trade's folklore, with no publication behind them; the inputs are chosen by us so as to give them.
import { describe, expect, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import { sheets } from '../../presets/sheet-shelf.ts';
import { parseSheet, readLinks } from '../../sim/index.ts';
import { sheetOf } from './sheet-of.ts';
import { readingsOf } from './skill-result.ts';

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
  test('there are the eight lessons', () => expect(Object.keys(sheets)).toHaveLength(8));
});

/** name, value wanted in the unit of the line, how far from it: half a unit of the last figure that is stated */
type Row = readonly [sheet: string, name: string, wanted: number, within: number];
// common practice, no source
const FOLKLORE: readonly Row[] = [
  ['giant-at-constant-speed', 'speed', 3.4, 0.05],
  ['giant-at-constant-speed', 'inward', 12.5, 0.05],
  ['giant-at-constant-speed', 'inward_g', 1.3, 0.05],
  ['giant-at-constant-speed', 'felt_g', 2.3, 0.05],
  ['rod-against-ball', 'ratio', 1.875, 1e-12],
  ['height-from-air-time', 'rise', 1.55, 0.005],
  ['energy-of-spin', 'energy_twist', 10, 0.5],
  ['energy-of-spin', 'energy_flip', 432.5, 12.5],
  ['energy-ledger', 'energy_height', 822, 0.5],
  ['energy-ledger', 'energy_pass', 1254, 0.5],
  ['energy-ledger', 'energy_jump', 250, 5],
  ['energy-ledger', 'ratio', 5.5, 0.5],
  ['mean-landing-deceleration', 'deceleration', 54.4, 0.05],
  ['mean-landing-deceleration', 'deceleration_g', 5.5, 0.05],
];

describe('common practice, no source', () => {
  test.each(FOLKLORE)('%s: %s is %d within %d', (id, name, wanted, within) => {
    expect(Math.abs(alone(id).value(name) - wanted)).toBeLessThanOrEqual(within);
  });
  test.each(FOLKLORE.filter(([, name]) => !['energy_height'].includes(name)))(
    '%s: %s says so in its line',
    (id, name) => {
      const line = sheets[id].lines.find((l) => l.startsWith(`${name} = `));
      expect(line).toContain('common practice, no source');
    },
  );
  test('the pass is the sum of its parts, 1,254 J, and not the 1,274 J it has been given as', () => {
    const sheet = alone('energy-ledger');
    const parts = ['energy_height', 'energy_flip', 'energy_twist'].map((name) => sheet.value(name));
    expect(sheet.value('energy_pass')).toBeCloseTo(
      parts.reduce((a, b) => a + b),
      9,
    );
    expect(Math.abs(sheet.value('energy_pass') - 1274)).toBeGreaterThan(15);
  });
  test('against the 200 J a standing jump is called, the ratio is still about 6', () => {
    const { lines } = sheets['energy-ledger'];
    const called = sheetOf([...lines, 'ratio_called = energy_pass / (200 J)']).value('ratio_called');
    expect(called).toBeGreaterThan(5);
    expect(called).toBeLessThan(6.5);
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
    const sheet = sheetOf(lines);
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
    expect(alone('mean-landing-deceleration').value('push_in_weights')).toBeCloseTo(4, 12));
});
