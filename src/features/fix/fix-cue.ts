/** A fix as a cue: what the athlete is to change. Loaded with the search. */
import { causeOfFix, joinCauses, wordCause } from '../../../sim/words/cause-words.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import type { FixedSkill } from '../../engine/fix.ts';

export const wordCue = (
  { steps, airTime }: FixedSkill,
  wordOf: (shape: string) => string,
  left: string | undefined,
): string => joinCauses(steps.map((step) => wordCause(causeOfFix(step, airTime, wordOf, left), 'cue', PAGE_NUMBERS)));
