/** "phases[1]": where the fields of a phase are, for an error that names one. */
import type { SkillFile } from './skill-schema.ts';

export const pathOf = ({ phases }: Pick<SkillFile, 'phases'>, kind: SkillFile['phases'][number]['kind']): string =>
  `phases[${phases.findIndex((phase) => phase.kind === kind)}]`;
