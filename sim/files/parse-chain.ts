/** From the JSON of a skill file to the legs of its chain; a skill of one flight is a chain of one leg. Faults name the field of the whole file. */
import { FieldError } from '../math/field-error.ts';
import { type LegPlace, legsOf } from '../math/phases.ts';
import type { ChainLegSpec, ChainSpec } from '../skill/chain-spec.ts';
import { checkSkillFile } from './check-skill.ts';
import { legFile } from './leg-file.ts';
import { type Catalogue, parseSkill } from './parse-skill.ts';
import type { FileFlight } from './phase-schema.ts';
import type { SkillFile } from './skill-schema.ts';

/** A file of one flight or several as plain specifications, SI and radians. Throws a FieldError with path, value and what is allowed. */
export function parseChain(json: unknown, shelf: Catalogue): ChainSpec {
  const file = checkSkillFile(json);
  return { title: file.title, legs: legsOf(file).map((place, leg) => parseLeg(file, place, leg, shelf)) };
}

function parseLeg(file: SkillFile, place: LegPlace, leg: number, shelf: Catalogue): ChainLegSpec {
  const spec = inFile(place, () => parseSkill(legFile(file, leg), shelf));
  const after = place.after === undefined ? undefined : file.phases[place.after];
  const next = after && after.kind !== 'landing' && after.kind !== 'flight' ? after : undefined;
  return {
    title: (file.phases[place.flight] as FileFlight).title ?? file.title,
    spec,
    ...(next && next.kind !== 'swing' ? { next: next.kind } : {}),
  };
}

/** A fault of a leg, with the place it has in the whole file. */
function inFile<T>({ before, flight, after }: LegPlace, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const places = [...(before === undefined ? [] : [before]), flight, ...(after === undefined ? [] : [after])];
    const field = error.field.replace(/^phases\[(\d+)\]/, (_, i: string) => `phases[${places[Number(i)] ?? i}]`);
    throw new FieldError(field, error.value, error.allowed, error.detail);
  }
}
