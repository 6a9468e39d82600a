// A last shape held until touchdown asks nothing of touchdown: one call and a kept flyer fly one flight, early or late.

import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import {
  AGREEMENT,
  buildSkill,
  calcFrames,
  calcTiltAccount,
  findInput,
  flySkill,
  frameTimes,
  type LaunchedSkill,
  makeFlyer,
  NoAgreementError,
  offerChanges,
  parseSkill,
  relaunch,
  ScheduleOrderError,
  type SkillSpec,
} from '../../sim/index.ts';
import { poseAt } from '../../sim/skill/held-stretch.ts';
import { someOf } from '../corpus.ts';
import { expectSameEnd, fileOf, launchedOf, specOf } from './load.ts';

const shelf = { athletes, shapes };
const specs = Object.entries(skills).map(([id, file]) => [id, parseSkill(file, shelf)] as const);
const isHeld = ({ blocks }: SkillSpec): boolean => {
  const last = blocks.at(-1);
  return last?.to.anchor === 'touchdown' && last.from.anchor !== 'touchdown';
};
const touchesDown = specs.filter(([, spec]) => spec.end.kind === 'touchdown');

/** What a flyer makes of a skill: the flight, or the name of what it refuses. */
const attempt = (fly: (skill: LaunchedSkill) => ReturnType<typeof flySkill>, skill: LaunchedSkill) => {
  try {
    return fly(skill);
  } catch (error) {
    return error as Error;
  }
};
const faster = (spec: SkillSpec, by: number): LaunchedSkill => {
  const skill = launchedOf(spec);
  const [along, up, across] = skill.takeoff.v_WScm_W;
  return relaunch(skill, { takeoff: { ...skill.takeoff, v_WScm_W: [along, up + by, across] } });
};

describe('the two flyers agree at a take-off a little slower or faster', () => {
  it.each(someOf(touchesDown, 6))('%s', (_, spec) => {
    for (const by of [-0.2, -0.05, -0.02, 0, 0.02, 0.2]) {
      const one = attempt(flySkill, faster(spec, by));
      const other = attempt((skill) => makeFlyer().fly(skill), faster(spec, by));
      if (one instanceof Error || other instanceof Error) {
        expect([one instanceof Error && one.name, other instanceof Error && other.name]).toEqual([
          (one as Error).name,
          (one as Error).name,
        ]);
        // refused only where a motion is anchored to touchdown and its keys cannot be in order
        expect(isHeld(spec), `${by} m/s: ${(one as Error).message}`).toBe(false);
        expect(one instanceof ScheduleOrderError || one instanceof NoAgreementError).toBe(true);
        continue;
      }
      expect(Math.abs(one.duration - other.duration)).toBeLessThanOrEqual(AGREEMENT);
      expectSameEnd(one, other);
    }
  });
});

describe('a last shape that touchdown comes before', () => {
  const spec = specOf(fileOf('former/back-straight-double'));
  const start = spec.blocks.at(-1)?.from.s ?? 0;

  it('is on its way: a double twist, 0.02 m/s slower', () => {
    const flight = flySkill(faster(spec, -0.02));
    expect(flight.duration).toBeLessThan(flySkill(launchedOf(spec)).duration);
    expect(Math.abs(flight.duration - start)).toBeLessThan(0.02);
  });

  it('T is the least T at which the flight built with these keys touches down: it moves smoothly past the start', () => {
    const T = (by: number): number => flySkill(faster(spec, by)).duration;
    const steps = [-0.06, -0.05, -0.04, -0.03, -0.02, -0.01, 0, 0.01].map(T);
    expect(steps[0]).toBeLessThan(start);
    expect(steps[steps.length - 1]).toBeGreaterThan(start);
    const rises = steps.slice(1).map((t, i) => t - steps[i]);
    // 2 dv / g = 2.0 ms a step, and a little with the turned body; measured 2.0 to 2.2 ms
    for (const rise of rises) expect(rise).toBeGreaterThan(0.0015);
    for (const rise of rises) expect(rise).toBeLessThan(0.003);
  });

  it('has a tilt account like any other flight', () => {
    const skill = faster(spec, -0.05);
    const account = calcTiltAccount(skill);
    expect(Number.isFinite(account.total.greatest)).toBe(true);
  });

  it('is on its way with arms wide and arms in as well', () => {
    const skill = faster(spec, -0.05);
    const flight = flySkill(skill);
    const frames = calcFrames(flight, frameTimes(flight.duration, 240));
    const { put, value } = findInput(spec, 'takeoff.speedUp');
    const arms = offerChanges({ spec: put(spec, value - 0.05), skill, flight, frames }).find((o) => o.kind === 'arms');
    if (!arms || !('spec' in arms)) throw new Error('the arms of a double twist are asked about');
    const { schedule, contacts = [] } = buildSkill(arms.spec);
    const other = flySkill(relaunch(skill, { schedule, contacts }));
    const hip = skill.body.angles.findIndex((a) => a.name === 'hipFlexionR');
    const landing = skill.schedule.blocks.at(-1);
    expect(flight.duration).toBeLessThan(landing?.from.s ?? 0);
    const [own, version] = [flight, other].map((f) => poseAt(f, flight.duration)[hip]);
    expect(own).toBeLessThan(landing?.pose[hip] ?? 0);
    expect(version).toBeCloseTo(own, 9);
  });

  it('a key inside the held shape is still anchored to touchdown, and is refused by name where it comes too late', () => {
    const up = findInput(spec, 'takeoff.speedUp');
    const keyed: SkillSpec = {
      ...up.put(spec, up.value - 0.05),
      keys: [{ angle: 'neckFlexion', at: { anchor: 'touchdown', s: -0.001 }, value: 0.2, kind: 'stop' }],
    };
    const refuse = () => flySkill(launchedOf(keyed));
    expect(refuse).toThrow(NoAgreementError);
    expect(refuse).toThrow(/out of order: the start of block 5 .* and the end of block 5/);
  });
});
