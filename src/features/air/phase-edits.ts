/** Phases taken out of a chain: what gives its first flight, what ends its last, or a contact between two flights with the flight that it gives. */
import type { SkillFile } from '../../../sim/index.ts';
import { legsOf } from '../../../sim/math/phases.ts';
import type { PhaseSpan, WholeResult } from '../../jobs/kinds/whole-data.ts';

/** Undefined: it cannot go on its own. A first flight that begins with a contact or swing keeps its stated take-off, where it has one. */
export function withoutPhase(
  file: SkillFile,
  { legs }: Pick<WholeResult, 'legs'>,
  { kind, leg }: Pick<PhaseSpan, 'kind' | 'leg'>,
): SkillFile | undefined {
  const places = legsOf(file);
  const place = places[leg];
  if (!place || kind === 'flight') return undefined;
  const drop = (...gone: readonly (number | undefined)[]): SkillFile => ({
    ...file,
    phases: file.phases.filter((_, i) => !gone.includes(i)),
  });
  if (kind === 'landing') return leg === legs.length - 1 ? drop(place.after) : undefined;
  // what gives the first flight is changed where its take-off is known: with its settings
  return leg === 0 || places.length < 2 ? undefined : drop(place.before, place.flight);
}
