/** The result of a skill as a line of paper: what carries it is bold. */
import type { SkillVerdict } from '../../sim/index.ts';
import {
  degreesOf,
  type NumberWords,
  PLAIN_NUMBERS,
  startsSentence,
  upper,
  verdictClauses,
} from '../../sim/words/verdict-words.ts';
import { BOLD, type TextLine } from './set-text.ts';

/** In metric, as paper writes it. */
const PAPER_NUMBERS: NumberWords = { ...PLAIN_NUMBERS, angle: (rad) => `${degreesOf(rad)}°` };

export const resultLine = (verdict: SkillVerdict, numbers = PAPER_NUMBERS): TextLine =>
  verdictClauses(verdict, numbers).flatMap(({ join, runs }) => [
    ...(join ? [{ text: join }] : []),
    ...runs.map(({ text, weight }, i) => ({
      text: i === 0 && startsSentence(join) ? upper(text) : text,
      ...(weight === 'strong' ? { weight: BOLD } : {}),
    })),
  ]);
