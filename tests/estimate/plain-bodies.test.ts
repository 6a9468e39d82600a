// Moments of plain bodies against Landau & Lifshitz, Mechanics (1976), sec. 32, problem 2, and by summing mass.
import { describe, expect, test } from 'vitest';
import { PLAIN_BODIES, type PlainBodyKind, plainBodyOf } from '../../sim/estimate/plain-body.ts';
import { sheetOf } from './sheet-of.ts';

/** Landau & Lifshitz, sec. 32, problem 2: (a) rod, (b) sphere, (c) cylinder about its axis. Mass 3 kg, size 0.7 m. */
const BOOK: Readonly<Record<PlainBodyKind, number>> = {
  rod: (3 * 0.7 ** 2) / 12,
  ball: (2 / 5) * 3 * 0.7 ** 2,
  cylinder: (3 * 0.7 ** 2) / 2,
  disc: (3 * 0.7 ** 2) / 2,
  'point mass': 3 * 0.7 ** 2,
};

/** Mean of (distance from the axis)^2 over the body of size 1, summed on a grid: no formula of a moment in it. */
function summed(kind: PlainBodyKind): number {
  const n = 80;
  const at = (i: number): number => (2 * (i + 0.5)) / n - 1;
  let [sum, count] = [0, 0];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      for (let k = 0; k < (kind === 'ball' ? n : 1); k++) {
        const [x, y, z] = [at(i), at(j), at(k)];
        const inside = kind === 'rod' ? j === 0 : kind === 'ball' ? x * x + y * y + z * z <= 1 : x * x + y * y <= 1;
        if (!inside) continue;
        sum += kind === 'rod' ? (x / 2) ** 2 : x * x + y * y;
        count++;
      }
  return sum / count;
}
/** A grid of 80 cells; the worst measured is 4e-4. */
const GRID = 2e-3;

describe('plain bodies', () => {
  test.each(PLAIN_BODIES)('%s: the size from the moment of the book', (kind) => {
    expect(plainBodyOf(kind, 3, BOOK[kind])?.size).toBeCloseTo(0.7, 14);
  });
  test.each(PLAIN_BODIES.filter((k) => k !== 'point mass'))(
    '%s: the size from the moment summed over its mass',
    (kind) => {
      const size = plainBodyOf(kind, 1, summed(kind))?.size ?? 0;
      expect(Math.abs(1 / size ** 2 - 1)).toBeLessThan(GRID);
    },
  );
  test('a drawing has the mass of the line "mass" and the moment of the line it is for', () => {
    const { result, faults } = sheetOf([
      'mass = 55 kg',
      'I_flip = mass * (0.5 m)^2 / 2',
      'draw disc for I_flip about lateral at apex',
    ]);
    expect(faults).toEqual([]);
    expect(result.lines[2]).toMatchObject({
      kind: 'drawing',
      body: { kind: 'disc', mass: 55, size: 0.5 },
      about: 'lateral',
      at: 'apex',
    });
  });
  test('what is no moment cannot be drawn', () =>
    expect(sheetOf(['mass = 55 kg', 'x = 3 J', 'draw rod for x']).fault(2)).toContain('J (energy or torque)'));
});
