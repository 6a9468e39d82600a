/** The schedule of a skill with everything that shapes it: keys, blocks, samples, and hands that stay where they hold. */
import { compileSchedule } from '../schedule/compile.ts';
import type { AnchorTimes, Schedule } from '../schedule/schedule.ts';
import { type HandGap, solveContacts } from './hand-contact.ts';
import type { Skill } from './skill.ts';

type Moves = Pick<Skill, 'body' | 'schedule' | 'contacts'>;

export function compileSkillSchedule({ body, schedule, contacts = [] }: Moves, anchors: AnchorTimes): Schedule {
  const base = compileSchedule(body, schedule, anchors);
  if (contacts.length === 0) return base;
  return compileSchedule(body, schedule, anchors, solveContacts(body, base, contacts, anchors).added);
}

/** How far each hand gets from its place at most: more than a little where the arm is too short or the joints end. */
export function calcHandGaps({ body, schedule, contacts = [] }: Moves, anchors: AnchorTimes): readonly HandGap[] {
  if (contacts.length === 0) return [];
  return solveContacts(body, compileSchedule(body, schedule, anchors), contacts, anchors).gaps;
}
