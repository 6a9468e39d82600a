/** An estimate sheet from whatever a person has it in: its own file, plain text, or a skill that keeps one. */
import { FieldError } from '../math/field-error.ts';
import { checkSkillFile } from './check-skill.ts';
import { parseJson } from './parse-json.ts';
import { parseSheet, parseSheetText, type SheetFile, sheetOfPart } from './sheet-file.ts';
import { SKILL_FORMAT } from './skill-schema.ts';

/** `name`: of the file. `isSkill`: it is kept with that skill. Throws a FieldError. */
export function readAnySheet(text: string, name: string): { readonly sheet: SheetFile; readonly isSkill?: true } {
  const isJson = /^\uFEFF?\s*\{/.test(text) || /\.json$/i.test(name);
  if (!isJson) return { sheet: parseSheetText(text) };
  const json = parseJson(text);
  const isSkill = typeof json === 'object' && json !== null && 'format' in json && json.format === SKILL_FORMAT;
  if (!isSkill) return { sheet: parseSheet(json) };
  const sheet = checkSkillFile(json).worksheets?.[0];
  if (!sheet) throw new FieldError('worksheets', undefined, 'a sheet kept with the skill, or a sheet file');
  return { sheet: sheetOfPart(sheet), isSkill: true };
}
