/** The skill's code as words, or why there is none. */
import type { SkillCode } from '../../engine/result.ts';
import { texts } from '../words.ts';
import { codeTexts } from './code-texts.ts';

const s = texts.sentence;

/** Empty where there is no code. */
export const wordCode = (c: SkillCode): string =>
  c.reason === undefined ? s.code(c.code, c.difficulty, c.trade ?? '', c.dive ?? '') : '';

/** Why a code is missing; empty where none is. */
export const wordNoCode = (c: SkillCode): string =>
  c.reason !== undefined ? s.noCode(c.reason) : c.noDive ? s.noDive(c.noDive) : '';

/** What a draft falls short of, as a list. */
export const wordFalls = (falls: readonly string[]): string => falls.map(codeTexts.degrees).join('; ');
