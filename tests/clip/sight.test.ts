// The camera of a clip, against cameras that are known.
import { describe, expect, it } from 'vitest';
import { seeInto } from '../../sim/clip/sight-look.ts';
import {
  type ClipScale,
  type ClipSight,
  type ClipStand,
  calcClipSight,
  FieldError,
  offPlane,
  type Spot,
} from '../../sim/index.ts';
import { measuredOf, PICTURE, QUANTITIES, type Seen, seeMat } from './seen.ts';

const DEG = Math.PI / 180;
const CAMERAS = 250;

const solve = (seen: Seen, view?: number): ClipSight =>
  calcClipSight({
    picture: PICTURE,
    scale: seen.scale,
    stand: { feet: seen.feet, goesRight: seen.goesRight },
    view,
    p_WFeet_W: seen.feetW,
    floorY: 0,
    way: 1,
  });

function* cameras(asked: Parameters<typeof seeMat>[1]): Generator<Seen> {
  for (let i = 0; i < CAMERAS; i++) {
    const seen = seeMat(i, asked);
    if (seen) yield seen;
  }
}

describe('a camera is found again', () => {
  for (const [name, posts, isGiven] of [
    ['from a rectangle alone', 0, false],
    ['from a rectangle and two posts', 2, false],
    ['from a rectangle, with its field of view', 0, true],
  ] as const)
    it(name, () => {
      let n = 0;
      const [want, got] = [new Float64Array(2), new Float64Array(2)];
      for (const seen of cameras({ posts, noise: 0 })) {
        const sight = solve(seen, isGiven ? seen.view : undefined);
        // a mat seen from so far that its depth hardly shows
        if (sight.view.how === 'parallel') continue;
        n++;
        expect(sight.view.how).toBe(isGiven ? 'given' : 'solved');
        for (const quantity of [...QUANTITIES, 'view'] as const)
          expect(Math.abs(measuredOf(sight, quantity).value - seen[quantity]), quantity).toBeLessThan(1e-6);
        const p = [seen.feetW[0] + 0.4, 1.7, seen.feetW[2] - 0.3];
        const real = { ...sight, sight: { kind: 'perspective', sightline: seen.sightline } } as ClipSight;
        expect(Math.abs(seeInto(sight, p, 0, got, 0) - seeInto(real, p, 0, want, 0))).toBeLessThan(1e-6);
        expect(Math.hypot(got[0] - want[0], got[1] - want[1])).toBeLessThan(1e-6);
        expect(sight.leftPx).toBeLessThan(1e-6);
      }
      expect(n).toBeGreaterThan(0.8 * CAMERAS);
    });

  for (const [name, posts, isGiven] of [
    ['a rectangle alone', 0, false],
    ['a rectangle and two posts', 2, false],
    ['a rectangle and a field of view', 0, true],
  ] as const)
    it(`marked to 1.5 px, ± holds about nineteen of twenty: ${name}`, () => {
      const held: Record<string, number> = {};
      let n = 0;
      for (const seen of cameras({ posts, noise: 1.5 })) {
        const sight = solve(seen, isGiven ? seen.view : undefined);
        if (sight.view.how === 'parallel') continue;
        n++;
        for (const quantity of isGiven ? QUANTITIES : ([...QUANTITIES, 'view'] as const)) {
          const { value, plusMinus } = measuredOf(sight, quantity);
          held[quantity] = (held[quantity] ?? 0) + (Math.abs(value - seen[quantity]) <= plusMinus ? 1 : 0);
        }
      }
      expect(n).toBeGreaterThan(0.8 * CAMERAS);
      for (const [quantity, count] of Object.entries(held)) {
        expect(count / n, quantity).toBeGreaterThan(0.92);
        expect(count / n, quantity).toBeLessThan(1);
      }
    });

  it('a small mat from far gives no field of view: in parallel, with the scale at the feet', () => {
    let held = 0;
    let n = 0;
    for (const seen of cameras({ posts: 0, noise: 1.5, widthM: 2, depthM: 0.6, away: 14, viewDeg: 55, eyeY: 3 })) {
      const sight = solve(seen);
      if (sight.view.how !== 'parallel') continue;
      n++;
      expect([sight.away.value, sight.tilt.value, sight.view.rad.value]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
      held += Math.abs(sight.pxPerM.value - seen.pxPerM) <= sight.pxPerM.plusMinus ? 1 : 0;
      expect(sight.pxPerM.plusMinus / sight.pxPerM.value).toBeLessThan(0.2);
    }
    expect(n).toBeGreaterThan(0.3 * CAMERAS);
    expect(held / n).toBeGreaterThan(0.92);
  });

  it('the mirrored picture of a flight the other way is the mirrored camera', () => {
    const seen = seeMat(3, { posts: 1, noise: 0 }) as Seen;
    const flip = ([x, y]: Spot): Spot => [PICTURE.width - x, y];
    const [a, b, c, d] = seen.scale.corners.map(flip);
    const posts = seen.scale.posts?.map((post) => ({ ...post, foot: flip(post.foot), top: flip(post.top) }));
    const mirrored = { ...seen, goesRight: !seen.goesRight, feet: flip(seen.feet) };
    const one = solve(seen);
    const other = solve({ ...mirrored, scale: { ...seen.scale, corners: [b, a, d, c], posts } });
    if (one.sight.kind === 'parallel' || other.sight.kind === 'parallel') throw new Error('in parallel');
    const [p, q] = [one.sight.sightline.p_WC_W, other.sight.sightline.p_WC_W];
    expect(q).toEqual([expect.closeTo(p[0], 6), expect.closeTo(p[1], 6), expect.closeTo(2 * seen.feetW[2] - p[2], 6)]);
    expect(other.roll.value).toBeCloseTo(-one.roll.value, 6);
    expect(other.offSquare.value).toBeCloseTo(one.offSquare.value, 6);
    expect(other.away.value).toBeCloseTo(one.away.value, 6);
  });

  it('feet on a bed over the floor are met at its height', () => {
    const seen = seeMat(5, { posts: 0, noise: 0 }) as Seen;
    const raised: [number, number, number] = [seen.feetW[0], 1.15, seen.feetW[2]];
    const at = new Float64Array(2);
    const real = { sight: { kind: 'perspective', sightline: seen.sightline } } as ClipSight;
    seeInto(real, raised, 0, at, 0);
    const sight = calcClipSight({
      picture: PICTURE,
      scale: seen.scale,
      stand: { feet: [at[0], at[1]], goesRight: seen.goesRight },
      p_WFeet_W: raised,
      floorY: 0,
      way: 1,
    });
    expect(sight.away.value).toBeCloseTo(seen.away, 6);
    seeInto(sight, raised, 0, at, 0);
    seeInto(real, raised, 0, at, 0);
    expect(at[0]).toBeCloseTo(at[0], 6);
  });
});

const feet: Spot = [900, 800];
const lengthSight = (from: Spot, to: Spot, lengthM: number, stand: ClipStand = { feet, goesRight: true }): ClipSight =>
  calcClipSight({
    picture: PICTURE,
    scale: { kind: 'length', from, to, lengthM },
    stand,
    p_WFeet_W: [0.1, 0, 0],
    floorY: 0,
    way: 1,
  });

describe('a length', () => {
  it('gives a scale in parallel: feet where they were marked, a metre up and along as long, depth without size', () => {
    const sight = lengthSight([900, 800], [900, 380], 1.68);
    expect(sight.pxPerM).toEqual({
      value: expect.closeTo(250),
      plusMinus: expect.closeTo((2 * 1.5 * Math.SQRT2) / 1.68),
    });
    const at = new Float64Array(2);
    expect(seeInto(sight, [0.1, 0, 0], 0, at, 0)).toBeNaN();
    expect([...at]).toEqual(feet);
    seeInto(sight, [1.1, 2, -7], 0, at, 0);
    expect([...at]).toEqual([expect.closeTo(1150), expect.closeTo(300)]);
    const left = lengthSight([900, 800], [900, 380], 1.68, { feet, goesRight: false });
    seeInto(left, [1.1, 2, 3], 0, at, 0);
    expect([...at]).toEqual([expect.closeTo(650), expect.closeTo(300)]);
    expect(offPlane(sight, 0.3)).toBeNaN();
  });

  it('is what a camera from far away with a narrow field sees', () => {
    const far = seeMat(1, { posts: 0, noise: 0, away: 150, viewDeg: 5, eyeY: 12, square: true }) as Seen;
    const one = solve(far, far.view);
    expect(one.view.how).toBe('given');
    // feet to a head over them give the length
    const [from, to, other] = [new Float64Array(2), new Float64Array(2), new Float64Array(2)];
    seeInto(one, far.feetW, 0, from, 0);
    seeInto(one, [far.feetW[0], 2, far.feetW[2]], 0, to, 0);
    const sight = calcClipSight({
      picture: PICTURE,
      scale: { kind: 'length', from: [from[0], from[1]], to: [to[0], to[1]], lengthM: 2 },
      stand: { feet: far.feet, goesRight: far.goesRight },
      p_WFeet_W: far.feetW,
      floorY: 0,
      way: 1,
    });
    for (const p of [
      [0, 1, far.feetW[2]],
      [3, 2.5, far.feetW[2]],
    ]) {
      seeInto(one, p, 0, to, 0);
      seeInto(sight, p, 0, other, 0);
      expect(Math.hypot(to[0] - other[0], to[1] - other[1])).toBeLessThan(0.01 * sight.pxPerM.value);
    }
  });
});

describe('off the plane of the flight', () => {
  it('what is 0.3 m nearer, of 8 m, is drawn 4 % too large', () => {
    const sight = { away: { value: 8, plusMinus: 0.1 } } as ClipSight;
    expect(offPlane(sight, 0.3)).toBeCloseTo(0.039, 3);
    expect(offPlane(sight, -0.3)).toBeCloseTo(-0.036, 3);
    expect(offPlane(sight, 0)).toBe(0);
    expect(offPlane(sight, 8)).toBeNaN();
  });
});

describe('what no camera sees is refused in words', () => {
  const seen = seeMat(3, { posts: 1, noise: 0 }) as Seen;
  const [a, b, c, d] = seen.scale.corners;
  const fault = (scale: Partial<Seen['scale']>, more: { view?: number; feet?: Spot } = {}): string => {
    try {
      solve({ ...seen, feet: more.feet ?? seen.feet, scale: { ...seen.scale, ...scale } }, more.view);
    } catch (error) {
      if (error instanceof FieldError) return error.message;
      throw error;
    }
    return 'taken';
  };
  it('corners that cross, stand in one line, lie far outside, or go round in another order', () => {
    expect(fault({})).toBe('taken');
    expect(fault({ corners: [a, c, b, d] })).toContain('edges that cross');
    const order = 'near left, near right, far right, far left, as the camera sees them';
    expect(fault({ corners: [b, a, d, c] })).toContain(order);
    expect(fault({ corners: [c, d, a, b] })).toContain(order);
    const between: Spot = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
    expect(fault({ corners: [a, between, c, d] })).toContain('scale.corners[1]');
    expect(fault({ corners: [a, b, b, d] })).toContain('px from the line');
    expect(fault({ corners: [[-4000, 900], b, c, d] })).toContain('scale.corners[0]: "-4000, 900"');
    expect(fault({ corners: [[Number.NaN, 900], b, c, d] })).toContain('scale.corners[0]');
  });
  it('sizes, posts, fields of view and feet that are none', () => {
    expect(fault({ widthM: 0 })).toBe('scale.widthM: 0 is not possible; allowed: 0.1 to 100 m');
    expect(fault({ depthM: Number.NaN })).toContain('scale.depthM');
    const post = { foot: a, top: [a[0], a[1] - 3] as Spot, heightM: 1 };
    expect(fault({ posts: [post] })).toContain('scale.posts[0].top');
    expect(fault({ posts: [{ ...post, heightM: 40 }] })).toContain('scale.posts[0].heightM');
    expect(fault({ posts: [{ ...post, foot: [900, -900], top: [900, -1000] }] })).toContain('below its horizon');
    expect(fault({ posts: Array(9).fill(post) })).toContain('at most 8');
    expect(fault({}, { view: 4 * DEG })).toBe('view: 4 is not possible; allowed: 5 to 150 deg');
    expect(fault({}, { feet: [900, -900] })).toContain('stand.feet');
    expect(() => lengthSight([1, 1], [1, 5], 1)).toThrow('at least 10 px');
    expect(() => lengthSight([1, 1], [1, 500], 0)).toThrow('scale.lengthM: 0');
  });
  it('a wrong width is left over at the corners once the field of view is known', () => {
    const wrong: ClipScale = { ...seen.scale, widthM: 1.5 * seen.scale.widthM, posts: undefined };
    expect(solve({ ...seen, scale: wrong }, seen.view).leftPx).toBeGreaterThan(5);
  });
});
