// Unit factors against NIST Special Publication 811 (Thompson & Taylor 2008), appendix B; digits from memory.
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { computeSheet } from '../../sim/estimate/compute-sheet.ts';
import { UNIT_NAMES } from '../../sim/estimate/units.ts';
import { sheetOf } from './sheet-of.ts';

const NIST: readonly (readonly [string, number, string])[] = [
  ['1 inch', 0.0254, 'm'],
  ['1 ft', 0.3048, 'm'],
  ['1 yd', 0.9144, 'm'],
  ['1 mile', 1609.344, 'm'],
  ['1 mph', 0.44704, 'm/s'],
  ['1 lb', 0.45359237, 'kg'],
  ['1 oz', 0.028349523125, 'kg'],
  ['1 stone', 6.35029318, 'kg'],
  ['1 lbf', 4.4482216152605, 'N'],
  ['1 kgf', 9.80665, 'N'],
  ['1 lbf * 1 ft', 1.3558179483314, 'J'],
  ['1 lbf * 1 in * (1 s)^2', 0.1129848290276167, 'kg m^2'],
  ['1 psi', 6894.757293168361, 'Pa'],
  ['1 hp', 745.6998715822702, 'W'],
  ['1 kcal', 4184, 'J'],
  ['1 deg', Math.PI / 180, 'rad'],
  ['1 rev', 2 * Math.PI, 'rad'],
  ['1 hour', 3600, 's'],
  ['1 bar', 1e5, 'Pa'],
];
/** Some of mathjs's factors hold 11 figures (hp, psi: 6e-11 off). */
const FIGURES = 1e-10;

describe('unit factors of NIST SP 811', () => {
  test.each(NIST)('%s is %d %s', (typed, wanted, unit) =>
    expect(Math.abs(sheetOf([`x = ${typed} to ${unit}`]).value('x') / wanted - 1)).toBeLessThan(FIGURES),
  );
});

test('the short list of units is as the whole of mathjs has them', () => {
  const mathjs = create(all);
  const own = new Set(['rev', 'mph', 'kcal', 'lb', 'min']);
  for (const name of UNIT_NAMES.filter((n) => !own.has(n))) {
    const theirs = mathjs.unit(1, name) as unknown as { value: number };
    expect([name, sheetOf([`x = 1 ${name}`]).of('x').value]).toEqual([name, theirs.value]);
  }
});

test('where feet and pounds are chosen, results are in them and mean the same', () => {
  const lines = [
    'mass = 54 kg',
    'height = 1.62 m',
    'I_rod = mass * height^2 / 12 to kg m^2',
    'w = 2 rev/s',
    'v = 3 mph',
  ];
  const { lines: found } = computeSheet(lines, {}, 1, 'imperial');
  const shown = found.map((l) => (l.kind === 'quantity' ? [l.unit.name, l.value / l.unit.factor] : []));
  expect(shown.map(([unit]) => unit)).toEqual(['lb', 'in', 'lb ft^2', 'rev/s', 'mph']);
  expect(shown[0][1]).toBeCloseTo(119.0496, 3);
  expect(shown[1][1]).toBeCloseTo(63.7795, 3);
  expect(found[2]).toMatchObject({ numbers: '119 lb × (63.78 in)² ÷ 12' });
});
