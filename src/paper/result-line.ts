/** The result of a skill as a line of paper: what carries it is bold. */
import type { SkillVerdict } from '../../sim/index.ts';
import { type NumberWords, startsSentence, upper, verdictClauses } from '../../sim/words/verdict-words.ts';
import { BOLD, type TextLine } from './set-text.ts';

export const resultLine = (verdict: SkillVerdict, numbers?: NumberWords): TextLine =>
  verdictClauses(verdict, numbers).flatMap(({ join, runs }) => [
    ...(join ? [{ text: join }] : []),
    ...runs.map(({ text, weight }, i) => ({
      text: i === 0 && startsSentence(join) ? upper(text) : text,
      ...(weight === 'strong' ? { weight: BOLD } : {}),
    })),
  ]);
