/**
 * Flies a skill that differs little from one whose touchdown is known: for studies that fly thousands. The flights are
 * those of flySkill, but that
 * - touchdown is agreed upon from the known one on, to a stated time;
 * - a last shape held until touchdown hangs on nothing, and a body that comes down before it is reached lands on the way
 *   into it; a shape come to after it was to be left is left at once. flySkill says that such keys are out of order.
 */
import type { Flight } from '../flight/flight.ts';
import { type FlightOptions, flySchedule } from '../flight/fly.ts';
import { flySkill, NoAgreementError, usesAnchor } from './fly-skill.ts';
import type { Skill } from './skill.ts';
import { compileSkillSchedule } from './skill-schedule.ts';
import type { SkillSpec } from './skill-spec.ts';

/** Closing in takes three or four flights. */
const MOST_TRIES = 12;
/** Farther than this from the known touchdown nothing is looked for, s. */
const NEAR = 0.3;

/** The skill with a last shape that is held until touchdown held for ever, and shapes come to late left at once. */
export function freeKeys(spec: SkillSpec): SkillSpec {
  const last = spec.blocks.length - 1;
  const blocks = spec.blocks.map((b, i) => {
    const isHeld = i === last && b.to.anchor === 'touchdown' && b.from.anchor !== 'touchdown';
    const isLate = b.to.anchor === b.from.anchor && b.to.s < b.from.s;
    return isHeld || isLate ? { ...b, to: b.from } : b;
  });
  return { ...spec, blocks };
}

/** Whether keys of the skill move with its touchdown. */
export const isHungOnTouchdown = (skill: Skill): boolean =>
  skill.end.kind === 'touchdown' && usesAnchor(skill, 'touchdown');

/** `T0`: touchdown of the skill it comes from, s; `agreement`: s. */
export function flyNear(skill: Skill, T0: number, agreement: number, options: FlightOptions = {}): Flight {
  const { body, takeoff, end, gravity } = skill;
  const apex = gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0;
  const fly = (touchdown: number): Flight =>
    flySchedule(body, compileSkillSchedule(skill, { apex, touchdown }), takeoff, end, gravity, options);
  let T = T0;
  let flight = fly(T);
  let off = flight.duration - T;
  let before: { T: number; off: number } | undefined;
  for (let i = 0; i < MOST_TRIES && Math.abs(off) > agreement; i++) {
    const step = before && off !== before.off ? (-off * (T - before.T)) / (off - before.off) : off;
    before = { T, off };
    T += Math.max(-0.1, Math.min(0.1, step));
    if (!(Math.abs(T - T0) < NEAR)) return flySkill(skill, options);
    flight = fly(T);
    off = flight.duration - T;
  }
  if (Math.abs(off) <= agreement) return flight;
  throw new NoAgreementError('no flight near the known one touches down at the time the keys were hung on');
}
