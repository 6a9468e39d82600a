/** Which inputs a skill has. */
import { FieldError, unknownName } from '../math/field-error.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { checkHanded, checkStated } from './given-input.ts';
import type { Input } from './input.ts';
import { listBodyInputs } from './input-body.ts';
import { listContactInputs } from './input-contact.ts';
import { isHanded, ofAllLegs, ofLeg } from './input-leg.ts';
import { listScheduleInputs, scheduleInput } from './input-schedule.ts';
import { listSegmentInputs } from './input-segment.ts';
import { listSwingInputs } from './input-swing.ts';
import { listTakeoffInputs } from './input-takeoff.ts';
import { legIndexOf, ownId } from './leg-id.ts';

/** All inputs that the skill names: take-off, or what gives it, landing surface, blocks and what they adjust, keys, body; then those of the legs before. */
export function listInputs(spec: SkillSpec): Input[] {
  const { earlier = [] } = spec;
  const body = [...listBodyInputs(spec), ...listSegmentInputs(spec)];
  return [
    ...listMoves(spec, earlier.length),
    ...(earlier.length > 0 ? body.map(ofAllLegs) : body),
    ...earlier.flatMap((leg, i) => listMoves(leg, i).map((input) => ofLeg(input, spec, i))),
  ];
}

/** Of one leg, with so many before it, all but the body. */
function listMoves(spec: SkillSpec, before: number): Input[] {
  const own = [
    ...listSwingInputs(spec),
    ...listContactInputs(spec),
    ...listTakeoffInputs(spec),
    ...listScheduleInputs(spec),
  ];
  return before > 0 ? own.filter(({ id }) => !isHanded(id)) : own;
}

/** The input of an id; blocks take any angle of the body, more than the list has. */
export function findInput(spec: SkillSpec, id: string): Input {
  const { earlier = [] } = spec;
  const listed = listInputs(spec);
  const input = listed.find((i) => i.id === id);
  if (input) return input;
  const index = legIndexOf(id);
  const leg = index === undefined ? spec : earlier[index];
  const own = ownId(id);
  if (leg) {
    const inBlock = scheduleInput(leg, own);
    if (inBlock) return index === undefined ? inBlock : ofLeg(inBlock, spec, index);
    if (index !== undefined && listed.some((i) => i.id === own && i.level === 'body'))
      throw new FieldError(id, id, `${own}: the body is one in all legs`);
    const at = index ?? earlier.length;
    if (at > 0 && isHanded(own)) checkHanded(id, at, listed);
    checkStated(leg, id, at > 0);
  }
  throw unknownName(
    'input',
    id,
    listed.map((i) => i.id),
    'a number of this skill',
  );
}
