/**
 * The schedule of a skill with everything that shapes it: keys, blocks, samples, what a swing carries over, and hands that
 * stay where they hold; a last shape that touchdown ends is moved into, whenever touchdown comes.
 */
import { compileSchedule } from '../schedule/compile.ts';
import type { AnchorTimes, Schedule } from '../schedule/schedule.ts';
import { type HandGap, solveContacts } from './hand-contact.ts';
import { freeHeldShape } from './held-shape.ts';
import type { LaunchedSkill } from './launch.ts';
import { carryTracks } from './whole-carry.ts';

type Moves = Pick<LaunchedSkill, 'body' | 'schedule' | 'contacts' | 'carried'>;

/** Joint angles as functions of time, with the times of the anchors known (s). Throws a ScheduleOrderError that names two keys out of order. */
export function compileSkillSchedule(
  { body, schedule: written, contacts = [], carried }: Moves,
  anchors: AnchorTimes,
): Schedule {
  const schedule = freeHeldShape(written);
  const keyed = compileSchedule(body, schedule, anchors);
  const carry = carried ? carryTracks(body, keyed, carried) : undefined;
  const base = carry?.size ? compileSchedule(body, schedule, anchors, carry) : keyed;
  if (contacts.length === 0) return base;
  const { added } = solveContacts(body, base, contacts, anchors);
  const both = new Map(added);
  carry?.forEach((tracks, a) => {
    both.set(a, [...tracks, ...(added.get(a) ?? [])]);
  });
  return compileSchedule(body, schedule, anchors, both);
}

/** How far each hand gets from its place at most: more than a little where the arm is too short or the joints end. */
export function calcHandGaps({ body, schedule, contacts = [] }: Moves, anchors: AnchorTimes): readonly HandGap[] {
  if (contacts.length === 0) return [];
  return solveContacts(body, compileSchedule(body, freeHeldShape(schedule), anchors), contacts, anchors).gaps;
}
