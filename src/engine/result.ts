/** What the page knows of the current document after it was flown. Plain values for panels, plots and scenes to read. */
import type { Athlete, Flight, Frames, Skill, SkillFile } from '../../sim/index.ts';

export interface Caution {
  readonly kind: 'speed' | 'range' | 'torque';
  /** named angle, as in Body.angles */
  readonly angle: string;
  readonly t: number;
  /** deg/s, deg or N m */
  readonly value: number;
  readonly limit: number;
}

/** The flight in the numbers of the sentence. Revolutions, degrees, seconds; null is "not defined". */
export interface Outline {
  readonly somersaults: number | null;
  readonly somersaultWord: 'backward' | 'forward' | '';
  readonly twists: number | null;
  readonly twistWord: 'left' | 'right' | '';
  readonly duration: number;
  readonly apex: number;
  /** highest place of the mass centre, m above the floor */
  readonly height: number;
  /** wanted minus reached in the direction of rotation, deg: positive is short; null without a wanted landing */
  readonly shortDeg: number | null;
  /** sideways tilt at the end, deg, + to world right */
  readonly tiltDeg: number | null;
  readonly undefinedFrom?: number;
  /** the wanted landing is head first */
  readonly inverted: boolean;
  /** wanted somersault angle of F at the end, rad, counted like Frames.somersault */
  readonly wantedSomersault?: number;
}

export interface FlightResult {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly skill: Skill;
  readonly flight: Flight;
  readonly frames: Frames;
  readonly outline: Outline;
  readonly cautions: readonly Caution[];
  /** changes with every flight */
  readonly key: string;
}

/** A failed flight keeps the last one that worked, and says why. */
export interface FlightFault {
  readonly message: string;
}

export interface Outcome {
  readonly result: FlightResult;
  readonly fault?: FlightFault;
}
