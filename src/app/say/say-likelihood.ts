/** In how many of ten of the stated ranges the landing ends as it is said; empty where it was not run, or is not known yet. */
import { wordLikelihood } from '../../../sim/words/likelihood-words.ts';
import type { WholeState } from '../whole-state.ts';

export function sayLikelihood({ verdict, likelihood }: Pick<WholeState, 'verdict' | 'likelihood'>): string {
  const found = likelihood();
  const { ending } = verdict();
  return found && ending.kind === 'landed' ? wordLikelihood(found.tenths, ending.how) : '';
}
