/**
 * A solve with four unknowns, on the built engine: the full twist and the double twist from their own start, and the
 * flights it takes. Read the column "min": other work on the machine only adds.
 */
import { bench, describe } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const BOTH = ['takeoff.h.z', 'takeoff.speedUp', 'block:2.start'];
/** when the arms open again */
const OPENS = { 'back-straight-full': 'block:2.end', 'back-straight-double': 'block:4.start' } as const;

describe('a solve with 4 unknowns', () => {
  for (const id of ['back-straight-full', 'back-straight-double'] as const) {
    const spec = sim.parseSkill(skills[id], { athletes, shapes });
    const aim = sim.ownAim(spec);
    const unknowns = [...BOTH, OPENS[id]].map((input) => sim.makeUnknown(aim.spec, input));
    const first = sim.solve({ ...aim, unknowns, answers: 1 });
    console.log(
      `${id}: ${first.solutions.length} answer, ${first.flights} flights; three answers: ${sim.solve({ ...aim, unknowns }).flights} flights`,
    );
    bench(`${id}, one answer`, () => void sim.solve({ ...aim, unknowns, answers: 1 }), { time: 3000, warmupTime: 500 });
    bench(`${id}, up to three`, () => void sim.solve({ ...aim, unknowns }), { time: 3000, warmupTime: 500 });
  }
});
