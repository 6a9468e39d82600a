/** What readouts are taken from: a flight as it was flown, and whatever else is at hand. Types only; SI. */
import type { Flight } from '../flight/flight.ts';
import type { Frames } from '../measure/frames.ts';
import type { ShapeMoments } from '../measure/shape-moments.ts';
import type { Summary } from '../measure/summary.ts';

export interface FlownSkill {
  readonly flight: Flight;
  readonly frames: Frames;
  readonly summary: Summary;
}

/** The swing at the bar; times end at the release, which is 0. */
export interface SwingPart {
  readonly times: Float64Array; // (n) s, ascending
  readonly gripLoad: Float64Array; // (n) pull of both hands, N
  readonly rate: Float64Array; // (n) how fast the body turns about the bar, rad/s, unsigned
  readonly centreSpeed: Float64Array; // (n) of the mass centre, m/s
  readonly centreRadius: Float64Array; // (n) mass centre from the bar, m
  /** the last pass under the bar, and the release, s */
  readonly bottom?: number;
  readonly release?: number;
}

/** The landing; times from touchdown. */
export interface LandingPart {
  readonly times: Float64Array; // (n) s, ascending
  readonly load: Float64Array; // (n) upward push of the ground, N
  /** until the mass centre stops sinking, s and m; missing: it never did */
  readonly stoppingTime?: number;
  readonly stoppingDistance?: number;
}

export interface SkillResult extends FlownSkill {
  /** moments of the body held in shapes of the catalogue, by id */
  readonly shapes?: Readonly<Record<string, ShapeMoments>>;
  /** the same take-off momentum and time in the air with one shape held: that of take-off, or standing straight */
  readonly rigid?: FlownSkill;
  readonly straight?: FlownSkill;
  readonly swing?: SwingPart;
  readonly landing?: LandingPart;
}
