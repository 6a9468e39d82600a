/** The verdict on a flight that was flown already, with its landing where the skill has one. */
import { calcFrames, frameTimes } from '../measure/calc-frames.ts';
import { summarize } from '../measure/summary.ts';
import { calcClearance } from './clearance.ts';
import type { Contact, WholeContact } from './contact-room.ts';
import type { Flown } from './flyer.ts';
import type { LaunchedSkill } from './launch.ts';
import { type SkillVerdict, verdictOf } from './skill-verdict.ts';
import { calcArrival } from './whole.ts';

/** Frames a second: counts and attitude at the end do not depend on it. */
const RATE = 120;

/** `contact`: the room with the landing, where the skill has one. */
export function judgeFlight(skill: LaunchedSkill, flight: Flown, contact?: Contact | WholeContact): SkillVerdict {
  const { after, target } = skill;
  const summary = summarize(flight, calcFrames(flight, frameTimes(flight.duration, RATE)), target);
  const nearest = calcClearance({ skill, flight });
  const landing = after && contact && 'land' in contact ? calcArrival(after, flight, contact) : undefined;
  return verdictOf({ skill, flight, ...(landing ? { landing } : {}) }, summary, nearest);
}
