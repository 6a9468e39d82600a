// A sheet: names, formulas, units, order, and what is said when a line is wrong.
import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { sheetOf } from './sheet-of.ts';

const mathjs = create(all);

describe('a sheet', () => {
  const lines = [
    'energy_flip = 0.5 * inertia_flip * (2 * pi * 2 / airtime)^2 to J',
    'inertia_flip = mass * radius^2 / 2',
    'mass = 55 kg',
    'radius = 0.5 m',
    'airtime = 1.125 s',
    'height = 5 ft',
    'energy = mass * 9.81 m/s^2 * height to J',
  ];

  test('computes what mathjs computes of the same text, line by line', () => {
    const scope: Record<string, unknown> = {};
    // mathjs wants them in order
    for (const line of [...lines.slice(2), lines[1], lines[0]].sort(
      (a, b) => Number(a.startsWith('en')) - Number(b.startsWith('en')),
    ))
      mathjs.evaluate(line, scope);
    const sheet = sheetOf(lines);
    expect(sheet.value('energy_flip')).toBeCloseTo(
      (mathjs.evaluate('energy_flip', scope) as { toNumber(unit: string): number }).toNumber('J'),
      9,
    );
    expect(sheet.value('energy')).toBeCloseTo(
      (mathjs.evaluate('energy', scope) as { toNumber(unit: string): number }).toNumber('J'),
      9,
    );
  });

  test('does not depend on the order of its lines', () => {
    const expected = sheetOf(lines).of('energy_flip').value;
    fc.assert(
      fc.property(fc.shuffledSubarray(lines, { minLength: lines.length }), (order) => {
        const sheet = sheetOf(order);
        expect(sheet.faults).toEqual([]);
        expect(sheet.of('energy_flip').value).toBe(expected);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  test('names a circle by all its lines, and leaves the others as they are', () => {
    const sheet = sheetOf(['a = b + 1', 'b = 2 * c', 'c = a / 3', 'd = 4', 'e = a + d', 'f = f']);
    for (const line of [0, 1, 2]) expect(sheet.fault(line)).toBe('A circle: a needs b, b needs c, c needs a.');
    expect(sheet.fault(5)).toBe('f needs itself.');
    expect(sheet.fault(4)).toBe('It needs a, and line 1 is not computed.');
    expect(sheet.of('d').value).toBe(4);
  });

  test.each([
    ['x = 3 J + 2 N', 'J (energy or torque) and N (force) cannot be added.'],
    ['x = 3 J - 2 N', 'N (force) cannot be subtracted from J (energy or torque).'],
    ['x = 55 kg + 5 ft', 'kg (mass) and ft (length) cannot be added.'],
    ['x = 5 ft to kg', 'x is a length, in ft; it was asked for in kg, a mass.'],
    ['x = 5 m +- 2 s', 'The uncertainty: s (time) and m (length) do not fit.'],
    ['x = sin(3 m)', 'sin takes a plain number or an angle; here it is m (length).'],
    ['x = 2 ^ (1 m)', 'An exponent is a plain number; here it is m (length).'],
    ['x = max(1 m, 2 s)', 'max of m (length) and s (time) has no meaning.'],
  ])('%s is an error that names both', (line, message) => expect(sheetOf([line]).fault(0)).toBe(message));

  test('imperial and metric mix', () => {
    expect(sheetOf(['x = 5 ft + 10 cm to m']).value('x')).toBeCloseTo(1.624, 12);
    expect(sheetOf(['x = 6 in to cm']).value('x')).toBeCloseTo(15.24, 12);
    expect(sheetOf(['x = 100 lbf * 2 ft to J']).value('x')).toBeCloseTo(271.16358966, 7);
  });

  test('a revolution is an angle, and an angle is a plain number', () => {
    expect(sheetOf(['x = 1.5 rev/s to rad/s']).value('x')).toBeCloseTo(3 * Math.PI, 12);
    expect(sheetOf(['x = 90 deg * 2 m']).value('x')).toBeCloseTo(Math.PI, 12);
    expect(sheetOf(['x = sin(30 deg)']).value('x')).toBeCloseTo(0.5, 12);
  });

  test('a result without a unit asked for is given in one that has a name', () => {
    expect(sheetOf(['x = 2 kg * 3 m/s^2']).of('x').unit.name).toBe('N');
    expect(sheetOf(['x = 5 ft']).of('x').unit.name).toBe('ft');
    expect(sheetOf(['x = 2 kg * (3 m)^2 / 4 s']).of('x').unit.name).toBe('kg m^2/s');
  });

  test('g, h, T, r, v, H and t are free for names', () => {
    const sheet = sheetOf(['g = 9.81 m/s^2', 'T = 2 s', 'h = g * T^2 / 8', 'H = 3', 'v = g * T', 'r = 1 m', 't = T']);
    expect(sheet.faults).toEqual([]);
    expect(sheet.value('h')).toBeCloseTo(4.905, 12);
  });

  test.each([
    ['m = 3', '"m" is a unit'],
    ['x 3', 'the = is missing'],
    ['x = ', 'formula is missing'],
    ['x = 1 = 2', 'one ='],
    ['2x = 1', 'no name'],
    ['pi = 3', 'a meaning of its own'],
    ['x = y', '"y" is neither a line of this sheet nor a unit'],
    ['x = 3 +', 'missing after'],
    ['x = foo(3)', '"foo" is no function'],
    ['x = 1 / 0', 'divided by 0'],
    ['x = 2 m to furlong', '"furlong" is no unit'],
    ['x = 3 vs air time', 'in braces'],
    ['x = {air time}', 'no skill is open'],
    ['x = (2 m)^30', 'powers of the units'],
    ['draw egg for x', '"egg" is no plain body'],
  ])('%s is reported: %s', (line, words) => expect(sheetOf([line]).fault(0)).toContain(words));

  test('a name given twice is reported in the second line, with the first', () => {
    expect(sheetOf(['a = 1', 'a = 2']).fault(1)).toContain('line 1 already');
    expect(sheetOf(['a = 1', 'a = 2']).of('a').value).toBe(1);
  });

  test.each([
    ['y = 48.9 * a / (2 pi b)', '48.9 × 2 ÷ (2 × π × 3)'],
    ['y = a - (b - a)', '2 − (3 − 2)'],
    ['y = (a + b)^2 / g', '(2 + 3)² ÷ 9.807'],
    ['y = -(a + b) * a', '(−(2 + 3)) × 2'],
    ['y = 1 / (1/a - 1/b)', '1 ÷ (1 ÷ 2 − 1 ÷ 3)'],
  ])('%s is written with its numbers: %s', (line, numbers) =>
    expect(sheetOf(['a = 2', 'b = 3', line]).of('y').numbers).toBe(numbers),
  );

  test('words, notes and empty lines are no formulas', () => {
    const { result, faults } = sheetOf(['# Known beforehand', '', 'mass = 55 kg # scales']);
    expect(faults).toEqual([]);
    expect(result.lines.map((l) => l.kind)).toEqual(['words', 'words', 'quantity']);
    expect(result.lines[2]).toMatchObject({ note: 'scales' });
  });
});

describe('the uncertainty is read before the parser sees the text', () => {
  test('to mathjs alone 0.15 m +- 0.02 m is a difference', () => {
    expect((mathjs.evaluate('0.15 m +- 0.02 m') as { toNumber(unit: string): number }).toNumber('m')).toBeCloseTo(0.13);
  });
  test.each(['x = 0.15 m +- 0.02 m', 'x = 0.15 m ± 2 cm', 'x = 0.15 m+-0.02 m', 'x = 15 cm +- 2 cm to m'])(
    '%s is 0.15 m, known to 0.02 m',
    (line) => {
      const x = sheetOf([line]).of('x');
      expect(x.value).toBeCloseTo(0.15, 12);
      expect(x.ownSpread).toBeCloseTo(0.02, 12);
      expect([x.low, x.high]).toEqual([expect.closeTo(0.13, 12), expect.closeTo(0.17, 12)]);
    },
  );
  test('a share of the value', () => expect(sheetOf(['x = 54 kg +- 2 %']).of('x').ownSpread).toBeCloseTo(1.08, 12));
  test('a + -b with a space between is a difference', () =>
    expect(sheetOf(['x = 0.15 m + -0.02 m']).of('x')).toMatchObject({ value: expect.closeTo(0.13, 12) }));
  test.each(['x = 2 * (1 m +- 2 m)', 'x = 1 +- 2 +- 3', 'x = +- 2', 'x = 1 +-'])('%s is refused', (line) =>
    expect(sheetOf([line]).fault(0)).toContain('"+-"'),
  );
});
