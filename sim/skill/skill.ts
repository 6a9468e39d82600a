/**
 * A skill in SI units and radians: one body, its schedule, its take-off and how the flight ends.
 * Frames and signs: docs/conventions.md.
 */
import type { Body } from '../body/body.ts';
import type { EndSpec, TakeoffSpec } from '../flight/flight.ts';
import type { SkillTarget } from '../measure/target.ts';
import type { ScheduleSpec } from '../schedule/schedule.ts';
import type { HandContact } from './hand-contact.ts';
import type { CarriedMotion } from './whole-carry.ts';
import type { ApproachSpec, ArrivalSpec } from './whole-spec.ts';

export type { SkillTarget } from '../measure/target.ts';

export interface Skill {
  readonly title: string;
  readonly body: Body;
  readonly gravity: number;
  readonly schedule: ScheduleSpec;
  /** hands that stay on the legs, in the order of time; what they do to the arms is added to the schedule */
  readonly contacts?: readonly HandContact[];
  readonly takeoff: TakeoffSpec;
  readonly end: EndSpec;
  /** what comes before and after the flight (whole.ts); flySkill flies the flight alone */
  readonly approach?: ApproachSpec;
  readonly arrival?: ArrivalSpec;
  /** joint angles and rates that the flight begins with, whatever is keyed there */
  readonly carried?: CarriedMotion;
  readonly target?: SkillTarget;
}
