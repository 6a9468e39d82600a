/**
 * A skill in SI units and radians: one body, how it begins, its schedule and how the flight ends. It is flown once it is
 * launched (launch.ts). Frames and signs: docs/conventions.md.
 */
import type { Body } from '../body/body.ts';
import type { EndSpec } from '../flight/flight.ts';
import type { SkillTarget } from '../measure/target.ts';
import type { ScheduleSpec } from '../schedule/schedule.ts';
import type { CatchAsk } from './catch-ask.ts';
import type { HandContact } from './hand-contact.ts';
import type { LandingSpec } from './landing-spec.ts';
import type { StartSpec } from './start-spec.ts';

export type { SkillTarget } from '../measure/target.ts';

export interface Skill {
  readonly title: string;
  readonly body: Body;
  readonly gravity: number;
  readonly start: StartSpec;
  readonly schedule: ScheduleSpec;
  /** hands that stay on the legs, in the order of time; what they do to the arms is added to the schedule */
  readonly contacts?: readonly HandContact[];
  readonly end: EndSpec;
  readonly after?: LandingSpec;
  /** the flight ends with the hands at a rail, if they meet it */
  readonly catch?: CatchAsk;
  readonly target?: SkillTarget;
  /** the legs before this one, in order, where it is a leg of a chain (launch-chained.ts) */
  readonly earlier?: readonly Skill[];
}
