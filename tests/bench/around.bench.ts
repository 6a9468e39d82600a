/** What is computed around a flight: the frames of a page or a CSV, a schedule alone, keys counted from touchdown. */
import { bench, describe } from 'vitest';
import { ownDoubleTwist as skill } from '../witness/skills.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const anchors = { apex: skill.takeoff.v_WScm_W[1] / skill.gravity, touchdown: 1.06 };
const flight = sim.flySkill(skill);
const times = sim.frameTimes(flight.duration, 240);
const landing = skill.schedule.blocks.length - 1;
/** the last shape reached as the feet meet a mat */
const fromTouchdown = sim.relaunch(skill, {
  end: { kind: 'touchdown', surface: { kind: 'mat', y: 0.2 } },
  schedule: {
    ...skill.schedule,
    blocks: skill.schedule.blocks.map((b, i) =>
      i < landing ? b : { ...b, from: { anchor: 'touchdown', s: -0.02 }, to: { anchor: 'touchdown', s: 0.3 } },
    ),
  },
});

/** ms, as in flight.bench.ts */
const LONG = { time: 3000, warmupTime: 1000 };

describe('around the double twist', () => {
  bench(
    'a schedule compiled',
    () => {
      sim.compileSchedule(skill.body, skill.schedule, anchors);
    },
    LONG,
  );
  bench(
    `all frames at 240 Hz (${times.length} rows)`,
    () => {
      sim.calcFrames(flight, times);
    },
    LONG,
  );
  bench(
    'a flight with keys counted from touchdown',
    () => {
      sim.flySkill(fromTouchdown);
    },
    LONG,
  );
});
