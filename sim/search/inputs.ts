/** Which inputs a skill has. */
import { unknownName } from '../math/field-error.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { checkStated } from './given-input.ts';
import type { Input } from './input.ts';
import { listBodyInputs } from './input-body.ts';
import { listContactInputs } from './input-contact.ts';
import { listScheduleInputs, scheduleInput } from './input-schedule.ts';
import { listSegmentInputs } from './input-segment.ts';
import { listSwingInputs } from './input-swing.ts';
import { listTakeoffInputs } from './input-takeoff.ts';

/** All inputs that the skill names: take-off, or what gives it, landing surface, blocks and what they adjust, keys, body. */
export function listInputs(spec: SkillSpec): Input[] {
  return [
    ...listSwingInputs(spec),
    ...listContactInputs(spec),
    ...listTakeoffInputs(spec),
    ...listScheduleInputs(spec),
    ...listBodyInputs(spec),
    ...listSegmentInputs(spec),
  ];
}

/** The input of an id; blocks take any angle of the body, more than the list has. */
export function findInput(spec: SkillSpec, id: string): Input {
  const listed = listInputs(spec);
  const input = listed.find((i) => i.id === id) ?? scheduleInput(spec, id);
  if (input) return input;
  checkStated(spec, id);
  throw unknownName(
    'input',
    id,
    listed.map((i) => i.id),
    'a number of this skill',
  );
}
