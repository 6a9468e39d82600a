/** An athlete file, or a bare athlete, checked. */
import { FieldError } from '../math/field-error.ts';
import type { AthleteSpec } from '../skill/skill-spec.ts';
import { ATHLETE_FORMAT, ATHLETE_VERSION, type Athlete, athleteFileSchema, athleteSchema } from './athlete-schema.ts';
import { inSi } from './athlete-si.ts';
import { check } from './check-schema.ts';
import { checkTame } from './tame-json.ts';

/** As the file holds it. */
export function parseAthlete(json: unknown): Athlete {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const { format, version } = json as Record<string, unknown>;
  if (format === undefined) return check(athleteSchema, json);
  if (format !== ATHLETE_FORMAT) throw new FieldError('format', format, `"${ATHLETE_FORMAT}"`);
  if (version !== ATHLETE_VERSION) throw new FieldError('version', version, String(ATHLETE_VERSION));
  return check(athleteFileSchema, json).athlete;
}

/** The same in SI, ready for makeBody. */
export const readAthlete = (json: unknown): AthleteSpec => inSi(parseAthlete(json));
