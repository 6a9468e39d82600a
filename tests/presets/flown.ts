/** Ready skills flown from end to end, one flight or more. */
import { athletes, chains, shapes, skills } from '../../presets/index.ts';
import * as contact from '../../sim/contact/index.ts';
import { buildChain, type FlownChain, flyChain, parseChain, type SkillFile } from '../../sim/index.ts';

export const fileOf = (id: string): SkillFile => skills[id] ?? chains[id];

const flown = (file: SkillFile): FlownChain => flyChain(buildChain(parseChain(file, { athletes, shapes })), contact);

export const flownOf = (id: string): FlownChain => flown(fileOf(id));

export const flightsOf = (id: string): FlownChain => flightsOfFile(fileOf(id));

/** Its flights alone: a landing takes longer than all of them. */
export function flightsOfFile(file: SkillFile): FlownChain {
  return flown({ ...file, phases: file.phases.filter(({ kind }) => kind !== 'landing') });
}
