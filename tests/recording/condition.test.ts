// A recording is made fit for a flight: gaps, shoulders at their poles, smoothness by a frequency, noise that repeats.
import { describe, expect, it } from 'vitest';
import { DEG, RAD } from '../../sim/math/angles.ts';
import { conditionMotion } from '../../sim/recording/condition.ts';
import { fillGaps } from '../../sim/recording/gaps.ts';
import { isNoiseCorrelated } from '../../sim/recording/noise-colour.ts';
import { calcRecordedMomentum } from '../../sim/recording/recorded-momentum.ts';
import { clearPoles } from '../../sim/recording/shoulder-gauge.ts';
import { smoothSeries } from '../../sim/recording/smooth-series.ts';
import { angleIndex, flightOf, normals, poseFlight, wholeSpan } from './posed-flight.ts';

describe('gaps', () => {
  const sine = (i: number): number => Math.sin(i / 12);
  it('a short one comes back as it was, a long one stays, the ends are not made up', () => {
    const y = Float64Array.from({ length: 100 }, (_, i) =>
      i < 3 || (i > 30 && i < 38) || (i > 60 && i < 90) ? Number.NaN : sine(i),
    );
    expect(fillGaps(y, 1, [0], 10)).toEqual([
      { from: 0, rows: 3, isFilled: false },
      { from: 31, rows: 7, isFilled: true },
      { from: 61, rows: 29, isFilled: false },
    ]);
    // measured 4e-4
    for (let i = 31; i < 38; i++) expect(Math.abs(y[i] - sine(i))).toBeLessThan(1e-3);
    expect(y[0]).toBeNaN();
    expect(y[70]).toBeNaN();
  });
  it('of a point all three coordinates are filled together', () => {
    const p = Float64Array.from({ length: 30 }, (_, i) => i);
    p[13] = Number.NaN;
    expect(fillGaps(p, 3, [0, 1, 2], 2)).toEqual([{ from: 4, rows: 1, isFilled: true }]);
    expect(p[13]).toBeCloseTo(13, 12);
  });
});

describe('noise that repeats', () => {
  const flight = flightOf('trampoline-double-tuck');
  const posed = poseFlight(flight, 240);
  const na = posed.body.angles.length;
  const hip = angleIndex(posed.body, 'hipFlexionL');
  const withNoise = (seed: number, repeat: number): Float64Array =>
    Float64Array.from(normals(seed, 0, posed.n, repeat), (x, i) => posed.angles[na * i + hip] + x * RAD);

  it('is left in by cross-validation, thousands of deg/s2 of it, and is said', () => {
    const truth = smoothSeries(
      withNoise(0, 0).map((_, i) => posed.angles[na * i + hip]),
      240,
      { kind: 'none' },
    );
    const errorOf = (y: Float64Array, by: Parameters<typeof smoothSeries>[2]): number => {
      const { acceleration } = smoothSeries(y, 240, by);
      let sum = 0;
      for (let i = 20; i < posed.n - 20; i++) sum += (acceleration[i] - truth.acceleration[i]) ** 2;
      return Math.sqrt(sum / (posed.n - 40)) * DEG;
    };
    // measured: 580 by noise of single samples, 16700 by noise of which .9 repeats, 1760 of that by a cut-off of 8 Hz
    expect(errorOf(withNoise(4, 0), { kind: 'gcv' })).toBeLessThan(1200);
    expect(errorOf(withNoise(4, 0.9), { kind: 'gcv' })).toBeGreaterThan(5000);
    expect(errorOf(withNoise(4, 0.9), { kind: 'cutoff', hz: 8 })).toBeLessThan(3000);
    expect(smoothSeries(withNoise(4, 0.9), 240, { kind: 'gcv' }).report.isCorrelated).toBe(true);
    expect(smoothSeries(withNoise(4, 0), 240, { kind: 'gcv' }).report.isCorrelated).toBe(false);
  });

  it('is found in nearly all of 20 series, and in none of 20 where it is not', () => {
    const count = (repeat: number): number =>
      Array.from({ length: 20 }, (_, seed) => isNoiseCorrelated(withNoise(seed, repeat), 240)).filter(Boolean).length;
    expect(count(0)).toBe(0);
    expect(count(0.9)).toBeGreaterThanOrEqual(19);
  });
});

describe('smoothing', () => {
  it('a wave at the cut-off keeps 0.707, and the report has the frequency', () => {
    const y = Float64Array.from({ length: 1000 }, (_, i) => Math.sin((2 * Math.PI * 10 * i) / 200));
    const { value, report } = smoothSeries(y, 200, { kind: 'cutoff', hz: 10 });
    expect(report.cutoffHz).toBeCloseTo(10, 6);
    let kept = 0;
    for (let i = 300; i < 700; i++) kept = Math.max(kept, Math.abs(value[i]));
    expect(kept).toBeCloseTo(Math.SQRT1_2, 3);
    expect(() => smoothSeries(y, 200, { kind: 'cutoff', hz: 100 })).toThrow(/below 100 Hz/);
  });

  it('noise is estimated from what is taken out', () => {
    const y = Float64Array.from(normals(3, 1, 400), (x, i) => Math.sin(i / 40) + 0.02 * x);
    expect(smoothSeries(y, 240, { kind: 'gcv' }).report.noise).toBeCloseTo(0.02, 2);
  });
});

describe('shoulders', () => {
  const body = flightOf('double-back-tuck').body;
  const na = body.angles.length;
  const [{ plane, elevation, turn }] = body.shoulders;
  /** an arm that swings forward through hanging, to 40 deg and back to -40, seen with 1 deg of noise of its direction */
  const rows = 200;
  const angles = new Float64Array(na * rows);
  const [a, b] = [normals(1, 0, rows), normals(1, 1, rows)];
  for (let i = 0; i < rows; i++) {
    const swing = 40 * RAD * Math.cos((Math.PI * i) / (rows - 1));
    // direction of the arm from above: forward and outward
    const [x, z] = [Math.sin(swing) + a[i] * RAD, b[i] * RAD];
    angles[na * i + plane] = Math.atan2(x, z);
    angles[na * i + elevation] = Math.asin(Math.hypot(x, z));
  }

  it('an arm that hangs has a quiet plane, and swings through with its elevation below 0', () => {
    const out = angles.slice();
    clearPoles(body, out);
    const step = (k: number): number => {
      let most = 0;
      for (let i = 1; i < rows; i++) most = Math.max(most, Math.abs(out[na * i + k] - out[na * (i - 1) + k]));
      return most * DEG;
    };
    const raw = Math.abs(angles[na * 99 + plane] - angles[na * 110 + plane]) * DEG;
    expect(raw).toBeGreaterThan(100);
    // noise of 1 deg at 12 deg from the pole is 5 deg of plane
    expect(step(plane)).toBeLessThan(20);
    expect(step(elevation)).toBeLessThan(6);
    expect(out[elevation] * out[na * (rows - 1) + elevation]).toBeLessThan(0);
    expect(Math.abs(out[na * (rows - 1) + turn])).toBeLessThan(0.1);
  });

  it('away from the poles it is the same attitude, within them it is off by at most the noise', () => {
    const posed = poseFlight(flightOf('trampoline-full'), 120);
    const out = posed.angles.slice();
    clearPoles(posed.body, out);
    const h = (all: Float64Array): Float64Array =>
      calcRecordedMomentum(
        conditionMotion({ ...posed, angles: all }, wholeSpan(posed), { smoothing: { kind: 'none' }, longestGap: 0.1 }),
      ).h_Scm_W;
    // of 49 kg m2/s; measured 1.3e-2, at the ends of the splines
    const [one, other] = [h(posed.angles), h(out)];
    one.forEach((v, i) => {
      expect(Math.abs(other[i] - v)).toBeLessThan(3e-2);
    });
  });
});

describe('momentum', () => {
  it('of a flight without noise is the one it was flown with, all along', () => {
    const flight = flightOf('trampoline-full');
    const posed = poseFlight(flight, 240);
    const motion = conditionMotion(posed, wholeSpan(posed), { smoothing: { kind: 'none' }, longestGap: 0.1 });
    const { mean, worst } = calcRecordedMomentum(motion);
    const size = Math.hypot(...flight.h_Scm_W);
    for (let k = 0; k < 3; k++) expect(Math.abs(mean[k] - flight.h_Scm_W[k])).toBeLessThan(1e-4 * size);
    // measured 5.7e-4, where spans of the schedule meet
    expect(worst / size).toBeLessThan(2e-3);
  });
  it('where an angle is lost for long it is not known, and is everywhere else', () => {
    const posed = poseFlight(flightOf('trampoline-full'), 240);
    const knee = angleIndex(posed.body, 'kneeFlexionL');
    for (let i = 100; i < 160; i++) posed.angles[posed.body.angles.length * i + knee] = Number.NaN;
    const motion = conditionMotion(posed, wholeSpan(posed), { smoothing: { kind: 'gcv' }, longestGap: 0.1 });
    const { h_Scm_W } = calcRecordedMomentum(motion);
    expect(h_Scm_W[3 * 120]).toBeNaN();
    expect(h_Scm_W[3 * 99]).not.toBeNaN();
    expect(motion.gaps[knee]).toEqual([{ from: 100, rows: 60, isFilled: false }]);
  });
});
