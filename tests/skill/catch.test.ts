/** Hands and rail through a flight, whether they meet, and what is named where they do not. */
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/start-room.ts';
import type { Flight } from '../../sim/flight/flight.ts';
import { applyInto } from '../../sim/math/rot.ts';
import { calcPose } from '../../sim/motion/pose.ts';
import { makeState, readState } from '../../sim/motion/state.ts';
import { type CatchSpec, calcCatch } from '../../sim/skill/catch.ts';
import { calcCatchWatch, type HandAt } from '../../sim/skill/catch-watch.ts';
import { AFTER, type CatchFlight, flyToBar } from '../contact/catches.ts';

const railY = contact.getRail('highBar').height;

/** Hand, shoulder and mass centre by the pose alone, X and Y. */
function placesAt(flight: Flight, t: number, side: 'L' | 'R') {
  const { body } = flight;
  const state = makeState(body);
  readState(flight, t, state);
  const { R_WS, p_WSo_W } = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
  const index = (name: string): number => body.segments.findIndex((s) => s.name === name + side);
  const [hand, upper] = [index('hand'), index('upperArm')];
  const p = [0, 0, 0];
  applyInto(R_WS, 9 * hand, body.contacts.find((c) => c.name === `knuckle${side}`)?.p_BoC_B ?? [0, 0, 0], 0, p, 0);
  const at = (i: number, k: number): number => p_WSo_W[3 * i + k];
  return {
    hand: [at(hand, 0) + p[0], at(hand, 1) + p[1]],
    shoulder: [at(upper, 0), at(upper, 1)],
    centre: [state.p_WScm_W[0], state.p_WScm_W[1]],
  };
}

describe('what is watched', () => {
  const { flight, spec } = flyToBar({ isMoving: true, h: [3, 2, 8], tilt: 6, twist: 20 });
  const rail = [spec.alongX, railY];
  const watch = calcCatchWatch(flight, { x: spec.alongX, y: railY });

  it('speeds are those of the places: by differences a tenth of a millisecond apart, to 1e-5 m/s', () => {
    /** m/s: measured 2e-7 */
    const DIFFERENCES = 1e-5;
    for (const t of [0.1, 0.33, 0.49])
      for (const [side, name] of [
        ['L', 'left'],
        ['R', 'right'],
      ] as const) {
        const h = 1e-4;
        const [a, m, b] = [t - h, t, t + h].map((s) => placesAt(flight, s, side));
        const v = [0, 1].map((k) => (b.hand[k] - a.hand[k]) / (2 * h));
        const way = [0, 1].map((k) => rail[k] - m.shoulder[k]);
        const far = Math.hypot(...way);
        const along = (v[0] * way[0] + v[1] * way[1]) / far;
        const hand: HandAt = watch.at(t)[name];
        expect(Math.abs(hand.along - along)).toBeLessThan(DIFFERENCES);
        expect(Math.abs(hand.across - Math.sqrt(v[0] ** 2 + v[1] ** 2 - along ** 2))).toBeLessThan(DIFFERENCES);
        expect(hand.distance).toBeCloseTo(Math.hypot(m.hand[0] - rail[0], m.hand[1] - rail[1]), 12);
        const nearing = [a, b].map(({ centre }) => Math.hypot(centre[0] - rail[0], centre[1] - rail[1]));
        expect(Math.abs(watch.at(t).toward - (nearing[0] - nearing[1]) / (2 * h))).toBeLessThan(DIFFERENCES);
      }
  });

  it('a straight arm on the rail has no reach left, a shoulder farther away misses what it is farther', () => {
    const { flight: straight, spec: own } = flyToBar();
    const near = calcCatchWatch(straight, { x: own.alongX, y: railY }).at(0.5).left;
    expect(near.distance).toBeCloseTo(0, 12);
    expect(near.reach).toBeCloseTo(0, 12);
    const { shoulder } = placesAt(straight, 0.5, 'L');
    const way = [own.alongX - shoulder[0], railY - shoulder[1]];
    const far = calcCatchWatch(straight, { x: own.alongX + 0.3 * way[0], y: railY + 0.3 * way[1] }).at(0.5).left;
    expect(far.reach).toBeCloseTo(-0.3 * Math.hypot(...way), 12);
  });

  it('the rail is seen where the head turns to it, and no head sees nothing', () => {
    const { seen = [] } = calcCatchWatch(flight, { x: spec.alongX, y: railY });
    for (const [a, b] of seen) expect(b).toBeGreaterThan(a);
    expect(seen.length).toBeGreaterThan(0);
  });
});

describe('the moment', () => {
  const { flight, spec } = flyToBar({ isMoving: true });
  const caught = calcCatch(flight, spec, contact);

  it('is the least gap of the farther hand, and hands are within the asked gap between its two ends', () => {
    const { outcome, watch } = caught;
    if (outcome.kind !== 'caught') throw new Error(outcome.kind);
    // found to 1e-5 s
    expect(Math.abs(outcome.moment.t - 0.5)).toBeLessThan(1e-5);
    expect(outcome.moment.gap).toBeLessThan(1e-4);
    for (const t of outcome.within) {
      const { left, right } = watch.at(t);
      expect(Math.max(left.distance, right.distance)).toBeCloseTo(0.05, 4);
    }
    const [from, to] = outcome.within;
    expect(from).toBeLessThan(0.5);
    expect(to).toBeGreaterThan(0.5);
  });

  it('of a larger gap lasts longer', () => {
    const wide = calcCatch(flight, { ...spec, gap: 0.1 }, contact).outcome;
    if (wide.kind !== 'caught' || caught.outcome.kind !== 'caught') throw new Error(wide.kind);
    expect(wide.within[1] - wide.within[0]).toBeGreaterThan(
      1.5 * (caught.outcome.within[1] - caught.outcome.within[0]),
    );
  });

  it('beyond the asked speed along the arms is too fast, with speed and gap', () => {
    const { outcome } = calcCatch(flight, { ...spec, closing: 1 }, contact);
    expect(outcome.kind).toBe('tooFast');
    expect(Math.abs(outcome.moment.along)).toBeGreaterThan(1);
  });

  it('of a rail that was let go does not come in its first 0.15 s', () => {
    const start = calcCatchWatch(flight, { x: 0, y: 0 }).at(0);
    const at0 = { ...spec, alongX: start.left.x };
    const low = { x: start.left.x, y: start.left.y };
    expect(calcCatchWatch(flight, low).at(0).left.distance).toBeCloseTo(0, 12);
    expect(calcCatchWatch(flight, { ...low, left: {} }).from).toBe(0.15);
    expect(calcCatch(flight, at0, contact, {}).outcome.moment.t).toBeGreaterThanOrEqual(0.15);
  });

  it('of hands that begin at the rail does not come in its first 0.15 s', () => {
    const { left } = calcCatchWatch(flight, { x: 0, y: 0 }).at(0);
    expect(calcCatchWatch(flight, { x: left.x, y: left.y }).from).toBe(0.15);
    expect(calcCatchWatch(flight, { x: left.x + 0.12, y: left.y }).from).toBe(0);
  });

  it('lies where the rail has swung to', () => {
    const sway = { state: [0.02, 0, 0, 0], mass: 5.6, stiffness: [22000, 22000], damping: [0, 0] } as const;
    const w = Math.sqrt(22000 / 5.6);
    const { left } = calcCatchWatch(flight, { x: spec.alongX, y: railY, left: { sway } }).at(0.3);
    const still = calcCatchWatch(flight, { x: spec.alongX, y: railY }).at(0.3).left;
    expect(left.x - still.x).toBeCloseTo(-0.02 * Math.cos(w * 0.3), 12);
  });
});

describe('a miss is named by where the hand is from the rail', () => {
  const moved = (options: CatchFlight, dx: number, dy: number) => {
    const { flight, spec } = flyToBar(options);
    // the flight lower by dy is the rail higher by it
    const shifted: Flight = {
      ...flight,
      massCentreInto: (t, p, v) => {
        flight.massCentreInto(t, p, v);
        p[1] -= dy;
      },
      quatInto: flight.quatInto.bind(flight),
    };
    return calcCatch(shifted, { ...spec, alongX: spec.alongX + dx }, contact).outcome;
  };
  const rising = { v: [1.6, 4, 0] } as const;

  it.each([
    ['short', {}, 0.4, -0.3],
    ['over', { v: [3, 4.6, 0], at: 0.47 }, 0, -0.3],
    ['under', { v: [3, 4.6, 0], at: 0.47 }, 0, 0.3],
    ['past', rising, -0.6, 0.1],
  ] as const)('%s of it', (word, options, dx, dy) => {
    const outcome = moved(options, dx, dy);
    if (outcome.kind !== 'missed') throw new Error(outcome.kind);
    expect(outcome.ways).toContain(word);
    expect(outcome.moment.gap).toBeGreaterThan(0.05);
  });

  it('the flight turned half round misses the same way by the same distance', () => {
    const turned = { v: [-1.6, 2.2, 0], twist: 180, somersault: 25, h: [0, 0, -6] } as const;
    const [a, b] = [moved({}, 0.4, -0.3), moved(turned, -0.4, -0.3)];
    expect(b.kind).toBe('missed');
    expect(b.moment.gap).toBeCloseTo(a.moment.gap, 9);
    expect(b.kind === 'missed' && b.ways).toEqual(a.kind === 'missed' && a.ways);
  });

  it('of two hands the one that is there is named', () => {
    const flat = { tilt: 40, somersault: 0, h: [0, 0, 0], v: [3, 4.6, 0], at: 0.47 } as const;
    const [high, low] = [moved(flat, 0, 0.12), moved(flat, 0, -0.12)];
    expect([high, low].map((o) => o.kind === 'missed' && [o.only, o.ways[0]])).toEqual([
      ['left', 'under'],
      ['right', 'over'],
    ]);
  });
});

describe('what follows is computed of a planar, two-handed catch and of nothing else', () => {
  const swing = { sense: 'backward', moves: AFTER, late: 0, duration: 0.6 } as const;
  const of = (options: CatchFlight, change: Partial<CatchSpec>) => {
    const { flight, spec } = flyToBar(options);
    return calcCatch(flight, { ...spec, closing: 4, swing, ...change }, contact);
  };

  it('one hand', () => {
    const { notComputed, caught, outcome } = of({}, { hands: 'left' });
    expect(outcome.kind).toBe('caught');
    expect([notComputed, caught]).toEqual([{ kind: 'oneHand' }, undefined]);
  });

  it('tilted or turned', () => {
    const tilted = of({ tilt: 12, h: [0, 0, 0] }, {});
    expect(tilted.outcome.kind).toBe('caught');
    expect(tilted.notComputed?.kind).toBe('asymmetry');
    expect(tilted.caught).toBeUndefined();
    expect(of({ twist: 31, h: [0, 0, 0] }, { gap: 0.1 }).notComputed?.kind).toBe('asymmetry');
  });

  it('without moves there is an impulse and no load', () => {
    const { flight, spec } = flyToBar({});
    const still = calcCatch(flight, { ...spec, closing: 4 }, contact);
    expect(still.notComputed).toEqual({ kind: 'noMoves' });
    expect(still.caught?.impact.lost).toBeGreaterThan(0);
    expect(still.caught?.load).toBeUndefined();
  });
});
