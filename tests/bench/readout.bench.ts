/** What a drag or the cursor asks for besides the flight: posing, hand contacts, overlaps, tilt account, explanation, sight. */

import { bench, describe } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { flightIn } from '../files/parts.ts';
import { launchedOf } from '../skill/load.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const shelf = { athletes, shapes };
const skillOf = (file: (typeof skills)[string]) => launchedOf(sim.parseSkill(file, shelf));
const full = skillOf(skills['back-straight-full']);
const flight = sim.flySkill(full);
const frames = sim.calcFrames(flight, sim.frameTimes(flight.duration, 120));
const tuck = skills['double-back-tuck'];
const anchors = { apex: 0.53, touchdown: 1.1 };
const at = (s: number) => ({ anchor: 'takeoff' as const, s });

let turn = 0;
/** A tuck held by the shins, at hip angles no call before had. */
function held(): typeof full {
  turn++;
  const blocks = flightIn(tuck).schedule.blocks?.map((b) =>
    b.shape === 'tuck' ? { ...b, adjustDeg: { hipFlexion: 125 - 0.01 * (turn % 500) } } : b,
  );
  return skillOf({
    ...tuck,
    phases: [
      {
        ...flightIn(tuck),
        schedule: {
          ...flightIn(tuck).schedule,
          blocks,
          contacts: [{ hand: 'both', on: 'shin', from: at(0.4), to: at(0.68) }],
        },
      },
    ],
  });
}

describe('beside a flight', () => {
  const pose = full.body.angles.map(() => 0.1);
  bench('a hand led to a place', () => {
    turn++;
    sim.reachTo(full.body, pose, { end: 'handR', p_BoE_B: [0.2 + 0.01 * (turn % 30), 0.3, 0.2] });
  });
  bench('a schedule with both hands on the shins for 0.28 s', () => {
    sim.compileSkillSchedule(held(), anchors);
  });
  bench('overlaps of a flight', () => {
    sim.calcOverlaps(flight, frames);
  });
  bench('tilt account', () => {
    sim.calcTiltAccount(full, { flight });
  });
  bench('explanation at an instant', () => {
    sim.calcExplanation(flight, 0.2);
  });
  bench('sight of the landing', () => {
    sim.calcSight(flight, frames);
  });
});
