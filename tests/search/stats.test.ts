/** Random numbers, the normal distribution, intervals and fits, each against values from elsewhere. */
import { describe, expect, it } from 'vitest';
import { factor } from '../../sim/math/cholesky.ts';
import { normalCdf, normalQuantile } from '../../sim/math/normal.ts';
import { philoxInto, uniformsInto } from '../../sim/math/random.ts';
import { correlate, fitLinear, rank, wilson } from '../../sim/search/stats.ts';

describe('random numbers', () => {
  it('are those of Philox 4x32-10 (known answers of the authors’ Random123 library, from memory)', () => {
    const out = new Uint32Array(4);
    const hex = (): string => Array.from(out, (w) => w.toString(16).padStart(8, '0')).join(' ');
    philoxInto([0, 0, 0, 0], 0, 0, out);
    expect(hex()).toBe('6627e8d5 e169c58d bc57ac4c 9b00dbd8');
    const all = 0xffffffff;
    philoxInto([all, all, all, all], all, all, out);
    expect(hex()).toBe('408f276d 41c83b0e a20bc7c6 6d5451fd');
    // digits of pi
    philoxInto([0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344], 0xa4093822, 0x299f31d0, out);
    expect(hex()).toBe('d16cfe09 94fdcceb 5001e420 24126ea1');
  });

  it('depend on seed and number alone, and differ in either', () => {
    const draw = (seed: number, index: number, n = 5): number[] => {
      const out = new Float64Array(n);
      uniformsInto(seed, index, out);
      return [...out];
    };
    const first = draw(7, 123);
    draw(8, 5);
    expect(draw(7, 123)).toEqual(first);
    expect(draw(7, 123, 3)).toEqual(first.slice(0, 3));
    const seen = new Set<number>();
    for (const seed of [0, 1, 2 ** 32, 2 ** 40 + 3])
      for (const i of [0, 1, 2 ** 33]) for (const x of draw(seed, i)) seen.add(x);
    expect(seen.size).toBe(60);
  });

  it('spread evenly', () => {
    const n = 20000;
    const u = new Float64Array(2);
    const bins = new Float64Array(20);
    let product = 0;
    for (let i = 0; i < n; i++) {
      uniformsInto(1, i, u);
      bins[Math.floor(20 * u[0])]++;
      product += (u[0] - 0.5) * (u[1] - 0.5);
    }
    const chi = bins.reduce((sum, b) => sum + (b - n / 20) ** 2 / (n / 20), 0);
    // 19 degrees of freedom: 43.8 is the 0.1 % point
    expect(chi).toBeLessThan(43.8);
    expect(Math.abs((12 * product) / n)).toBeLessThan(4 / Math.sqrt(n));
  });
});

describe('the normal distribution', () => {
  it('has its printed quantiles', () => {
    // Abramowitz & Stegun 1964, table 26.5 and the usual 95 % point; from memory
    const rows = [
      [0.975, 1.959963984540054],
      [0.75, 0.674489750196082],
      [0.01, -2.326347874040841],
      [0.001, -3.090232306167814],
    ];
    for (const [p, x] of rows) expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(1e-14);
  });

  it('is the integral of its density, both ways', () => {
    // Simpson's rule from 0
    const integral = (x: number): number => {
      const n = 2000;
      const f = (t: number): number => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
      let sum = f(0) + f(x);
      for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * f((x * i) / n);
      return 0.5 + (sum * x) / (3 * n);
    };
    for (let x = -4.9; x < 5; x += 0.37) {
      expect(Math.abs(normalCdf(x) - integral(x))).toBeLessThan(1e-13);
      expect(Math.abs(normalQuantile(normalCdf(x)) - x)).toBeLessThan(1e-8);
    }
  });
});

describe('statistics', () => {
  it('the interval of a share holds the shares that a score test accepts', () => {
    // its ends p solve (p^ - p)^2 = z^2 p (1 - p) / n
    const z = 1.959963984540054;
    for (const [hits, n] of [
      [54, 100],
      [1, 10],
      [990, 1000],
    ])
      for (const p of wilson(hits, n))
        expect(Math.abs((hits / n - p) ** 2 - (z * z * p * (1 - p)) / n)).toBeLessThan(1e-12);
    const [low, high] = wilson(54, 100);
    expect([low.toFixed(2), high.toFixed(2)]).toEqual(['0.44', '0.63']);
    expect(wilson(0, 50)[0]).toBe(0);
    expect(wilson(50, 50)[1]).toBe(1);
  });

  it('least squares finds the plane it was given, and ignores a column that does not vary', () => {
    const n = 50;
    const u = new Float64Array(3);
    const columns = [0, 1, 2].map(() => new Float64Array(n));
    const y = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      uniformsInto(3, i, u);
      columns[0][i] = u[0];
      columns[1][i] = u[1] + 0.5 * u[0];
      columns[2][i] = 4;
      y[i] = 7 + 3 * columns[0][i] - 2 * columns[1][i];
    }
    const { slopes, explained } = fitLinear(columns, y);
    expect(slopes.map((s) => s.toFixed(9))).toEqual(['3.000000000', '-2.000000000', '0.000000000']);
    expect(explained).toBeCloseTo(1, 12);
  });

  it('ranks share ties, and rank correlation follows any rising curve', () => {
    expect([...rank([3, 1, 3, 2])]).toEqual([3.5, 1, 3.5, 2]);
    const x = [0.1, 0.5, 0.7, 2, 3];
    expect(correlate(rank(x), rank(x.map((v) => Math.exp(v))))).toBeCloseTo(1, 12);
  });

  it('a matrix that is no correlation is refused', () => {
    const R = (r: number): number[][] => [
      [1, 0.9, r],
      [0.9, 1, 0.9],
      [r, 0.9, 1],
    ];
    expect(factor(R(0.8)).flat().some(Number.isNaN)).toBe(false);
    expect(factor(R(-0.8)).flat().some(Number.isNaN)).toBe(true);
    // on the edge: two inputs that always go together
    expect(
      factor([
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });
});
