/** The phases of a skill file by their place: what comes before the flight, the flight, what comes after it. */
import type { FileBefore, FileFlight, FileLanding } from './phase-schema.ts';
import type { SkillFile } from './skill-schema.ts';

type Phases = Pick<SkillFile, 'phases'>;

/** Every checked file has one. */
export function flightOf({ phases }: Phases): FileFlight {
  const flight = phases.find((phase) => phase.kind === 'flight');
  if (!flight) throw new RangeError('a skill without a flight');
  return flight;
}

export const beforeOf = ({ phases }: Phases): FileBefore | undefined =>
  phases.find((phase) => phase.kind === 'swing' || phase.kind === 'contact');

export const afterOf = ({ phases }: Phases): FileLanding | undefined =>
  phases.find((phase) => phase.kind === 'landing');

/** "phases[1]": where its fields are, for an error that names one. */
export const pathOf = ({ phases }: Phases, kind: SkillFile['phases'][number]['kind']): string =>
  `phases[${phases.findIndex((phase) => phase.kind === kind)}]`;
