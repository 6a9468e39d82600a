import { describe, expect, it } from 'vitest';
import type { ClipSight, Spot } from '../../sim/clip/clip.ts';
import type { PosedFrame } from '../../sim/clip/clip-pose.ts';
import { poseOfFlight } from '../../sim/clip/first-pose.ts';
import { limbsOf } from '../../sim/clip/limb-lengths.ts';
import { leadPosed, movePosed, turnPosed, twistPosed } from '../../sim/clip/pose-hand.ts';
import { bodyOfPosed } from '../../sim/clip/posed-body.ts';
import { seePlace } from '../../sim/clip/see.ts';
import { isAmbiguous, swapSides } from '../../sim/clip/swap-sides.ts';
import { flySkill } from '../../sim/index.ts';
import { otherSide } from '../../sim/math/side.ts';
import { preset } from '../skill/load.ts';
import { endOf, inParallel, sightOf } from './hand.ts';

/** px: what two ways of computing one place differ by. */
const SAME = 1e-6;
const DEG = Math.PI / 180;

const skill = preset('back-straight-full');
const flight = flySkill(skill);
const { body } = flight;
const poseAt = (t: number): PosedFrame => poseOfFlight(flight, skill.takeoff, 0, t);
const square = sightOf(flight);
const sights: [string, ClipSight][] = [
  ['square on', square],
  ['30 deg off', sightOf(flight, { offSquare: 30 * DEG })],
  ['in parallel', inParallel(sightOf(flight, { offSquare: -20 * DEG, up: 3 }))],
];
const seen = (posed: PosedFrame, sight: ClipSight): Map<string, Spot> => {
  const { p_WSo_W: p } = bodyOfPosed(body, posed).pose;
  return new Map(
    body.segments.map(({ name }, s) => [name, seePlace(sight, [p[3 * s], p[3 * s + 1], p[3 * s + 2]]).at]),
  );
};
const apart = ([x, y]: Spot, [u, v]: Spot): number => Math.hypot(x - u, y - v);

describe('a pose of the flight', () => {
  it('is where the flight is', () => {
    for (const t of [0, 0.3, 0.7]) {
      const quat = new Float64Array(4);
      flight.quatInto(t, quat);
      const [w, x, y, z] = quat;
      const { R_WB } = bodyOfPosed(body, poseAt(t));
      expect(R_WB[0]).toBeCloseTo(1 - 2 * (y * y + z * z), 9);
      expect(R_WB[3]).toBeCloseTo(2 * (x * y + w * z), 9);
      expect(R_WB[7]).toBeCloseTo(2 * (y * z + w * x), 9);
    }
  });
});

describe.each(sights)('a hand, %s', (_, sight) => {
  it('leads the end of a limb to where it points, and leaves the trunk in its place', () => {
    const posed = poseAt(0.2);
    for (const end of ['handL', 'handR', 'footL', 'kneeR']) {
      const [x, y] = seePlace(sight, endOf(body, posed, end)).at;
      const to: Spot = [x + 6, y - 9];
      const led = leadPosed(body, posed, sight, { end, to });
      // a straight limb is not lengthened: as near as it comes
      expect(apart(seePlace(sight, endOf(body, led, end)).at, to)).toBeLessThan(apart([x, y], to));
      expect(apart(seen(led, sight).get('pelvis') ?? [0, 0], seen(posed, sight).get('pelvis') ?? [1, 1])).toBeLessThan(
        SAME,
      );
    }
    const [x, y] = seePlace(sight, endOf(body, posed, 'footL')).at;
    const [hx, hy] = seePlace(sight, endOf(body, posed, 'hips')).at;
    const to: Spot = [x + 0.3 * (hx - x), y + 0.3 * (hy - y)];
    const bent = leadPosed(body, posed, sight, { end: 'footL', to });
    expect(apart(seePlace(sight, endOf(body, bent, 'footL')).at, to)).toBeLessThan(0.5);
  });

  it('moves it by as many px as it moves', () => {
    const posed = poseAt(0.4);
    const moved = movePosed(posed, sight, [40, -25]);
    const [a, b] = [posed, moved].map((p) => seePlace(sight, p.p_WScm_W).at);
    expect(b[0] - a[0]).toBeCloseTo(40, 6);
    expect(b[1] - a[1]).toBeCloseTo(-25, 6);
    expect(moved.somersault).toBe(posed.somersault);
  });

  it('turns it about the line of sight, against the clock, and counts on', () => {
    let posed = twistPosed({ ...poseAt(0.4), tilt: 0 }, -poseAt(0.4).twist);
    const start = posed;
    for (let i = 0; i < 12; i++) {
      const before = seen(posed, sight);
      posed = turnPosed(posed, sight, 30 * DEG);
      const [c, a, b] = [
        seePlace(sight, posed.p_WScm_W).at,
        before.get('head') ?? [0, 0],
        seen(posed, sight).get('head') ?? [0, 0],
      ];
      // y is down: against the clock the cross product is below zero
      expect((a[0] - c[0]) * (b[1] - c[1]) - (a[1] - c[1]) * (b[0] - c[0])).toBeLessThan(0);
    }
    expect(Math.abs(posed.somersault - start.somersault)).toBeCloseTo(2 * Math.PI, 6);
    expect(posed.tilt).toBeCloseTo(start.tilt, 6);
  });
});

describe('left and right', () => {
  const oblique = inParallel(sightOf(flight, { offSquare: 25 * DEG, up: 2.5 }));
  it('exchanged make the same picture in parallel, with their names exchanged', () => {
    for (const sight of [inParallel(square), oblique])
      for (const t of [0.1, 0.3, 0.45, 0.7]) {
        const posed = poseAt(t);
        const [own, other] = [posed, swapSides(body, posed, sight)].map((p) => seen(p, sight));
        for (const [name, at] of own)
          expect(apart(at, other.get(otherSide(name) ?? name) ?? [0, 0])).toBeLessThan(SAME);
      }
  });

  it('from the side turn tilt and twist about, and leave the somersault', () => {
    const posed = { ...poseAt(0.45), twist: 1, tilt: 0.1 };
    const swapped = swapSides(body, posed, {
      ...square,
      sight: {
        kind: 'parallel',
        parallel: { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1], pxPerM: 200, anchor: [0, 0, 0], at: [0, 0] },
      },
    });
    expect(swapped.somersault).toBeCloseTo(posed.somersault, 9);
    expect(swapped.tilt).toBeCloseTo(-0.1, 9);
    expect(swapped.twist).toBeCloseTo(-1, 9);
  });

  it('exchanged twice are as they were', () => {
    const posed = poseAt(0.4);
    const twice = swapSides(body, swapSides(body, posed, oblique), oblique);
    expect(twice.tilt).toBeCloseTo(posed.tilt, 9);
    expect(Math.cos(twice.twist - posed.twist)).toBeCloseTo(1, 9);
    for (const [a, v] of twice.angles.entries()) expect(v).toBeCloseTo(posed.angles[a], 9);
  });

  it('may be either in parallel where they differ, and are not asked of a body that is even', () => {
    expect(isAmbiguous(body, poseAt(0.4), inParallel(square))).toBe(true);
    const straight = preset('back-straight');
    const even = flySkill(straight);
    const side = { ...poseOfFlight(even, straight.takeoff, 0, 0.3) };
    expect(isAmbiguous(body, side, inParallel(sightOf(even)))).toBe(false);
    // from near by perspective shows it
    const near = sightOf(flight, { away: 2, view: 100 * DEG });
    expect(isAmbiguous(body, poseAt(0.4), near)).toBe(false);
  });
});

describe('lengths of limbs', () => {
  /** Marks of a body that is larger by `k` than the figure, about its mass centre. */
  const ratioOf = (k: number): number => {
    const sight = inParallel(square);
    const posed = { ...poseAt(0), twist: 0, tilt: 0 };
    let led: PosedFrame = posed;
    const c = seePlace(sight, endOf(body, posed, 'hips')).at;
    for (const end of ['footL', 'footR']) {
      const [x, y] = seePlace(sight, endOf(body, posed, end)).at;
      led = leadPosed(body, led, sight, { end, to: [c[0] + k * (x - c[0]), c[1] + k * (y - c[1])] });
    }
    return limbsOf([led]);
  };
  it('are those of the figure where it fits, and longer by as much where it is too small', () => {
    expect(ratioOf(1)).toBeCloseTo(0, 1);
    expect(ratioOf(1.12) - ratioOf(1)).toBeGreaterThan(0.1);
    expect(limbsOf([poseAt(0)])).toBeNaN();
  });
});
