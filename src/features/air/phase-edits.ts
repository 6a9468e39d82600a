/** Phases taken out of a chain: what ends its last flight, or a contact or catch between two flights with the flight that it gives. */
import type { SkillFile } from '../../../sim/index.ts';
import { legsOf } from '../../../sim/math/phases.ts';
import type { PhaseSpan } from '../../jobs/kinds/whole-data.ts';

/** Undefined: it cannot go on its own. `isFile`: what is left can be read as a file. */
export function withoutPhase(
  file: SkillFile,
  { kind, leg, from }: Pick<PhaseSpan, 'kind' | 'leg' | 'from'>,
  takeoff: number,
  isFile: (file: SkillFile) => boolean,
): SkillFile | undefined {
  const places = legsOf(file);
  const place = places[leg];
  if (!place || kind === 'flight') return undefined;
  const left = (...gone: readonly (number | undefined)[]): SkillFile | undefined => {
    const less = { ...file, phases: file.phases.filter((_, i) => !gone.includes(i)) };
    return isFile(less) ? less : undefined;
  };
  if (kind === 'landing') return leg === places.length - 1 ? left(place.after) : undefined;
  // a swing after the flight is the catch's own; what gives the first flight is changed where its take-off is known: with its settings
  const isAfter = from > takeoff - 1e-9;
  return isAfter || leg === 0 ? undefined : left(place.before, place.flight);
}
