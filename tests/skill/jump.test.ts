// A take-off by its time in the air, its height or its speed, and a rotation three ways: each against flights flown again.
import { describe, expect, it } from 'vitest';
import { calcFrames, flySkill, type LaunchedSkill, readJump, relaunch, upForAirTime } from '../../sim/index.ts';
import { isWhole } from '../corpus.ts';
import { preset, presetIds } from './load.ts';

/** Measured: under 2e-7 s. */
const MET_S = 1e-6;
/** Measured: under 1e-9 of it. */
const SAME = 1e-7;

const stated = presetIds.filter((id) => preset(id).launch.kind === 'stated');
const timed = stated.filter((id) => preset(id).end.kind === 'touchdown');
/** From floor and bed and into water; straight somersaults and a vector. */
const SAMPLE = ['back-straight-full', 'arms-in-spin', 'trampoline-barani', 'dive-forward-one-and-half-pike'];
/** with the shortest that there is */
const TOO_SHORT = /airTime: .* is not possible; allowed: from 0\.\d\d s on$/;
const framesOf = (flight: ReturnType<typeof flySkill>) => calcFrames(flight, [0, flight.duration / 2, flight.duration]);
const withUp = (skill: LaunchedSkill, up: number): LaunchedSkill['takeoff'] => ({
  ...skill.takeoff,
  v_WScm_W: [skill.takeoff.v_WScm_W[0], up, skill.takeoff.v_WScm_W[2]],
  momentum: { kind: 'vector', h_Scm_W: flySkill(skill).h_Scm_W },
});

it('there are skills that are stated, from floor, bed and into water', () => {
  expect(timed.length).toBeGreaterThan(9);
  expect(new Set(timed.map((id) => preset(id).end.surface?.kind)).size).toBeGreaterThan(2);
});

describe.each(isWhole ? timed : SAMPLE)('%s', (id) => {
  const skill = preset(id);
  const flight = flySkill(skill);
  const momentum = { kind: 'vector', h_Scm_W: flight.h_Scm_W } as const;
  it('the speed of an air time gives a flight of just that time, and its momentum is the same', () => {
    for (const share of [0.97, 1, 1.01]) {
      const wanted = share * flight.duration;
      const up = upForAirTime(skill, flight, wanted, (v) => ({ ...withUp(skill, v), momentum }));
      const flown = flySkill(relaunch(skill, { takeoff: { ...withUp(skill, up), momentum } }));
      expect(Math.abs(flown.duration - wanted)).toBeLessThan(MET_S);
      expect(flown.h_Scm_W).toEqual(flight.h_Scm_W);
    }
  });

  it('height is what the segments of the flown body rise by, put together', () => {
    const jump = readJump(skill, flight, framesOf(flight));
    const apex = skill.takeoff.v_WScm_W[1] / skill.gravity;
    const { p_WScm_W: at } = calcFrames(flight, [0, apex]);
    expect(at[4] - at[1]).toBeCloseTo(jump.rise ?? Number.NaN, 9);
    expect(at[4]).toBeCloseTo(jump.highest, 9);
  });
});

it('where landing and take-off differ the height is not g T2 / 8', () => {
  const skill = preset('dive-forward-one-and-half-pike');
  const flight = flySkill(skill);
  const { rise = 0, airTime } = readJump(skill, flight, framesOf(flight));
  expect((9.81 * airTime ** 2) / 8).toBeGreaterThan(1.5 * rise);
});

it('a time that is refused is that of no flight: none of a fine comb of speeds has it', () => {
  const skill = preset('back-tuck');
  const flight = flySkill(skill);
  const shortest = 0.3;
  expect(() => upForAirTime(skill, flight, shortest, (v) => withUp(skill, v))).toThrow(TOO_SHORT);
  for (let up = 0.2; up < 4; up += isWhole ? 0.4 : 0.8) {
    try {
      expect(flySkill(relaunch(skill, { takeoff: withUp(skill, up) })).duration).toBeGreaterThan(shortest);
    } catch (error) {
      expect(['NoAgreementError', 'ScheduleOrderError', 'NoTouchdownError']).toContain((error as Error).name);
    }
  }
});

describe('an air time that cannot be had', () => {
  const skill = preset('back-tuck');
  const flight = flySkill(skill);
  const tryFor = (s: number) => () => upForAirTime(skill, flight, s, (v) => withUp(skill, v));
  it.runIf(isWhole).each([0.1])('%s s is refused with the shortest that there is', (s) => {
    expect(tryFor(s)).toThrow(TOO_SHORT);
  });
  it('9 s is refused with the longest', () => {
    expect(tryFor(9)).toThrow(/airTime: .* is not possible; allowed: up to \d\.\d\d s/);
  });
});

it('momentum, straight somersaults and turning rate are of one flight', () => {
  const skill = preset('back-straight');
  const flight = flySkill(skill);
  const jump = readJump(skill, flight, framesOf(flight));
  const { momentum } = skill.takeoff;
  expect(momentum.kind === 'straight' && momentum.somersaults).toBeCloseTo(jump.straight ?? Number.NaN, 9);
  expect(Math.abs(jump.momentum / flight.h_Scm_W[2] - 1)).toBeLessThan(SAME);
  const again = calcFrames(flight, [0, 1e-5]);
  expect((again.somersault[1] - again.somersault[0]) / 1e-5 / (2 * Math.PI)).toBeCloseTo(jump.rate ?? Number.NaN, 4);
});
