/** How sensitive the result of a skill is, in parts of a sentence. */
import {
  buildSkill,
  calcConditioning,
  contactFor,
  EXPLAIN_WORDS,
  parseSkill,
  wordConditioning,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { WholeRequest } from './whole-data.ts';

export const conditioningJob: JobKind<Omit<WholeRequest, 'study'>, undefined, never, readonly string[]> = {
  open: (request) => () => conditioning(request),
};

async function* conditioning({
  file,
  athlete,
  shapes,
}: Omit<WholeRequest, 'study'>): AsyncGenerator<never, readonly string[], boolean> {
  const skill = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const contact = await loadForJob(() => contactFor(skill));
  return wordConditioning(calcConditioning(skill, contact), EXPLAIN_WORDS.moves, '°');
}
