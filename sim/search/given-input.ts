/** A number of the take-off that a swing or a contact gives: it cannot be varied, and the error says what can. */
import { FieldError } from '../math/field-error.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';

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

/** Refuses an id that names what the launch gives. */
export function checkStated({ start }: SkillSpec, id: string): void {
  if (!id.startsWith('takeoff.') || start.kind === 'stated') return;
  if (start.kind === 'contact')
    throw new GivenInputError(id, 'contact', ['contact.force', 'contact.lean', 'contact.h.z']);
  const release = start.swing.release.at === 'angle' ? 'swing.releaseAngle' : 'swing.releaseTime';
  throw new GivenInputError(id, 'swing', [release, 'swing.late', 'swing.key:3.angle']);
}
