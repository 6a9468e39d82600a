/** Where a file that the page writes is from: program, what was done, the skill against the ready one, tolerance. Loaded with what writes files. */
import { athletes, chains, skills } from '../../presets/index.ts';
import {
  checkSkillFile,
  DEFAULT_TOLERANCE,
  originOfSkill,
  type Provenance,
  provenance,
  provenanceSvg,
  type SkillFile,
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

/**
 * Of what is handed on. A ready skill is named as it is; of any other only the file that is handed on goes into the digest: a name, age or mass
 * that stays could be guessed, and the guess tried on it.
 */
export function handedProvenanceOf(result: FlightResult, call: string, file: SkillFile): Provenance {
  const own = provenanceOf(result, call);
  if (own.inputs[0].ready?.changed === false) return own;
  const athlete = 'ref' in file.athlete ? result.athlete : file.athlete;
  return provenanceOf({ ...result, file, athlete }, call);
}

/** Where a file is from as an element for the inside of an svg element. */
export const provenanceElement = (result: FlightResult, call: string): string =>
  provenanceSvg(provenanceOf(result, call));
