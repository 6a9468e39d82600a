// Readouts of a skill in a sheet, and which assumption makes the difference.
import { describe, expect, test } from 'vitest';
import { computeSheet } from '../../sim/estimate/compute-sheet.ts';
import { READOUTS, readLink, readLinks, type SkillReadings, type SkillResult } from '../../sim/index.ts';
import { sheetOf } from './sheet-of.ts';
import { readingsOf } from './skill-result.ts';

const full = readingsOf('former/back-straight-full');
const value = (text: string, of: SkillResult = full): number => {
  const link = readLink(text, of);
  if ('missing' in link) throw new Error(link.missing);
  return link.value;
};
const missing = (text: string): string => {
  const link = readLink(text, full);
  return 'missing' in link ? link.missing : '';
};

describe('readouts', () => {
  test('have one name each, and a value or a reason for every one', () => {
    expect(new Set(READOUTS.map((r) => r.name)).size).toBe(READOUTS.length);
    for (const { name } of READOUTS) {
      const link = readLink(name, full);
      if ('missing' in link) expect(link.missing).toMatch(/without a (swing|landing)/);
      else expect(Number.isFinite(link.value)).toBe(true);
    }
  });
  test('the path is the parabola', () => {
    const [g, T, v] = [value('gravity'), value('air time'), value('take-off speed up')];
    expect(value('rise')).toBeCloseTo(v ** 2 / (2 * g), 12);
    expect(value('landing speed')).toBeCloseTo(g * T - v, 12);
    expect(value('fall') - value('rise')).toBeCloseTo(value('drop'), 12);
    expect(value('take-off height') - value('landing height')).toBeCloseTo(value('drop'), 12);
    expect(value('centre height at apex')).toBeCloseTo(value('height'), 3);
    expect(value('centre height at touchdown')).toBeCloseTo(value('landing height'), 9);
  });
  test('energies add up at any instant', () => {
    for (const at of ['take-off', '30 %', '0.45 s', 'touchdown']) {
      const parts = ['rotation', 'limbs', 'rising', 'travel', 'height'].map((p) => value(`energy of ${p} at ${at}`));
      expect(parts.reduce((a, b) => a + b)).toBeCloseTo(value(`total energy at ${at}`), 6);
    }
  });
  test('a mean lies under the greatest, and the mean rate is the turns over the time', () => {
    expect(value('mean somersault rate')).toBeLessThan(value('greatest somersault rate'));
    expect(value('mean somersault rate')).toBeCloseTo((2 * Math.PI * value('somersaults')) / value('air time'), 2);
  });
  test('moments of shapes of the catalogue', () => {
    expect(value('lateral moment in tuck')).toBeLessThan(value('lateral moment in straight') / 2);
    expect(value('long moment in tShape')).toBeGreaterThan(2 * value('long moment in straight'));
  });
  test.each([
    ['grip load', 'without a swing at the bar'],
    ['greatest landing load', 'without a landing'],
    ['speed of light', 'there is no readout "speed of light"; there are: air time'],
    ['air time at apex', 'one value for the whole skill'],
    ['lateral moment at noon', '"noon" is no instant of the flight'],
    ['lateral moment at 9 s', 'outside the flight'],
    ['lateral moment in teapot', 'no shape "teapot"'],
    ['twist rate in tuck', 'not known of a held shape'],
    ['rise if ball', 'the simulation cannot assume "ball"'],
    ['', 'missing between the braces'],
  ])('{%s}: %s', (text, words) => expect(missing(text)).toContain(words));
  test('without a skill it says that none is open', () =>
    expect(readLink('air time', undefined)).toEqual({ missing: 'no skill is open to read it from' }));
});

describe('swing and landing, where a skill has them', () => {
  const times = Float64Array.of(0, 1, 2);
  const withParts: SkillResult = {
    ...full,
    swing: {
      times,
      gripLoad: Float64Array.of(500, 2000, 800),
      rate: Float64Array.of(1, 5, 4),
      centreSpeed: Float64Array.of(1, 5.5, 4),
      centreRadius: Float64Array.of(1.1, 1.1, 1),
      bottom: 1,
      release: 1.5,
    },
    landing: {
      times: Float64Array.of(0, 0.1, 0.2, 0.5),
      load: Float64Array.of(0, 3000, 1000, 9000),
      stoppingTime: 0.2,
      stoppingDistance: 0.3,
    },
  };
  test.each([
    ['grip load at bottom', 2000],
    ['grip load', 2000],
    ['grip load at release', 1400],
    ['greatest grip load', 2000],
    ['swing rate at 0.5 s', 3],
    ['mean swing radius', 1.075],
    ['greatest landing load', 3000],
    ['mean landing load', 1750],
    ['landing load at 0.05 s', 1500],
    ['stopping distance', 0.3],
  ])('{%s} is %d', (text, wanted) => expect(value(text, withParts)).toBeCloseTo(wanted, 9));
});

describe('which assumption makes the difference', () => {
  /** The full twist with its own held shape as the simulation: what remains is the moment alone. */
  const stiff: SkillReadings = { ...full, ...full.rigid };
  const lines = [
    'mass = {mass}',
    'length = {stature}',
    'inertia = mass * length^2 / 12 to kg m^2  vs {lateral moment}  if straight rod',
    'n = {angular momentum} * {air time} / (2 * pi * inertia)  vs {somersaults}  if rigid shape, no limb motion',
  ];
  const compare = (of: SkillResult, text: readonly string[] = lines, name = 'n') =>
    sheetOf(text, readLinks(text, of)).of(name).compared;

  test('of a body that keeps its shape it is the rod alone: with the true moment the ratio is 1', () => {
    const compared = compare(stiff);
    const cause = compared?.switches[compared.cause ?? -1];
    expect(cause).toMatchObject({ name: 'inertia', assumptions: ['straight rod'] });
    expect(cause?.ratio).toBeCloseTo(1, 2);
    expect(compared?.sentence).toContain('The straight rod');
  });
  test('with the true moment put in, of a body that moves it is the rigid shape', () => {
    const text = [
      'inertia = {lateral moment}',
      'n = {angular momentum} * {air time} / (2 * pi * inertia)  vs {somersaults}  if rigid shape',
    ];
    const compared = compare(readingsOf('double-back-tuck'), text);
    const cause = compared?.switches[compared.cause ?? -1];
    expect(compared?.ratio).toBeLessThan(0.8);
    expect(cause?.assumptions).toEqual(['rigid shape']);
    expect(cause?.ratio).toBeCloseTo(1, 2);
  });
  test('a line at fault by its input names that line', () => {
    const text = ['T = 1.5 s vs {air time}', 'g = 9.81 m/s^2', 'v = g * T / 2 vs {take-off speed up}'];
    const compared = compare(full, text, 'v');
    expect(compared?.sentence).toContain('The value of T');
  });
  test('every switch is a real recomputation: the estimate with the line replaced by hand', () => {
    const compared = compare(full);
    const made = compared?.switches.find((s) => s.name === 'inertia');
    const byHand = ['inertia = {lateral moment}', lines[3].replace('vs', '# vs'), lines[0], lines[1]];
    expect(made?.estimate).toBe(sheetOf(byHand, readLinks(byHand, full)).of('n').value);
  });
  test('what agrees within its ± is said to, and no cause is made up', () => {
    const text = [`T = ${value('air time') + 0.03} s +- 0.04 s vs {air time}`];
    const compared = compare(full, text, 'T');
    expect(compared?.cause).toBeUndefined();
    expect(compared?.sentence).toContain('agree');
  });
  test('a moment of a plain body tells the size that would agree', () => {
    const compared = compare(full, lines, 'inertia');
    const length = Math.sqrt((12 * value('lateral moment')) / value('mass'));
    expect(compared?.sentence).toBe(`The rod. One of ${length.toFixed(2)} m has the simulated moment.`);
  });
  test('set against a readout of another kind both units are named', () => {
    const text = ['T = 1 s vs {rise}'];
    expect(sheetOf(text, readLinks(text, full)).fault(0)).toBe('vs {rise}: s (time) and m (length) do not fit.');
  });
  test('a ratio is set against a ratio of readouts, with what each of them would be', () => {
    const text = [
      'I_s = 11 kg m^2',
      'I_t = 4 kg m^2',
      'ratio = I_s / I_t vs {lateral moment in straight} / {lateral moment in tuck}',
      'F = 1000 N vs {greatest somersault rate} * {angular momentum} * 1 rad / 1 m',
    ];
    const { of } = sheetOf(text, readLinks(text, full));
    const wanted = value('lateral moment in straight') / value('lateral moment in tuck');
    expect(of('ratio').compared).toMatchObject({ simulated: wanted });
    expect(of('F').compared?.simulated).toBeCloseTo(value('greatest somersault rate') * value('angular momentum'), 9);
  });
  test('a readout that is nothing but rounding is zero: nothing is divided by it', () => {
    const still: SkillResult = { ...full, summary: { ...full.summary, twists: 3e-17 } };
    const text = ['x = 1 / {twists}', 'n = 2 vs {twists}'];
    const { fault, of } = sheetOf(text, readLinks(text, still));
    expect(fault(0)).toBe('Divided by {twists}, which is zero.');
    expect(of('n').compared?.ratio).toBeUndefined();
  });
  test('a mean set against a peak says so, and what it would be if all were right', () => {
    const text = ['w_mean = 4 rad/s vs {greatest somersault rate}', 'w = 4 rad/s vs {greatest somersault rate}'];
    const { of } = sheetOf(text, readLinks(text, full));
    const share = (value('mean somersault rate') / value('greatest somersault rate')).toFixed(2);
    expect(of('w_mean').compared?.remark).toBe(`Mean against a peak: ${share} even if all is right.`);
    expect(of('w').compared?.remark).toBe(`Against a peak: a mean would be ${share} of it.`);
  });
  test('an assumption in words of its own is named by them', () => {
    const text = [
      'inertia = 14 kg m^2 vs {lateral moment} if the arms weigh nothing',
      'n = {angular momentum} * {air time} / (2 * pi * inertia) vs {somersaults}',
    ];
    expect(compare(stiff, text)?.sentence).toMatch(/^"the arms weigh nothing"\. /);
  });
  test('without a skill the estimate is shown, and in place of the comparison the reason', () => {
    const text = ['T = 1 s vs {air time}'];
    const line = computeSheet(text, readLinks(text, undefined)).lines[0];
    expect(line).toMatchObject({ value: 1, compared: { missing: 'no skill is open to read it from' } });
  });
});

test("body weights are those of each one's own athlete", () => {
  const link = (value: number, dimension: readonly [number, number, number], unit: string) => ({
    value,
    dimension,
    unit,
  });
  const links = {
    mass: link(66, [1, 0, 0], 'kg'),
    gravity: link(9.81, [0, 1, -2], 'm/s^2'),
    'mean landing load': link(1911, [1, 1, -2], 'N'),
  };
  const [, push] = computeSheet(['mass = 55 kg', 'push = 2000 N to bw vs {mean landing load}'], links).lines;
  expect(push).toMatchObject({
    compared: { ratio: expect.closeTo(2000 / (55 * 9.80665) / (1911 / (66 * 9.81)), 12) },
  });
});
