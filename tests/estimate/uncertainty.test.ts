// Uncertainty carried in two ways, by range and by draws, against what is known without either.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRAWS, drawColumn } from '../../sim/estimate/samples.ts';
import { normalCdf, normalQuantile } from '../../sim/math/normal.ts';
import { sheetOf } from './sheet-of.ts';

/** Of one end of 95 % of the draws, relative; the worst of 59 seeds: 0.047 (a sum of two). */
const HALF_WIDTH = 0.05;

describe('what is correlated stays so', () => {
  test.each([
    ['the quantity itself', 'y = x - x'],
    ['a line that uses it twice', 'y = a - a'],
    ['both ways round', 'y = x + x - 2 * x'],
  ])('%s cancels: %s is 0 in every draw and every case', (_, line) => {
    const y = sheetOf(['x = 3 m +- 1 m', 'a = x * x / (1 m) + x', line]).of('y');
    expect(y.value).toBe(0);
    for (const end of [y.low, y.high, y.drawLow, y.drawHigh]) expect(end).toBeCloseTo(0, 12);
  });

  test('x - z of two like quantities does not', () => {
    const y = sheetOf(['x = 3 m +- 1 m', 'z = 3 m +- 1 m', 'y = x - z']).of('y');
    expect([y.low, y.high]).toEqual([-2, 2]);
    // half widths of independent normal quantities add in squares
    for (const end of [y.drawHigh, -(y.drawLow ?? 0)]) {
      expect(end).toBeGreaterThan(Math.SQRT2 * (1 - HALF_WIDTH));
      expect(end).toBeLessThan(Math.SQRT2 * (1 + HALF_WIDTH));
    }
  });

  test('x * x is not the product of two like quantities', () => {
    const lines = ['x = 10 +- 1', 'z = 10 +- 1', 'square = x * x', 'product = x * z'];
    const half = (name: string): number => {
      const { drawLow = 0, drawHigh = 0 } = sheetOf(lines).of(name);
      return (drawHigh - drawLow) / 2;
    };
    expect(half('square')).toBeGreaterThan(20 * (1 - HALF_WIDTH));
    expect(half('square')).toBeLessThan(20 * (1 + HALF_WIDTH));
    expect(half('product')).toBeGreaterThan(10 * Math.SQRT2 * (1 - HALF_WIDTH));
    expect(half('product')).toBeLessThan(10 * Math.SQRT2 * (1 + HALF_WIDTH));
  });

  test('a mass that cancels leaves the draws as if it were not there', () => {
    const y = sheetOf(['m_1 = 50 kg +- 20 kg', 'h = 2 m +- 0.1 m', 'E = m_1 * h', 'y = E / m_1']).of('y');
    expect(y.drawLow).toBeCloseTo(1.9, 4);
    expect(y.drawHigh).toBeCloseTo(2.1, 4);
  });
});

describe('ranges', () => {
  const formulas = [
    'x * z - x / z',
    'x ^ 2 - 3 * x + z',
    'sin(x rad) * z',
    'sqrt(x * x + z * z)',
    'abs(x - z) + max(x, z)',
    'exp(x / 4) / (2 + cos(z rad))',
    'atan(x * z) + ln(1 + x ^ 2)',
    '(x - 2) ^ 3 * z ^ -2',
    'cbrt(x) + acos(z / 9) + log10(z) + min(x, 1) + asin(x / 20) + tan(x rad / 9)',
  ];
  test.each(formulas)('hold %s wherever its quantities lie within their ±', (formula) => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: 1.5, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (x, z, s, dx, dz) => {
          const within = sheetOf([
            `x = ${x.toFixed(9)} +- ${s.toFixed(9)}`,
            `z = ${z.toFixed(9)} +- ${s.toFixed(9)}`,
            `y = ${formula}`,
          ]).of('y');
          const [X, Z] = [
            Number(x.toFixed(9)) + dx * Number(s.toFixed(9)),
            Number(z.toFixed(9)) + dz * Number(s.toFixed(9)),
          ];
          const there = sheetOf([`x = ${X.toFixed(15)}`, `z = ${Z.toFixed(15)}`, `y = ${formula}`]).of('y').value;
          const slack = 1e-9 * (1 + Math.abs(there));
          expect(there).toBeGreaterThanOrEqual((within.low ?? Number.NaN) - slack);
          expect(there).toBeLessThanOrEqual((within.high ?? Number.NaN) + slack);
        },
      ),
      { seed: 11, numRuns: 120 },
    );
  });

  test('are exact where every quantity pulls one way', () => {
    const y = sheetOf(['m_1 = 55 kg +- 5 kg', 'r = 0.5 m +- 0.1 m', 'T = 1 s +- 0.2 s', 'y = m_1 * r^2 / T^2']).of('y');
    expect(y.low).toBeCloseTo((50 * 0.16) / 1.44, 12);
    expect(y.high).toBeCloseTo((60 * 0.36) / 0.64, 12);
  });

  test('a divisor that may be 0 leaves no bound, and says so rather than a number', () => {
    const y = sheetOf(['x = 1 +- 2', 'y = 1 / x']).of('y');
    expect([y.low, y.high]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });

  test('the range holds the draws of quantities that do not leave their ±', () => {
    const y = sheetOf(['x = 3 +- 1', 'z = 4 +- 1', 'y = x * z']).of('y');
    expect(y.low).toBeLessThanOrEqual(y.drawLow ?? 0);
    expect(y.high).toBeGreaterThanOrEqual(y.drawHigh ?? 0);
  });
});

describe('draws', () => {
  test('the same seed gives the same draws, another one others', () => {
    const lines = ['x = 3 +- 1', 'z = 4 +- 1', 'y = x * z'];
    expect(sheetOf(lines, {}, 7).of('y')).toEqual(sheetOf(lines, {}, 7).of('y'));
    expect(sheetOf(lines, {}, 7).of('y').drawLow).not.toBe(sheetOf(lines, {}, 8).of('y').drawLow);
  });
  test('two quantities are drawn apart: no correlation beyond chance', () => {
    const [a, b] = [drawColumn(1), drawColumn(2)];
    let [ab, aa, bb] = [0, 0, 0];
    for (let i = 0; i < DRAWS; i++) {
      ab += a[i] * b[i];
      aa += a[i] ** 2;
      bb += b[i] ** 2;
    }
    expect(Math.abs(ab / Math.sqrt(aa * bb))).toBeLessThan(0.1);
  });
  test('95 % of a quantity lies within its ±', () => {
    const inside = drawColumn(3).filter((x) => Math.abs(x) <= 1).length / DRAWS;
    expect(Math.abs(inside - 0.95)).toBeLessThan(0.001);
  });
  // Abramowitz & Stegun 1964, table 26.1 (from memory)
  test('the normal distribution, its values', () => {
    expect(normalCdf(1)).toBeCloseTo(0.8413447460685429, 12);
    expect(normalCdf(-1.959963984540054)).toBeCloseTo(0.025, 12);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 10);
  });
  test('off by a factor of two becomes a number', () => {
    const y = sheetOf(['x = 1 +- 0.1', 'y = exp(x * ln(2) * 10) / exp(ln(2) * 10)']).of('y');
    expect(y.drawHigh).toBeCloseTo(2, 2);
    expect(y.drawLow).toBeCloseTo(0.5, 2);
  });
});
