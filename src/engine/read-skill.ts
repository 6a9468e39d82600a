/** What is asked for by a code or a name. Loaded when something is typed. */
import { type AskedSkill, type DraftSpec, draftOfCode, readAsked, type SkillPlace } from '../../sim/index.ts';

export interface SkillReading {
  /** as it is written; throws a FieldError with what is allowed */
  readCode(code: string, direction?: DraftSpec['direction']): DraftSpec;
  /** a code, a dive number or a name, however loose; throws a FieldError where it means nothing */
  readAsked(text: string, place?: SkillPlace): AskedSkill;
}

export const skillReading: SkillReading = { readCode: draftOfCode, readAsked };
