/** Releases of one swing share its run: each is, bit for bit, what a run of its own would give. */
import { describe, expect, it } from 'vitest';
import { followSwing, releaseSwing } from '../../sim/contact/follow-swing.ts';
import { makeSwing } from '../../sim/contact/make-swing.ts';
import type { SwingSpec } from '../../sim/contact/swing-spec.ts';
import { DEG, gymnast, twoGiants } from './swings.ts';

/** A short way through the bottom, so that a thousand runs of their own take seconds. */
const short: SwingSpec = {
  ...twoGiants,
  start: { kind: 'given', angle: -40 * DEG, rate: 5.5 },
  moves: { ...twoGiants.moves, rounds: 1 },
  duration: 0.5,
};
/** Another object, so that nothing of a swing before is found. */
const own = (spec: SwingSpec): SwingSpec => ({ ...spec, body: { ...spec.body } });

const bits = (spec: SwingSpec, hand?: { hand: 'left' | 'right'; s: number }): number[] => {
  const { course, state: s, late, barX } = releaseSwing(spec, hand);
  return [
    ...[course.duration, barX, s.theta, s.w, s.h, ...s.p_WScm_W, ...s.v_WScm_W, ...s.p_WBo_W, ...s.v_WBo_W],
    ...[...s.angles, ...s.rates, ...s.grip, ...s.rail],
    ...(late ? [...late.p_WScm_W, ...late.v_WScm_W, ...late.h_Scm_W, ...late.quat_WB, late.peak, ...late.rates] : []),
  ];
};
const same = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((x, i) => Object.is(x, b[i]));

function random(seed: number): () => number {
  let s = seed;
  return () => {
    s = (s * 16807) % 2147483647;
    return s / 2147483647;
  };
}

describe('a thousand releases by angle, by time, late and early, of a swing driven and of one at its limits', () => {
  const rnd = random(41);
  const asks = Array.from({ length: 1000 }, (_, i): SwingSpec => {
    const spec = { ...short, ...(i % 3 === 0 ? { strength: 0.5 } : {}) };
    const late = i % 2 === 0 ? 0 : -0.03 + 0.06 * rnd();
    return i % 5 === 0
      ? { ...spec, late, release: { at: 'time', s: 0.05 + 0.25 * rnd() } }
      : { ...spec, late, release: { at: 'angle', angle: (-20 + 90 * rnd()) * DEG } };
  });

  it('are the same bits from one run as from runs of their own', () => {
    expect(asks.filter((spec) => !same(bits(spec), bits(own(spec))))).toEqual([]);
  });

  it('some joint is at its limit in those that have limits', () => {
    const weak = makeSwing({ ...short, strength: 0.5, release: { at: 'time', s: 0.35 } });
    expect(weak.driven).toBe(false);
  });

  it('so are late hands', () => {
    for (const spec of asks.slice(0, 12)) {
      const hand = { hand: 'right', s: 0.02 * rnd() } as const;
      expect(same(bits(spec, hand), bits(own(spec), hand))).toBe(true);
    }
  });
});

it('a swing made for display lets go with the same bits, whichever was asked for first', () => {
  for (const swing of [makeSwing(twoGiants), makeSwing(own(twoGiants))]) {
    const { state, course } = releaseSwing(own(twoGiants));
    expect(swing.duration).toBe(course.duration);
    expect(swing.stateAt(0)).toEqual(state);
  }
});

it('a state does not depend on what was read before it', () => {
  const course = followSwing(twoGiants);
  const early = course.stateAt(-course.duration + 0.5);
  course.stateAt(course.until);
  expect(course.stateAt(-course.duration + 0.5)).toEqual(early);
});

it('a late release is a release at its time', () => {
  const planned = releaseSwing(twoGiants);
  const late = releaseSwing({ ...twoGiants, late: 0.02 });
  const s = planned.course.duration + 0.02;
  expect(same(bits({ ...twoGiants, release: { at: 'time', s } }), bits({ ...twoGiants, late: 0.02 }))).toBe(true);
  expect(late.course.duration).toBe(s);
  expect(() => releaseSwing({ ...twoGiants, late: -5 })).toThrow(/swing\.release\.lateS/);
});

it('a change of the moves, of a joint or of the body is another swing', () => {
  const bent = { ...short, release: { at: 'time', s: 0.4 } as const };
  const base = bits(bent);
  const keys = { ...bent.moves.keys, hip: [{ at: 0, value: 0.1, kind: 'stop' as const }] };
  for (const other of [
    { ...bent, moves: { ...bent.moves, keys } },
    { ...bent, strength: 0.5 },
    { ...bent, rail: { ...bent.rail, mass: 6 } },
    { ...bent, body: { ...gymnast, mass: gymnast.mass, contacts: gymnast.contacts } },
  ])
    expect(same(bits(other), base)).toBe(other.body !== gymnast);
});
