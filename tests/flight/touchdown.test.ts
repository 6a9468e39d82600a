/**
 * Touchdown as an event: it counts only after every contact point has cleared the surface by 5 mm, a limb that dips to
 * the surface between two looks is found, and where there is none the error says why. Frames: W; no source, our own rule
 * (docs/conventions.md).
 */
import { describe, expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { type Body, type Flight, flySchedule, NoTouchdownError } from '../../sim/index.ts';
import type { Schedule } from '../../sim/schedule/schedule.ts';
import { part, stopKeys } from '../checks/flown.ts';

const G = 9.81;
const EXACT = 1e-9; // s, against the formula: measured 1e-15
const LIGHT = 1e-6; // s, a leg of a milligram on a ton: measured 1e-9

const ball = makeTree({
  name: 'ball',
  segments: [
    part('ball', 60, [1, 1, 1, 0, 0, 0], { contacts: [{ name: 'skin', part: 'skin', point: [0, 0, 0], radius: 1 }] }),
  ],
});

/** A leg of length `leg` that hangs from the mass centre of a heavy trunk, so light that the trunk does not feel it. */
const kicker = (leg: number): Body =>
  makeTree({
    name: 'kicker',
    segments: [
      part('trunk', 1000, [100, 100, 100, 0, 0, 0]),
      part('leg', 1e-6, [1e-7, 1e-7, 1e-7, 0, 0, 0], {
        parent: 'trunk',
        centre: [0, -leg / 2, 0],
        hinges: [{ name: 'hip', axis: [0, 0, 1] }],
        contacts: [{ name: 'toe', part: 'feet', point: [0, -leg, 0], radius: 0 }],
      }),
    ],
  });

function fly(body: Body, schedule: Schedule, y0: number, up: number, gravity = G): Flight {
  return flySchedule(
    body,
    schedule,
    {
      height: { of: 'massCentre', y: y0 },
      v_WScm_W: [0, up, 0],
      somersault: 0,
      tilt: 0,
      twist: 0,
      momentum: { kind: 'vector', h_Scm_W: [0, 0, 0] },
    },
    { kind: 'touchdown', surface: { kind: 'floor', y: 0 } },
    gravity,
  );
}

/** Speed that rises so far, m/s. */
const upTo = (rise: number): number => Math.sqrt(2 * G * rise);

describe('touchdown counts only after a clearance of 5 mm', () => {
  const still = stopKeys(ball, {});
  it.each([0.001, 0.004, 0.0049])('a ball that rises %s m never took off', (rise) => {
    expect(() => fly(ball, still, 1, upTo(rise))).toThrow(NoTouchdownError);
    expect(() => fly(ball, still, 1, upTo(rise))).toThrow(/5 mm clear of the surface, so the body never takes off/);
  });
  it.each([0.0052, 0.006, 0.1])('a ball that rises %s m comes down where it started', (rise) => {
    expect(Math.abs(fly(ball, still, 1, upTo(rise)).duration - (2 * upTo(rise)) / G)).toBeLessThan(EXACT);
  });

  // the leg is bent up by 90 deg from 0.1 s to 0.2 s: the toe ends as high as the mass centre, which comes down later
  const body = kicker(0.5);
  const bend = stopKeys(body, {
    hip: [
      [0.1, 0],
      [0.2, Math.PI / 2],
    ],
  });
  const atToe = (up: number): number => (up + Math.sqrt(up * up + 2 * G * 0.5)) / G;
  it('rising 4 mm, the first crossing does not count and the one after the leg is bent does', () => {
    const up = upTo(0.004);
    expect(Math.abs(fly(body, bend, 0.5, up).duration - atToe(up))).toBeLessThan(LIGHT);
  });
  it('rising 6 mm, the first crossing counts', () => {
    const up = upTo(0.006);
    expect(Math.abs(fly(body, bend, 0.5, up).duration - (2 * up) / G)).toBeLessThan(LIGHT);
  });

  it('every contact point has to be clear: one that stays down holds the others back', () => {
    const two = makeTree({
      name: 'two feet',
      segments: [
        part('trunk', 60, [9, 1, 9, 0, 0, 0], {
          contacts: [
            { name: 'low', part: 'feet', point: [0, -0.503, 0], radius: 0 },
            { name: 'high', part: 'feet', point: [0, -0.5, 0], radius: 0 },
          ],
        }),
      ],
    });
    // the high one rises 7 mm above the surface, the low one 4 mm
    expect(() => fly(two, stopKeys(two, {}), 0.503, upTo(0.004))).toThrow(/every contact point is 5 mm clear/);
  });
});

describe('a leg that swings through between two looks', () => {
  const LEG = 0.8;
  const [FROM, TO, SPAN] = [-1, 1, 0.12]; // rad, rad, s: 31 rad/s and 25 m/s at the lowest point
  const body = kicker(LEG);
  const swing = (start: number): Schedule =>
    stopKeys(body, {
      hip: [
        [start, FROM],
        [start + SPAN, TO],
      ],
    });
  /** When minimum jerk first brings the toe to the surface, by bisection of the share of the span. */
  const toeDown = (depth: number): number => {
    const angle = -Math.acos((LEG - depth) / LEG);
    let [lo, hi] = [0, 0.5];
    for (let i = 0; i < 60; i++) {
      const s = (lo + hi) / 2;
      if (FROM + (TO - FROM) * s ** 3 * (10 - 15 * s + 6 * s * s) < angle) lo = s;
      else hi = s;
    }
    return SPAN * lo;
  };

  it.each([1e-3, 1e-4, 1e-6])('down by %s m for less time than from one look to the next', (depth) => {
    // below the surface from -t to t around the lowest point
    expect(SPAN - 2 * toeDown(depth)).toBeLessThan(1 / 240);
    for (let i = 0; i < 24; i++) {
      const start = 0.05 + i * 0.00083;
      const { duration, touchdown } = fly(body, swing(start), LEG - depth, 0, 0);
      expect(Math.abs(duration - start - toeDown(depth)), `swing from ${start} s`).toBeLessThan(LIGHT);
      expect(touchdown?.part).toBe('feet');
    }
  });

  it('one that passes a tenth of a millimetre above the surface is none', () => {
    for (let i = 0; i < 6; i++)
      expect(() => fly(body, swing(0.05 + i * 0.00083), LEG + 1e-4, 0, 0)).toThrow(NoTouchdownError);
  });
});

describe('where there is no touchdown within 10 s the error names the cause', () => {
  const still = stopKeys(ball, {});
  it('no contact points', () => {
    const bare = makeTree({ name: 'bare', segments: [part('bare', 60, [1, 1, 1, 0, 0, 0])] });
    expect(() => fly(bare, stopKeys(bare, {}), 1, 1)).toThrow(
      'no touchdown: this body has no contact points; state a duration instead',
    );
  });
  it('the body starts below the surface and stays there', () => {
    expect(() => fly(ball, still, 0.5, 1)).toThrow(
      'no touchdown: no moment within 10 s at which every contact point is 5 mm clear of the surface, so the body never takes off from it',
    );
  });
  it('no gravity', () => {
    expect(() => fly(ball, still, 1, 1, 0)).toThrow(
      'no touchdown: gravity is zero and nothing meets the surface within 10 s; state a duration instead',
    );
  });
  it('too high', () => {
    // 2 v / g is 10 s at 49.05 m/s
    expect(fly(ball, still, 1, 49).duration).toBeCloseTo(98 / G, 9);
    expect(() => fly(ball, still, 1, 49.1)).toThrow(
      'no touchdown: nothing meets the surface within 10 s; lower the upward speed or state a duration',
    );
  });
});
