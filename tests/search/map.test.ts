/** Maps: contours of a known field, and rows that do not depend on one another. */
import { describe, expect, it } from 'vitest';
import { parseSkill } from '../../sim/index.ts';
import { findContour, roundLevels } from '../../sim/search/map-contour.ts';
import { type MapRequest, MapRunner, StudyRunner, usualStudy } from '../../sim/search/span.ts';
import { former } from '../former/index.ts';
import { RAD, shelf } from './still.ts';

describe('contours', () => {
  it('of a cone are circles, closed, at their radius', () => {
    const n = 41;
    const field = Float64Array.from({ length: n * n }, (_, k) => Math.hypot((k % n) - 20, Math.floor(k / n) - 20));
    for (const level of [5.3, 11.7]) {
      const { lines } = findContour(field, n, n, level);
      expect(lines).toHaveLength(1);
      const [line] = lines;
      expect([line[0], line[1]]).toEqual(line.slice(-2));
      for (let i = 0; i < line.length; i += 2)
        expect(Math.abs(Math.hypot(line[i] - 20, line[i + 1] - 20) - level)).toBeLessThan(0.03);
    }
  });

  it('of a plane are straight, from edge to edge, and stop where a value is missing', () => {
    const field = Float64Array.from({ length: 30 }, (_, k) => (k % 6) + 0.5 * Math.floor(k / 6));
    const [line, ...more] = findContour(field, 6, 5, 2.2).lines;
    expect(more).toEqual([]);
    for (let i = 0; i < line.length; i += 2) expect(line[i] + 0.5 * line[i + 1]).toBeCloseTo(2.2, 12);
    const ys = line.filter((_, i) => i % 2 === 1);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([0, 4]);
    field[14] = Number.NaN;
    const cut = findContour(field, 6, 5, 2.2).lines.flat();
    expect(cut.length).toBeLessThan(line.length);
    expect(cut.every(Number.isFinite)).toBe(true);
  });

  it('at a saddle keep the two sides apart, by the middle', () => {
    const lines = (a: number): number => findContour([a, 0, 0, a], 2, 2, 1).lines.length;
    expect([lines(1.5), lines(3)]).toEqual([2, 2]);
    // corners a and c high: the middle of 1.5 is below the level, of 3 above
    const ends = (a: number): string =>
      JSON.stringify(findContour([a, 0, 0, a], 2, 2, 1).lines.map((l) => l.map((x) => x > 0 && x < 1)));
    expect(ends(1.5)).not.toBe(ends(3));
  });

  it('stand at round levels', () => {
    expect(roundLevels([0.31, 4.4], 10)).toEqual([0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4]);
    expect(roundLevels([Number.NaN, 3, 3])).toEqual([]);
    // rounding of a skill without twist
    expect(roundLevels([4e-18, -7e-15, 1e-13])).toEqual([]);
  });
});

const twist = parseSkill(former['back-straight-full'], shelf);
const mapRequest: MapRequest = {
  spec: twist,
  x: { input: 'block:2.moveStart', from: -0.02, to: 0.03, count: 4 },
  y: { input: 'takeoff.tilt', from: -0.5 * RAD, to: 0.5 * RAD, count: 5 },
  results: ['twists', 'short'],
  window: [{ result: 'twists', low: 0.9, high: 1.1 }],
};

describe('rows', () => {
  it('are the same alone and among others, and hold the skill itself at its place', () => {
    const all = new MapRunner(mapRequest);
    const rows = [0, 1, 2, 3, 4].map((i) => all.row(i));
    expect(new MapRunner(mapRequest).row(3)).toEqual(rows[3]);
    const { input } = all.map.x;
    const here = new MapRunner({
      ...mapRequest,
      x: { ...mapRequest.x, from: input.value, to: input.value + 0.01, count: 2 },
    });
    const request = usualStudy(twist);
    const now = new StudyRunner({ ...request, window: [{ result: 'twists', low: 0, high: 2 }] }).now();
    expect(here.row(2).values[0]).toBeCloseTo(now[0], 9);
  });
});
