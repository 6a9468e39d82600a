/** What the page knows of the current document after it was flown. Plain values for panels, plots and scenes to read. */
import type { Athlete, SkillFile } from '../../sim/files/skill-file.ts';
import type { Flight } from '../../sim/flight/flight.ts';
import type { Frames } from '../../sim/measure/frames.ts';
import type { AnchorSeconds } from '../document/times.ts';

/** A shape held in the air; seconds from take-off. */
export interface BlockSpan {
  /** index into file.schedule.blocks */
  readonly index: number;
  readonly shape: string;
  readonly title: string;
  readonly word: string;
  readonly from: number;
  readonly to: number;
  /** the shape with this block's own changes */
  readonly changed: boolean;
  /** full pose, rad, one value for each Body angle */
  readonly pose: readonly number[];
}

export type LaneSide = 'left' | 'right' | 'both' | 'centre';
export type KeySource =
  | { readonly kind: 'key'; readonly index: number }
  | { readonly kind: 'edge'; readonly block: number; readonly side: 'from' | 'to' };

export interface LaneKey {
  readonly t: number;
  readonly deg: number;
  readonly kind: 'stop' | 'pass';
  readonly source: KeySource;
}

/** One joint angle over time: on one side, or both sides where they move alike. */
export interface Lane {
  /** the angle's name in the file: "hipFlexion" for both sides, "hipFlexionL" for one */
  readonly id: string;
  readonly side: LaneSide;
  /** column of Frames.angles that is drawn */
  readonly column: number;
  readonly keys: readonly LaneKey[];
  readonly rangeDeg: readonly [number, number];
  /** least and greatest value over the flight, deg */
  readonly lowDeg: number;
  readonly highDeg: number;
  readonly speedLimitDeg: number;
}

export interface Caution {
  readonly kind: 'speed' | 'range' | 'torque';
  /** named angle, as in Body.angles */
  readonly angle: string;
  readonly t: number;
  /** deg/s, deg or N m */
  readonly value: number;
  readonly limit: number;
}

/** The flight in the numbers of the sentence. Revolutions and degrees; null is "not defined". */
export interface Outline {
  readonly somersaults: number | null;
  readonly somersaultWord: 'backward' | 'forward' | '';
  readonly twists: number | null;
  readonly twistWord: 'left' | 'right' | '';
  readonly duration: number;
  readonly apex: number;
  /** wanted minus reached in the direction of rotation, deg: positive is short */
  readonly shortDeg: number | null;
  readonly tiltDeg: number | null;
  readonly undefinedFrom?: number;
  readonly inverted: boolean;
}

export interface FlightResult {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly flight: Flight;
  readonly frames: Frames;
  readonly outline: Outline;
  readonly anchors: AnchorSeconds;
  readonly blocks: readonly BlockSpan[];
  readonly lanes: readonly Lane[];
  readonly cautions: readonly Caution[];
}

/** A failed flight keeps the last one that worked, and says why. */
export interface FlightFault {
  readonly message: string;
}

export interface Outcome {
  readonly result: FlightResult;
  readonly fault?: FlightFault;
}
