/** Where a file that the page writes is from: program, what was done, the skill against the ready one, tolerance. Loaded with what writes files. */
import { athletes, chains, skills } from '../../presets/index.ts';
import {
  checkSkillFile,
  DEFAULT_TOLERANCE,
  originOfSkill,
  type Provenance,
  provenance,
  provenanceSvg,
} from '../../sim/index.ts';
import { DRAFT_TOLERANCE } from './engine.ts';
import type { FlightResult } from './result.ts';

const ready = { ...skills, ...chains };

/** `call`: what was done, in words, as "page: frames, 240 Hz". */
export function provenanceOf({ file, athlete, draft }: FlightResult, call: string): Provenance {
  const known = Object.entries(ready).flatMap(([id, json]) => {
    if (json.title !== file.title) return [];
    const of = checkSkillFile(json);
    return [[id, { file: of, athlete: 'ref' in of.athlete ? athletes[of.athlete.ref] : of.athlete }] as const];
  });
  return provenance({
    call,
    inputs: [originOfSkill(file.title, file, athlete, Object.fromEntries(known))],
    tolerance: draft ? DRAFT_TOLERANCE : DEFAULT_TOLERANCE,
    seed: null,
  });
}

/** The same as an element for the inside of an svg element. */
export const provenanceElement = (result: FlightResult, call: string): string =>
  provenanceSvg(provenanceOf(result, call));
