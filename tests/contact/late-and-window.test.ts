/** One hand late, and the release window: laws and what they come to. */

import { describe, expect, it } from 'vitest';
import { holdLate } from '../../sim/contact/late-hand.ts';
import { makeSwing } from '../../sim/contact/make-swing.ts';
import { calcFlightEnd } from '../../sim/measure/flight-end.ts';
import { flySkill } from '../../sim/skill/flyer.ts';
import { releaseTakeoff } from '../../sim/skill/release-takeoff.ts';
import { calcFormerTime, calcReleaseWindow } from '../../sim/skill/release-window.ts';
import type { Skill, SkillTarget } from '../../sim/skill/skill.ts';
import { launchedWith } from '../skill/load.ts';
import { DEG, G, gymnast, twoGiants } from './swings.ts';

const swing = makeSwing(twoGiants);
const smoothing = { kind: 'gcv' as const };
const straight: Skill['schedule'] = {
  base: gymnast.angles.map((a) =>
    a.name.startsWith('shoulderElevation') ? 178 * DEG : a.name.startsWith('shoulderPlane') ? 90 * DEG : 0,
  ),
  blocks: [],
  keys: [],
  sampled: [],
  smoothing,
};

describe('one hand late', () => {
  it('no time late is no change at all', () => {
    const late = holdLate(swing, 'right', 0);
    const s = swing.stateAt(0);
    expect(late.h_Scm_W).toEqual([0, 0, s.h]);
    expect(late.v_WScm_W[0]).toBe(s.v_WScm_W[0]);
    expect(late.tilt).toBeCloseTo(0, 12);
  });

  it('left is the mirror image of right', () => {
    const [l, r] = [holdLate(swing, 'left', 0.02), holdLate(swing, 'right', 0.02)];
    for (const [a, b] of [
      [l.h_Scm_W[0], -r.h_Scm_W[0]],
      [l.h_Scm_W[1], -r.h_Scm_W[1]],
      [l.h_Scm_W[2], r.h_Scm_W[2]],
      [l.tilt, -r.tilt],
      [l.twist, -r.twist],
      [l.v_WScm_W[0], r.v_WScm_W[0]],
    ])
      expect(Math.abs(a - b)).toBeLessThan(1e-9);
  });

  it('a hand on the midline would be the planar swing held on: to 1e-4 of its momentum', () => {
    // both shoulders on the midline put both hands there
    const { body } = twoGiants;
    const narrow = {
      ...body,
      segments: body.segments.map((s) =>
        s.name.startsWith('upperArm') ? { ...s, p_PoBo_P: [s.p_PoBo_P[0], s.p_PoBo_P[1], 0] as const } : s,
      ),
    };
    const mid = makeSwing({ ...twoGiants, body: narrow });
    const late = holdLate(mid, 'right', 0.03);
    const both = mid.stateAt(0.03);
    expect(Math.abs(late.h_Scm_W[2] / both.h - 1)).toBeLessThan(1e-4);
    expect(Math.abs(late.v_WScm_W[0] - both.v_WScm_W[0])).toBeLessThan(1e-4);
    expect(Math.abs(late.v_WScm_W[1] - both.v_WScm_W[1])).toBeLessThan(1e-4);
    expect(Math.hypot(late.h_Scm_W[0], late.h_Scm_W[1])).toBeLessThan(1e-9);
  });

  it('the momentum it gives is its impulse off the midline, within a tenth in the first 20 ms', () => {
    const late = holdLate(swing, 'right', 0.02);
    expect(Math.abs(late.h_Scm_W[1])).toBeGreaterThan(1);
    expect(Math.abs(late.h_Scm_W[1] / late.simple[1] - 1)).toBeLessThan(0.1);
  });

  it('10 ms more or less of the hand are a good part of a half twist', () => {
    const twist = (ms: number): number => {
      const late = holdLate(swing, 'right', ms / 1000);
      const end = calcFlightEnd(
        flySkill(
          launchedWith({
            title: '',
            body: gymnast,
            gravity: G,
            schedule: straight,
            takeoff: {
              height: { of: 'massCentre', y: late.p_WScm_W[1] },
              v_WScm_W: late.v_WScm_W,
              somersault: late.somersault,
              tilt: late.tilt,
              twist: late.twist,
              momentum: { kind: 'vector', h_Scm_W: late.h_Scm_W },
            },
            carried: { angles: late.angles, rates: late.rates, within: 0.15 },
            end: { kind: 'duration', duration: 0.8 },
          }),
        ),
      );
      return (end.twist - end.twist0) / (2 * Math.PI);
    };
    const [less, planned, more] = [10, 20, 30].map(twist);
    expect(Math.abs(planned)).toBeGreaterThan(Math.abs(less) + 0.02);
    expect(Math.abs(more)).toBeGreaterThan(Math.abs(planned) + 0.02);
  });

  it('a hand held past what is known is refused with its range', () => {
    expect(() => holdLate(swing, 'left', 0.2)).toThrow(/swing\.lateHand\.s/);
  });
});

describe('the release window', () => {
  const skill = launchedWith({
    title: 'single straight from the high bar',
    body: gymnast,
    gravity: G,
    schedule: straight,
    takeoff: releaseTakeoff(gymnast, swing.stateAt(0)),
    end: { kind: 'touchdown', surface: { kind: 'mat', y: 0.2 } },
    target: { somersaults: 1, somersaultWord: 'backward', twists: 0, twistWord: '', landingAngle: 0 },
  });
  /** a wish that is met on both sides of some release: turned farther than the planned one by at most a little */
  const planned = calcReleaseWindow(skill, swing, { from: -0.01, to: 0.01, count: 3, meets: () => true });
  const at0 = planned.tries[1];

  it('a wish that every release meets leaves the window open on both sides', () => {
    expect(planned.isOpen).toEqual([true, true]);
    expect(planned.width).toBeCloseTo(0.02, 12);
  });

  it('its edges are where the flights begin and cease to meet the wish, to 0.1 ms', () => {
    const band = 6 * DEG;
    const meets = (a: { over: number }): boolean => Math.abs(a.over - at0.over) <= band;
    const window = calcReleaseWindow(skill, swing, { meets });
    expect(window.from).toBeLessThan(0);
    expect(window.to).toBeGreaterThan(0);
    expect(window.width).toBeLessThan(0.16);
    const upTo = (late: number) =>
      calcReleaseWindow(skill, swing, { from: Math.min(0, late), to: Math.max(0, late), count: 3, meets });
    for (const [edge, out] of [
      [window.from, -2e-4],
      [window.to, 2e-4],
    ]) {
      const inside = upTo(edge);
      expect(inside.tries[edge < 0 ? 0 : 2].meets).toBe(true);
      const beyond = edge + out;
      const outside = upTo(beyond);
      expect(outside.tries[beyond < 0 ? 0 : 2].meets).toBe(false);
    }
  });

  it('is not met by what comes down upright with another part than the feet first', () => {
    // wanted as it is
    const target = { ...skill.target, landingAngle: at0.end?.somersault ?? 0 } as SkillTarget;
    const body = {
      ...gymnast,
      contacts: gymnast.contacts.map((c) => (c.part === 'feet' ? { ...c, part: 'hands' } : c)),
    };
    const onHands = calcReleaseWindow(launchedWith({ ...skill, body, target }), swing, {
      from: -0.03,
      to: 0.03,
      count: 7,
    });
    expect(onHands.tries.some((one) => Math.abs(one.over) < 10 * DEG)).toBe(true);
    expect(onHands.tries.filter((one) => one.meets)).toEqual([]);
  });

  it('the time that the former window allowed is that of an even course between its bounds', () => {
    // a degree a millisecond: 20 degrees to each side
    const tries = [-40, -20, 0, 20, 40].map((ms) => ({
      late: ms / 1000,
      over: ms * DEG,
      twistOff: 0,
      away: 0,
      meets: false,
    }));
    const window = { tries, from: 0, to: 0, width: 0, isOpen: [false, false], tolerance: 1e-7 } as const;
    expect(calcFormerTime(window)).toBeCloseTo(0.04, 9);
    const twisted = { ...window, tries: tries.map((one) => ({ ...one, twistOff: 50 * DEG })) };
    expect(calcFormerTime(twisted)).toBe(0);
  });

  it('its coarser tolerance moves no landing by more than 1e-5 rev', () => {
    const fine = calcReleaseWindow(skill, swing, {
      from: -0.01,
      to: 0.01,
      count: 3,
      meets: () => true,
      tolerance: 1e-11,
    });
    planned.tries.forEach((a, i) => {
      expect(Math.abs(a.over - fine.tries[i].over) / (2 * Math.PI)).toBeLessThan(1e-5);
    });
  });

  it('without a target or a wish of its own it says what is missing', () => {
    const { target: _, ...aimless } = skill;
    expect(() => calcReleaseWindow(launchedWith(aimless), swing)).toThrow(/target/);
  });
});
