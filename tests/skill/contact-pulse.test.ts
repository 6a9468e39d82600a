// Pulses against their own integrals and peaks, the bed's against a mass on a spring followed in small steps, sums over rows against their order.
import { describe, expect, test } from 'vitest';
import { uniformSlope, uniformSum } from '../../sim/math/uniform-slope.ts';
import { calcBedSpring } from '../../sim/skill/contact-bed.ts';
import { BOARD_PULSES, PULSES, type Pulse, springPulse } from '../../sim/skill/contact-pulse.ts';

/** measured: 2e-13 at 20,000 steps of the midpoint rule, but of the flat one */
const SUMMED = 1e-8;
const pulses: readonly (readonly [string, Pulse])[] = [
  ...Object.entries(PULSES),
  ['board upward', BOARD_PULSES.up],
  ['board along', BOARD_PULSES.along],
  ['spring', springPulse(1.7)],
];

describe.each(pulses)('%s', (_, pulse) => {
  test('its integrals are those of its shape, its mean is 1, it never pulls', () => {
    const n = 20_000;
    let [given, moved, highest, lowest] = [0, 0, 0, 1];
    for (let i = 0; i < n; i++) {
      const p = pulse.at((i + 0.5) / n);
      lowest = Math.min(lowest, p);
      moved += (given + p / (2 * n)) / n;
      given += p / n;
      highest = Math.max(highest, p);
      if ((i + 1) % 5000 === 0) {
        expect(Math.abs(pulse.given((i + 1) / n) - given)).toBeLessThan(SUMMED);
        expect(Math.abs(pulse.moved((i + 1) / n) - moved)).toBeLessThan(SUMMED);
      }
    }
    expect(lowest).toBeGreaterThanOrEqual(-1e-12);
    expect(pulse.given(1)).toBeCloseTo(1, 12);
    expect(highest).toBeCloseTo(pulse.peak, 6);
  });
});

test('a late pulse is an early one run backward; a board has 2 and 3 times its mean', () => {
  for (const s of [0.1, 0.4, 0.8]) expect(PULSES.late.at(s)).toBeCloseTo(PULSES.early.at(1 - s), 12);
  expect([BOARD_PULSES.up.peak, BOARD_PULSES.along.peak]).toEqual([2, 3]);
});

describe('an elastic bounce', () => {
  const [m, g, v, T] = [60, 9.81, 6, 0.3];
  const spring = calcBedSpring(m, g, v, T);
  if (!spring) throw new Error('no spring');
  const w = Math.sqrt(spring.stiffness / m);

  test('without gravity a mass is on its spring for half a period, pi sqrt(m / k); weight makes it longer by 2 atan(g / v w) / w', () => {
    expect(T).toBeCloseTo((Math.PI + 2 * Math.atan(g / (v * w))) / w, 12);
    const light = calcBedSpring(m, 1e-9, v, T);
    expect(Math.PI * Math.sqrt(m / (light?.stiffness ?? 0))).toBeCloseTo(T, 9);
  });

  test('the force is that of the spring at the depth of the mass, at every instant', () => {
    const pulse = springPulse((w * T) / 2);
    const J = 2 * m * v + m * g * T;
    for (let i = 0; i <= 10; i++) {
      const s = i / 10;
      const t = s * T;
      const y = (g / w ** 2) * (Math.cos(w * t) - 1) - (v / w) * Math.sin(w * t);
      expect((J / T) * pulse.at(s)).toBeCloseTo(-spring.stiffness * y, 6);
      expect(-v * t + ((J * T) / m) * pulse.moved(s) - (g * t * t) / 2).toBeCloseTo(y, 9);
    }
    expect(((J / T) * pulse.peak) / (m * g)).toBeCloseTo(spring.peak, 9);
  });
});

describe('sums and slopes over even rows', () => {
  const column = (n: number, of: (x: number) => number): number[] => Array.from({ length: n + 1 }, (_, i) => of(i / n));
  test('a slope is exact to the sixth power, at the ends too', () => {
    const slope = uniformSlope(
      column(10, (x) => x ** 6 - x ** 3),
      0.1,
    );
    slope.forEach((d, i) => {
      expect(d).toBeCloseTo(6 * (i / 10) ** 5 - 3 * (i / 10) ** 2, 10);
    });
  });

  test('half the step: slopes and sums are 64 times as close', () => {
    const misses = [20, 40].map((n) => {
      const f = column(n, (x) => Math.sin(4 * x));
      const slope = uniformSlope(f, 1 / n);
      return [Math.abs(slope[n / 2] - 4 * Math.cos(2)), Math.abs(uniformSum(f, 1 / n) - (1 - Math.cos(4)) / 4)];
    });
    expect(Math.log2(misses[0][0] / misses[1][0])).toBeCloseTo(6, 0);
    expect(Math.log2(misses[0][1] / misses[1][1])).toBeCloseTo(6, 0);
  });
});
