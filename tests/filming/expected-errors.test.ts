// What a film would be known to: points as one camera gives them, and errors that come of reading them.
import { describe, expect, it } from 'vitest';
import { markedPoints, markPoints } from '../../sim/filming/digitised.ts';
import { expectErrors } from '../../sim/filming/expected-errors.ts';
import { dot, norm, sub, type Triple } from '../../sim/math/vec3.ts';
import { DEG, done, flightOf } from './filmed.ts';

const flight = flightOf('back-straight-full');
const eye: Triple = [-1, 1.4, -8.5];
const at = (p: Float64Array): Triple => [p[0], p[1], p[2]];

describe('a film that is read back', () => {
  it('one camera knows points across its line of sight, and limbs as long as they are', () => {
    const marked = markedPoints(flight.body) ?? [];
    const t = Float64Array.of(0.3);
    const of = (one: boolean) =>
      markPoints(flight, marked, { t, phase: 0, noise: 0, seed: 1, ...(one ? { eye } : {}) }).points;
    const [truth, seen] = [of(false).map(at), of(true).map(at)];
    const hips = [0, 1].map((k) => marked.findIndex(({ from }) => from === `hip${'LR'[k]}`));
    const middle = [0, 1, 2].map((k) => (truth[hips[0]][k] + truth[hips[1]][k]) / 2) as Triple;
    const axis = sub(eye, middle);
    for (const [m, { from, along }] of marked.entries()) {
      const off = sub(seen[m], truth[m]);
      // along the line of sight alone
      expect(norm(off) - Math.abs(dot(off, axis)) / norm(axis), from).toBeLessThan(1e-9);
      if (!along || Number.isNaN(along.length)) continue;
      const near = marked.findIndex((one) => one.from === along.from);
      expect(norm(sub(seen[m], seen[near])), from).toBeCloseTo(along.length, 9);
    }
  });

  it('somersault is known best, twist less, tilt of one camera not; the same draws give the same', () => {
    const shares: number[] = [];
    const steps = expectErrors(flight, 60, eye, 1);
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    const { airTime, one, two } = step.value;
    expect(airTime).toBeCloseTo(0.0136, 4);
    expect(one.tilt).toBeNaN();
    for (const each of [one.somersault, one.twist, two.somersault, two.tilt, two.twist]) {
      expect(each).toBeGreaterThan(0.2 * DEG);
      expect(each).toBeLessThan(40 * DEG);
    }
    expect(two.twist).toBeLessThan(one.twist);
    expect(two.momentum).toBeLessThan(one.momentum);
    expect(shares.every((s, i) => s >= (shares[i - 1] ?? 0) && s <= 1)).toBe(true);
    expect(done(expectErrors(flight, 60, eye, 1)).one.twist).toBe(one.twist);
  });
});
