/** A motion so small that squares of its errors vanish is flown like no motion (a fast-check find). */
import { expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { flySchedule } from '../../sim/index.ts';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import { part, REST } from '../checks/flown.ts';

const body = makeTree({
  name: 'pair',
  segments: [
    part('a', 1, [1, 1, 1.5, 0, 0, 0]),
    part('b', 1, [0.1, 0.05, 0.1, 0, 0, 0], {
      parent: 'a',
      joint: [0, 0.3, 0],
      hinges: [{ name: 'h', axis: [0, 0, 1] }],
      centre: [0, 0.3, 0],
    }),
  ],
});

it.each([1e-150, 1e-154, 1e-155, 1e-156, 1e-157, 1e-158, 1e-160, 1e-162, 1e-300])('a key of %s rad', (value) => {
  const schedule = compileSchedule(
    body,
    {
      base: [0],
      blocks: [],
      keys: [
        { angle: 0, at: { anchor: 'takeoff', s: 0.1 }, value: 0, kind: 'stop' },
        { angle: 0, at: { anchor: 'takeoff', s: 0.3 }, value, kind: 'stop' },
      ],
      sampled: [],
      smoothing: { kind: 'gcv' },
    },
    { apex: 0, touchdown: 0 },
  );
  const flight = flySchedule(body, schedule, REST, { kind: 'duration', duration: 0.5 }, 9.81);
  expect(flight.stats.rejected).toBe(0);
  const q = new Float64Array(4);
  flight.quatInto(0.5, q);
  expect(Math.abs(Math.abs(q[0]) - 1)).toBeLessThan(1e-15);
});
