/** Whether what is landed on is the bed itself. */
import type { Skill } from './skill.ts';

/** On a bed, numbers of its own are the bed's, which throws the athlete up again; a mat by its name lies over it, and is landed on. */
export const isIntoBed = ({ end, after }: Pick<Skill, 'end' | 'after'>): boolean =>
  end.surface?.kind === 'trampoline' && typeof after?.mat !== 'string';
