/** The skill's code as words, or why there is none. */
import type { SkillCode } from '../../engine/result.ts';
import { texts } from '../words.ts';
import { codeTexts } from './code-texts.ts';

const s = texts.sentence;

const wordNumber = ({ code, isNamed }: SkillCode & { reason?: undefined }): string =>
  isNamed ? s.trampolineCode(code) : code;

/** Empty where there is no code. */
export function wordCode(c: SkillCode): string {
  if (c.reason !== undefined) return '';
  const { dive, difficulty, trade = '' } = c;
  return dive ? s.dive(dive, c.code, trade) : s.code(wordNumber(c), difficulty, trade);
}

/** The code or number alone. */
export const wordShortCode = (c: SkillCode): string =>
  c.reason !== undefined ? '' : c.dive ? s.shortDive(c.dive) : wordNumber(c);

/** Why a code is missing; empty where none is, or where none is said. */
export const wordNoCode = (c: SkillCode): string =>
  c.reason === '' ? '' : c.reason !== undefined ? s.noCode(c.reason) : c.noDive ? s.noDive(c.noDive) : '';

/** What a draft falls short of, as a list. */
export const wordFalls = (falls: readonly string[]): string => falls.map(codeTexts.degrees).join('; ');
