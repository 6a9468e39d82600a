/** What the skill is called at its place, as words; or why it is called nothing. */
import type { Refusal, SkillNames } from '../../../sim/index.ts';
import { wordBeyond, wordRefusal } from '../../../sim/words/draft-words.ts';
import { upper } from '../../../sim/words/verdict-words.ts';
import { texts } from '../words.ts';
import { codeTexts } from './code-texts.ts';

const s = texts.sentence;

/** Empty where it has no name. */
export function wordNames({ place, code, difficulty, dive, name }: SkillNames): string {
  if (place === 'trampoline') return code && difficulty ? s.code(code, difficulty, name ?? '') : '';
  if (dive) return s.dive(dive, name ?? '');
  return upper(name ?? '');
}

/** Why it has none; empty where it has one, or where nothing is counted so. */
export function wordNoName({ place, reason }: SkillNames): string {
  if (!reason) return '';
  return place === 'trampoline' ? s.noCode(reason) : place === 'floor' ? s.noName(reason) : s.noDive(reason);
}

/** Why there is no draft. */
export const wordNoDraft = (asked: string, refusal: Omit<Refusal, 'beyond'>): string =>
  codeTexts.degrees(wordRefusal(asked, refusal));

/** What a marked draft asks. */
export const wordBeyondDraft = (asks: readonly string[]): string => codeTexts.degrees(wordBeyond(asks));
