/** A number that a swing, a contact or the leg before gives: it cannot be varied, and the error says what can. */
import { FieldError } from '../math/field-error.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Input } from './input.ts';
import { listSwingInputs } from './input-swing.ts';
import { TAKEOFF_IDS } from './input-takeoff.ts';
import { legOf, ownId } from './leg-id.ts';

class GivenInputError extends FieldError {
  readonly by: 'swing' | 'contact' | 'leg';
  constructor(id: string, by: 'swing' | 'contact' | 'leg', instead: readonly string[]) {
    super(id, id, instead.join(', '));
    this.by = by;
    this.name = 'GivenInputError';
    const last = instead[instead.length - 1];
    const source = by === 'leg' ? 'leg before' : by;
    const others = instead.slice(0, -1).join(', ');
    this.message = `${id} is given by the ${source}; vary ${others}${others ? ' or ' : ''}${last}`;
  }
}

/** Refuses an id that names what the launch gives; an id that no take-off has is left to the caller. `isAfter`: another leg comes before it. */
export function checkStated(spec: SkillSpec, id: string, isAfter = false): void {
  const { start } = spec;
  if (!TAKEOFF_IDS.includes(ownId(id)) || start.kind === 'stated') return;
  const leg = legOf(id);
  const refuse = (instead: readonly string[]): GivenInputError =>
    new GivenInputError(
      id,
      start.kind,
      instead.map((own) => leg + own),
    );
  if (start.kind === 'contact')
    throw refuse(['contact.force', 'contact.lean', isAfter ? 'contact.place.along' : 'contact.h.z']);
  const release = start.swing.release.at === 'angle' ? 'swing.releaseAngle' : 'swing.releaseTime';
  const keys = listSwingInputs(spec).filter((i) => /^swing\.key:\d+\.angle$/.test(i.id));
  const key = keys.find((i) => i.id === 'swing.key:3.angle') ?? keys[0];
  throw refuse([release, 'swing.late', ...(key ? [key.id] : [])]);
}

/** What gives a leg its speed and turning, the likeliest first. */
const INSTEAD = [
  'contact.speedAlong',
  'contact.force',
  'contact.lean',
  'takeoff.speedUp',
  'takeoff.speedAlong',
  'takeoff.h.z',
  'swing.releaseAngle',
  'swing.releaseTime',
  'swing.late',
];
const MOST = 3;

/** Refuses what leg `before`, counted from 1, hands over, and names of what is listed what can be varied of it. */
export function checkHanded(id: string, before: number, listed: readonly Input[]): never {
  const ids = new Set(listed.map((i) => i.id));
  const instead = INSTEAD.map((own) => `leg${before}.${own}`).filter((one) => ids.has(one));
  throw new GivenInputError(id, 'leg', instead.slice(0, MOST));
}
