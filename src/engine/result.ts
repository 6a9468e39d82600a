/** What the page knows of the current document after it was flown. Plain values for panels, plots and scenes to read. */
import type {
  Athlete,
  ContactCaution,
  Flight,
  Frames,
  Jump,
  LaunchedSkill,
  SkillApparatus,
  SkillFile,
  SkillNames,
  SkillPlace,
  SkillVerdict,
} from '../../sim/index.ts';

/** A joint against its limit. */
export interface JointCaution {
  readonly kind: 'speed' | 'range' | 'torque';
  /** named angle, as in Body.angles */
  readonly angle: string;
  readonly t: number;
  /** deg/s, deg or N m */
  readonly value: number;
  readonly limit: number;
  /** what is asked for, and what it was compared with */
  readonly title: string;
  readonly detail: string;
}

/** A limb that passes through the body, where it is deepest. */
export interface OverlapCaution {
  readonly kind: 'overlap';
  /** names of segments, as in Body.segments */
  readonly limb: string;
  readonly through: string;
  readonly t: number;
  readonly deepMm: number;
}

/** The take-off against what is usual for its place. */
interface TakeoffCaution {
  readonly kind: 'takeoff';
  readonly t: 0;
  readonly caution: ContactCaution;
}

/** The body is unlike those that its proportions were measured on. */
interface BodyCaution {
  readonly kind: 'body';
  readonly t: 0;
  readonly title: string;
  readonly detail: string;
}

export type FlightCaution = JointCaution | OverlapCaution | TakeoffCaution | BodyCaution;

/** The flight in the numbers of the sentence. Revolutions, degrees, seconds; null is "not defined". */
export interface Outline {
  /** what is said of it; of a landing that is run beside the page, that it is on its way */
  readonly verdict: SkillVerdict;
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
  /** without a turn nothing is short or past: how far the body leans from upright at the end, deg, + backward */
  readonly leanDeg: number | null;
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
  readonly skill: LaunchedSkill;
  readonly flight: Flight;
  readonly frames: Frames;
  /** what it leaves, lands on and has around it */
  readonly apparatus: SkillApparatus;
  /** where it is done */
  readonly place: SkillPlace;
  /** the take-off as it is known */
  readonly jump: Jump;
  readonly outline: Outline;
  /** what it is called at its place */
  readonly names: SkillNames;
  readonly cautions: readonly JointCaution[];
  /** of an age that no strength is known of */
  readonly notCompared?: { readonly title: string; readonly detail: string };
  readonly takeoffCautions: readonly TakeoffCaution[];
  /** the cautions of one frame alone */
  readonly cautionsAt: (row: number) => readonly JointCaution[];
  /** changes with every flight */
  readonly key: string;
  /** flown while a hand drags: coarser, to be flown again when it rests */
  readonly draft: boolean;
}

/** A failed flight keeps the last one that worked, and says why. */
interface FlightFault {
  readonly message: string;
  /** what was lost may come when it is asked for again */
  readonly canRetry: boolean;
}

export interface FlightOutcome {
  readonly result: FlightResult;
  readonly fault?: FlightFault;
  /** the flight of the document is not known yet: what comes before it is being computed */
  readonly isWaiting?: true;
  /** and it is flown beside the page, which can be cancelled */
  readonly isBeside?: true;
}
