/** A number of the take-off that a swing or a contact gives: it cannot be varied, and the error says what can. */
import { FieldError } from '../math/field-error.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { listSwingInputs } from './input-swing.ts';
import { TAKEOFF_IDS } from './input-takeoff.ts';

class GivenInputError extends FieldError {
  readonly by: 'swing' | 'contact';
  constructor(id: string, by: 'swing' | 'contact', instead: readonly string[]) {
    super(id, id, instead.join(', '));
    this.by = by;
    this.name = 'GivenInputError';
    const last = instead[instead.length - 1];
    this.message = `${id} is given by the ${by}; vary ${instead.slice(0, -1).join(', ')} or ${last}`;
  }
}

/** Refuses an id that names what the launch gives; an id that no take-off has is left to the caller. */
export function checkStated(spec: SkillSpec, id: string): void {
  const { start } = spec;
  if (!TAKEOFF_IDS.includes(id) || start.kind === 'stated') return;
  if (start.kind === 'contact')
    throw new GivenInputError(id, 'contact', ['contact.force', 'contact.lean', 'contact.h.z']);
  const release = start.swing.release.at === 'angle' ? 'swing.releaseAngle' : 'swing.releaseTime';
  const keys = listSwingInputs(spec).filter((i) => /^swing\.key:\d+\.angle$/.test(i.id));
  const key = keys.find((i) => i.id === 'swing.key:3.angle') ?? keys[0];
  throw new GivenInputError(id, 'swing', [release, 'swing.late', ...(key ? [key.id] : [])]);
}
