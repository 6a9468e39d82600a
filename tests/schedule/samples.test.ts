/**
 * Laws of sampled angles. Independent of the banded solver: the smoother is checked against the definition (a dense
 * solve of the penalised least squares), the trace against the dense influence matrix.
 */
import { describe, expect, it } from 'vitest';
import { ScheduleValueError } from '../../sim/schedule/errors.ts';
import type { Schedule } from '../../sim/schedule/schedule.ts';
import { makeSmoother, splineAt } from '../../sim/schedule/smooth-spline.ts';
import { cutoffOfWeight, type SmoothingCriterion, weightOfCutoff } from '../../sim/schedule/smoothing.ts';
import { angleOf, armsPose } from './shoulder-body.ts';
import { block, compile, key, sampleAt } from './specs.ts';

const ELBOW = 7;
const RATE = 240;
const N = 300;

/** Normal deviates of a fixed seed (mulberry32 and Box-Muller). */
function makeNoise(seed: number): () => number {
  let s = seed;
  const uniform = (): number => {
    s = (s + 0x6d2b79f5) | 0;
    let z = Math.imul(s ^ (s >>> 15), 1 | s);
    z = (z + Math.imul(z ^ (z >>> 7), 61 | z)) ^ z;
    return ((z ^ (z >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const signal = (t: number): number => 1 + 0.8 * Math.sin(2 * Math.PI * 1.1 * t) + 0.3 * Math.cos(2 * Math.PI * 2.3 * t);
const slope = (t: number): number =>
  0.8 * 2 * Math.PI * 1.1 * Math.cos(2 * Math.PI * 1.1 * t) - 0.3 * 2 * Math.PI * 2.3 * Math.sin(2 * Math.PI * 2.3 * t);

function noisy(sigma: number, seed: number, n = N): number[] {
  const noise = makeNoise(seed);
  return Array.from({ length: n }, (_, i) => signal(i / RATE) + sigma * noise());
}

function smooth(values: readonly number[], smoothing: SmoothingCriterion, start = 0): Schedule {
  return compile({ sampled: [{ angle: angleOf('elbowFlexionR'), start, rate: RATE, values }], smoothing });
}

/** Gaussian elimination with pivoting; solves m x = rhs for several right sides. */
function solveDense(m: number[][], rhs: number[][]): number[][] {
  const n = m.length;
  const a = m.map((row, i) => [...row, ...rhs[i]]);
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r][c]) > Math.abs(a[p][c])) p = r;
    [a[c], a[p]] = [a[p], a[c]];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const k = a[r][c] / a[c][c];
      for (let j = c; j < a[r].length; j++) a[r][j] -= k * a[c][j];
    }
  }
  return a.map((row, i) => row.slice(n).map((v) => v / row[i]));
}

/** Quintic B-spline centred on 0 with whole knots. */
const truncated = (x: number, p: number): number => (x > 0 ? x ** p : 0);
const quadratic = (x: number): number => [1, -3, 3, -1].reduce((s, k, i) => s + (k * truncated(x + 1.5 - i, 2)) / 2, 0);
const quintic = (x: number): number =>
  [1, -6, 15, -20, 15, -6, 1].reduce((s, k, i) => s + (k * truncated(x + 3 - i, 5)) / 120, 0);

/** Fit of the penalised problem by B-splines on all n + 4 coefficients: no natural ends assumed, penalty by quadrature. */
function denseFit(n: number, a: number): number[][] {
  const size = n + 4;
  const B = Array.from({ length: n }, (_, i) => Array.from({ length: size }, (_, j) => quintic(i - (j - 2))));
  const penalty = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  // third derivative of B_j: third difference of quadratics centred at j + 1.5 - k
  const third = (j: number, x: number): number =>
    [1, -3, 3, -1].reduce((s, k, i) => s + k * quadratic(x - (j - 2) + 1.5 - i), 0);
  const gauss = [-0.7745966692414834, 0, 0.7745966692414834];
  const weight = [5 / 18, 8 / 18, 5 / 18];
  for (let i = 0; i < n - 1; i++)
    gauss.forEach((g, k) => {
      const x = i + 0.5 + g / 2;
      const d = Array.from({ length: size }, (_, j) => third(j, x));
      for (let p = 0; p < size; p++) for (let q = 0; q < size; q++) penalty[p][q] += weight[k] * d[p] * d[q];
    });
  const m = penalty.map((row, p) => row.map((v, q) => a * v + B.reduce((s, b) => s + b[p] * b[q], 0)));
  const C = solveDense(
    m,
    Array.from({ length: size }, (_, p) => B.map((b) => b[p])),
  );
  return B.map((b) => Array.from({ length: n }, (_, k) => b.reduce((s, v, p) => s + v * C[p][k], 0)));
}

describe('the smoothing spline', () => {
  it('is the minimiser of its definition, and its cross-validation that of the dense influence matrix', () => {
    const n = 24;
    const y = Float64Array.from(noisy(0.1, 3, n));
    for (const a of [1e-2, 1, 30, 1e4]) {
      const A = denseFit(n, a);
      const s = makeSmoother(y, new Map());
      const c = s.calcCoefs(a);
      const g = A.map((row) => row.reduce((sum, v, k) => sum + v * y[k], 0));
      for (let i = 0; i < n; i++) expect(Math.abs(splineAt(c, i) - g[i])).toBeLessThan(1e-9);
      const trace = A.reduce((sum, row, i) => sum + 1 - row[i], 0);
      const mean = g.reduce((sum, v, i) => sum + (y[i] - v) ** 2, 0) / n;
      expect(s.calcRms(a)).toBeCloseTo(Math.sqrt(mean), 9);
      // measured agreement 1e-9
      expect(s.calcGcv(a) / (mean / (trace / n) ** 2)).toBeCloseTo(1, 6);
    }
  });

  it('keeps a parabola whatever the weight', () => {
    const values = Array.from({ length: 40 }, (_, i) => 0.3 - 0.02 * i + 0.001 * i * i);
    const s = makeSmoother(Float64Array.from(values), new Map());
    for (const a of [1e-4, 1, 1e8]) {
      const c = s.calcCoefs(a);
      values.forEach((v, i) => {
        expect(Math.abs(splineAt(c, i) - v)).toBeLessThan(1e-12);
      });
    }
  });
});

describe('sampled angles', () => {
  it('by cross-validation a noisy signal comes back with an error below half the noise, and so does its rate', () => {
    for (const [sigma, seed] of [
      [0.02, 1],
      [0.02, 2],
      [0.1, 3],
    ]) {
      const s = smooth(noisy(sigma, seed), { kind: 'gcv' });
      let error = 0;
      let rateError = 0;
      let rate = 0;
      let count = 0;
      for (let i = 0; i < N; i++) {
        const t = i / RATE;
        error += (sampleAt(s, t).q[ELBOW] - signal(t)) ** 2 / N;
        if (i < 20 || i > N - 20) continue;
        rateError += (sampleAt(s, t).qd[ELBOW] - slope(t)) ** 2;
        rate += slope(t) ** 2;
        count++;
      }
      expect(Math.sqrt(error)).toBeLessThan(sigma / 2);
      expect(Math.sqrt(rateError / rate)).toBeLessThan(sigma === 0.1 ? 0.15 : 0.05);
      expect(count).toBeGreaterThan(200);
    }
  });

  it('by a stated noise the residual has that root mean square within 1 %', () => {
    const values = noisy(0.03, 7);
    for (const rms of [0.01, 0.03, 0.08]) {
      const s = smooth(values, { kind: 'noise', rms });
      const sum = values.reduce((v, y, i) => v + (y - sampleAt(s, i / RATE).q[ELBOW]) ** 2, 0);
      expect(Math.sqrt(sum / N) / rms).toBeGreaterThan(0.99);
      expect(Math.sqrt(sum / N) / rms).toBeLessThan(1.01);
    }
    const s = smooth(values, { kind: 'noise', rms: 0 });
    values.forEach((y, i) => {
      expect(sampleAt(s, i / RATE).q[ELBOW]).toBeCloseTo(y, 3);
    });
  });

  it('by a cut-off 0.707 of an oscillation of that frequency is left, and nothing is taken out by none', () => {
    const n = 1200;
    for (const [hz, at, want] of [
      [8, 8, Math.SQRT1_2],
      // 1 / (1 + a w^6) with a w^6 = (sqrt(2) - 1) (at / hz)^6
      [8, 4, 1 / (1 + (Math.SQRT2 - 1) / 64)],
      [8, 16, 1 / (1 + (Math.SQRT2 - 1) * 64)],
      [30, 30, Math.SQRT1_2],
    ]) {
      const values = Array.from({ length: n }, (_, i) => Math.sin((2 * Math.PI * at * i) / RATE));
      const s = smooth(values, { kind: 'cutoff', hz });
      let product = 0;
      let square = 0;
      for (let i = 200; i < n - 200; i++) {
        product += values[i] * sampleAt(s, i / RATE).q[ELBOW];
        square += values[i] ** 2;
      }
      // a wave sampled 15 times a period is not quite the slow one of the formula: measured 1.8 % of 0.036
      expect(product / square / want).toBeCloseTo(1, at > hz ? 1 : 3);
    }
    for (const hz of [1, 6, 25, 100]) expect(cutoffOfWeight(weightOfCutoff(hz, RATE), RATE)).toBeCloseTo(hz, 6);
    expect(cutoffOfWeight(1e-5, RATE)).toBe(Number.POSITIVE_INFINITY);
    const values = noisy(0.05, 2);
    const s = smooth(values, { kind: 'none' });
    values.forEach((y, i) => {
      expect(sampleAt(s, i / RATE).q[ELBOW]).toBeCloseTo(y, 10);
    });
  });

  it('samples with a criterion of their own keep to it', () => {
    const values = noisy(0.05, 2);
    const sample = { angle: angleOf('elbowFlexionR'), start: 0, rate: RATE, values };
    const own = compile({ sampled: [{ ...sample, smoothing: { kind: 'none' } }], smoothing: { kind: 'gcv' } });
    expect(sampleAt(own, 10 / RATE).q[ELBOW]).toBeCloseTo(values[10], 10);
    const all = compile({ sampled: [sample], smoothing: { kind: 'gcv' } });
    expect(Math.abs(sampleAt(all, 10 / RATE).q[ELBOW] - values[10])).toBeGreaterThan(1e-3);
  });

  it('q and q are continuous everywhere, rest outside, and are derivatives of each other', () => {
    const s = smooth(noisy(0.02, 4), { kind: 'gcv' }, 0.1);
    const end = 0.1 + (N - 1) / RATE;
    expect(s.breaks.length).toBe(4);
    [0.05, 0.1, end, end + 0.05].forEach((t, i) => {
      expect(s.breaks[i]).toBeCloseTo(t, 12);
    });
    const read = (t: number): number[] => {
      const { q, qd, qdd } = sampleAt(s, t);
      return [q[ELBOW], qd[ELBOW], qdd[ELBOW]];
    };
    const knots = [...s.breaks, ...Array.from({ length: N - 2 }, (_, i) => 0.1 + (i + 1) / RATE)];
    const e = 1e-10;
    for (const t of knots) {
      const before = read(t - e);
      const after = read(t + e);
      for (let k = 0; k < 3; k++) expect(Math.abs(after[k] - before[k])).toBeLessThan(1e-5);
    }
    for (const t of [0.06, 0.0873, 0.1234, 0.5001, 0.9077, end + 0.013, end + 0.04]) {
      const h = 1e-4;
      const [, v, a] = read(t);
      for (const [k, want] of [
        [0, v],
        [1, a],
      ]) {
        const d = (read(t - 2 * h)[k] - 8 * read(t - h)[k] + 8 * read(t + h)[k] - read(t + 2 * h)[k]) / (12 * h);
        expect(Math.abs(d - want)).toBeLessThan(1e-6 * (1 + Math.abs(want)));
      }
    }
    expect(read(-3)).toEqual(read(0.049));
    expect(read(-3).slice(1)).toEqual([0, 0]);
    expect(read(99).slice(1)).toEqual([0, 0]);
    expect(s.moving).toEqual([[s.breaks[0], s.breaks[3]]]);
  });

  it('equal samples are rest; the other angles keep their blocks', () => {
    const blocks = [
      block('hang', 0, 0.2, armsPose(0, 0, 0, 10)),
      block('up', 0.5, 1, armsPose(90, 180, 0, 40), 'front'),
    ];
    const sampled = [
      { angle: angleOf('elbowFlexionR'), start: 0, rate: RATE, values: new Array<number>(50).fill(0.7) },
    ];
    const s = compile({ blocks, sampled });
    for (const t of [-1, 0.1, 0.35, 0.9]) expect(sampleAt(s, t).q[ELBOW]).toBe(0.7);
    expect(s.breaks).toEqual([0.2, 0.5]);
    expect(sampleAt(s, 0.35).qd[3]).toBeGreaterThan(0);
  });

  it('refuses what cannot be smoothed, by name', () => {
    const angle = angleOf('elbowFlexionR');
    const values = noisy(0.02, 1);
    const one = { angle, start: 0, rate: RATE, values };
    const refuse = (part: Parameters<typeof compile>[0], said: RegExp): void => {
      expect(() => compile(part)).toThrow(ScheduleValueError);
      expect(() => compile(part)).toThrow(said);
    };
    refuse({ sampled: [one], keys: [key('elbowFlexionR', 0.1, 5)] }, /elbowFlexionR.*not both/);
    refuse({ sampled: [one, one] }, /one list for one angle/);
    refuse({ sampled: [{ ...one, values: values.slice(0, 5) }] }, /at least 6/);
    refuse({ sampled: [{ ...one, rate: 0 }] }, /rate of the samples of elbowFlexionR.*above 0/);
    refuse({ sampled: [{ ...one, start: Number.NaN }] }, /start of the samples/);
    refuse(
      { sampled: [{ ...one, values: values.map((v, i) => (i === 8 ? Number.POSITIVE_INFINITY : v)) }] },
      /sample 9 of elbowFlexionR/,
    );
    refuse({ sampled: [{ ...one, angle: 99 }] }, /angle of samples/);
    refuse({ sampled: [one], smoothing: { kind: 'noise', rms: -1 } }, /noise of the samples/);
    expect(() => compile({ sampled: [one], smoothing: { kind: 'cutoff', hz: 120 } })).toThrow(
      /cut-off of the samples of elbowFlexionR: 120 is not possible; allowed: 0.696 to below 120 Hz/,
    );
  });
});
