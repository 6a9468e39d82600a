// Units as people read and type them: there and back, in both systems.
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { parseQuantity, type QuantityKind, say, sayNumber, setUnits, shownAs } from '../../src/ui/units.ts';

afterEach(() => setUnits({ measure: 'metric', turning: 'revolutions' }));

describe('units', () => {
  it('metric and revolutions are as they were computed', () => {
    expect(say('length', 1.62)).toBe('1.62 m');
    expect(say('mass', 54, 0)).toBe('54 kg');
    expect(say('rate', 1.814)).toBe('1.81 rev/s');
  });

  it('imperial: feet and inches, pounds, the exact factors of 1959', () => {
    setUnits({ measure: 'imperial' });
    expect(say('length', 1.6256)).toBe('5 ft 4.0 in');
    expect(say('length', 0.2)).toBe('7.9 in');
    expect(say('length', -0.4)).toBe('−1 ft 3.7 in');
    // a length just under a foot is not "12.0 in"
    expect(say('length', 0.30479)).toBe('1 ft 0.0 in');
    expect(say('mass', 45.359237)).toBe('100 lb');
    expect(say('speed', 3.048)).toBe('10.0 ft/s');
    // 1 slug ft2 = 32.174 lb ft2 = 1.35582 kg m2
    expect(say('moment', 1.35582 * 10)).toBe('322 lb·ft²');
    expect(say('energy', 1355.818)).toBe('1\u202f000 ft·lb');
  });

  it('degrees: turns and their rates, and nothing else', () => {
    setUnits({ turning: 'degrees' });
    expect(say('turns', 0.98)).toBe('353°');
    expect(say('rate', 1.5)).toBe('540°/s');
    expect(say('length', 1)).toBe('1.00 m');
    expect(say('angle', 12)).toBe('12°');
  });

  it('what is written is read back, within what its last decimal shows', () => {
    const kinds: QuantityKind[] = ['length', 'speed', 'acceleration', 'mass', 'turns', 'rate', 'momentum', 'angle'];
    for (const measure of ['metric', 'imperial'] as const)
      for (const turning of ['revolutions', 'degrees'] as const) {
        setUnits({ measure, turning });
        for (const q of kinds) {
          const { factor, decimals } = shownAs(q);
          // an imperial length shows tenths of an inch
          const least = q === 'length' && measure === 'imperial' ? 0.1 * 0.0254 : 10 ** -decimals / factor;
          fc.assert(
            fc.property(fc.double({ min: -300, max: 300, noNaN: true }), (v) => {
              for (const text of [say(q, v), sayNumber(q, v)])
                expect(Math.abs(parseQuantity(q, text) - v)).toBeLessThanOrEqual(0.5 * least * (1 + 1e-6));
            }),
            { numRuns: 60, seed: 11 },
          );
        }
      }
  });

  it.each([
    ['length', '162 cm', 1.62],
    ['length', '5\'4"', 1.6256],
    ['length', '5 ft 4', 1.6256],
    ['length', '64 in', 1.6256],
    ['mass', '100 lb', 45.359237],
    ['rate', '540 °/s', 1.5],
    ['rate', '540 deg/s', 1.5],
    ['speed', '10 ft/s', 3.048],
  ] as const)('%s may be typed as %s, whatever is set', (q, typed, value) => {
    for (const measure of ['metric', 'imperial'] as const) {
      setUnits({ measure });
      expect(parseQuantity(q, typed)).toBeCloseTo(value, 9);
    }
  });

  it.each([
    ['mass', '5 m'],
    ['length', '5 kg'],
    ['length', 'ft'],
    ['speed', '3 rev/s'],
    ['length', ''],
  ] as const)('as %s, "%s" is none', (q, typed) => {
    expect(parseQuantity(q, typed)).toBeNaN();
  });
});
