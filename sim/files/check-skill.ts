/** The form of a skill file: what comes out is of version 2, and every fault is a FieldError with path, value and what is allowed. */

import { FieldError } from '../math/field-error.ts';
import { jsonText } from '../math/json-text.ts';
import { checkKinds, checkPhases } from './check-phases.ts';
import { check } from './check-schema.ts';
import { migrateSkill } from './migrate.ts';
import { checkSkillFile1, type SkillFile1 } from './skill-file-1.ts';
import { SKILL_FORMAT, SKILL_VERSION, type SkillFile, skillSchema } from './skill-schema.ts';
import { checkTame } from './tame-json.ts';

/** Returns the document as the file holds it; one of version 1 migrated. */
export function checkSkillFile(json: unknown): SkillFile {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const { format, version } = json as Record<string, unknown>;
  if (format !== SKILL_FORMAT) throw new FieldError('format', format, `"${SKILL_FORMAT}"`);
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    throw new FieldError('version', version, `a whole number from 1 to ${SKILL_VERSION}`);
  if (version > SKILL_VERSION)
    throw new FieldError('version', version, `at most ${SKILL_VERSION} (this file comes from a newer Shapeflight)`, {
      kind: 'newer',
      reads: SKILL_VERSION,
    });
  if (version === 1) return migrateSkill(checkSkillFile1(json));
  checkKinds(json as Record<string, unknown>);
  const file = check(skillSchema, json);
  checkPhases(file);
  return file;
}

/** A skill file as stable, pretty JSON. */
export const formatSkill = (file: SkillFile | SkillFile1): string => `${jsonText(file)}\n`;
