/**
 * A skill in SI units and radians: one body, its schedule, its take-off and how the flight ends.
 * Frames and signs: docs/conventions.md.
 */
import type { Body } from '../body/body.ts';
import type { EndSpec, TakeoffSpec } from '../flight/flight.ts';
import type { ScheduleSpec } from '../schedule/schedule.ts';

/** What the skill is meant to be; the flight is judged against it. Angles in rad, counts in revolutions. */
export interface SkillTarget {
  readonly somersaults: number;
  readonly somersaultWord: 'backward' | 'forward' | '';
  readonly twists: number;
  readonly twistWord: 'left' | 'right' | '';
  /** wanted landing angle of F about the lateral axis: 0 upright, pi inverted (head first) */
  readonly landingAngle: number;
}

export interface Skill {
  readonly title: string;
  readonly body: Body;
  readonly gravity: number;
  readonly schedule: ScheduleSpec;
  readonly takeoff: TakeoffSpec;
  readonly end: EndSpec;
  readonly target?: SkillTarget;
}
