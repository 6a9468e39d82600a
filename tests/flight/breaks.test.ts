/** Integration steps end where the motion is only twice differentiable: every break of the schedule inside the flight. */

import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { flySkill, parseSkill } from '../../sim/index.ts';
import { someOf } from '../corpus.ts';
import { launchedOf } from '../skill/load.ts';

const TRIVIAL = 1e-12; // s: a break nearer than this to take-off or to the end needs no step of its own

describe.each(someOf(Object.keys(skills), 3, 1))('%s', (id) => {
  const skill = launchedOf(parseSkill(skills[id], { athletes, shapes }));
  it.each([{}, { tolerance: 1e-6 }, { fixedStep: 0.019 }])('with %j', (options) => {
    const flight = flySkill(skill, options);
    const inside = flight.schedule.breaks.filter((t) => t > TRIVIAL && t < flight.duration - TRIVIAL);
    expect(inside.length).toBeGreaterThan(0);
    expect(inside.filter((t) => !flight.stepTimes.includes(t))).toEqual([]);
    expect(flight.stepTimes[0]).toBe(0);
    expect(flight.stepTimes[flight.stepTimes.length - 1]).toBe(flight.duration);
    for (let i = 1; i < flight.stepTimes.length; i++)
      expect(flight.stepTimes[i]).toBeGreaterThan(flight.stepTimes[i - 1]);
  });
});
