/** Releases of one swing share its run: each is, bit for bit, what a run of its own would give. */
import { describe, expect, it } from 'vitest';
import { holdLate } from '../../sim/contact/late-hand.ts';
import { makeSwing } from '../../sim/contact/make-swing.ts';
import type { SwingSpec } from '../../sim/contact/swing-spec.ts';
import { casesOf } from '../corpus.ts';
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
  const swing = makeSwing(spec);
  const s = swing.stateAt(0);
  const late = hand && holdLate(swing, hand.hand, hand.s);
  return [
    ...[swing.duration, s.theta, s.w, s.h, ...s.p_WScm_W, ...s.v_WScm_W, ...s.p_WBo_W, ...s.v_WBo_W],
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

describe('releases by angle, by time, late and early, of a swing driven and of one at its limits', () => {
  const rnd = random(41);
  const asks = Array.from({ length: casesOf(1000, 80) }, (_, i): SwingSpec => {
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

it('a state does not depend on what was read before it', () => {
  const swing = makeSwing(twoGiants);
  const early = swing.stateAt(-swing.duration + 0.5);
  const planned = swing.stateAt(0);
  expect(swing.columns.t.length).toBeGreaterThan(2000);
  expect(swing.stateAt(-swing.duration + 0.5)).toEqual(early);
  expect(swing.stateAt(0)).toEqual(planned);
});

it('columns are those of a swing of its own, also where the run has gone on for others', () => {
  const spec = { ...short, release: { at: 'time', s: 0.2 } as const };
  makeSwing({ ...short, release: { at: 'time', s: 0.34 } });
  const [shared, alone] = [makeSwing(spec), makeSwing(own(spec))];
  expect(shared.columns).toEqual(alone.columns);
  expect(shared.joints).toEqual(alone.joints);
});

it('a late release is a release at its time', () => {
  const s = makeSwing(twoGiants).duration + 0.02;
  expect(same(bits({ ...twoGiants, release: { at: 'time', s } }), bits({ ...twoGiants, late: 0.02 }))).toBe(true);
  expect(() => makeSwing({ ...twoGiants, late: -5 })).toThrow(/swing\.release\.lateS/);
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
