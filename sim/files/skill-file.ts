/**
 * The skill file as it stands in JSON, in the units people type: degrees, metres, seconds, revolutions. It is also
 * the document that the application edits. docs/skill-file.md explains every field; parse-skill.ts validates.
 */
import type { Anchor, ArmPath, KeyKind } from '../schedule/schedule.ts';
import type { SheetPart } from './sheet-file.ts';

export const SKILL_FORMAT = 'shapeflight-skill';
export const SKILL_VERSION = 1;

export interface FileTime {
  anchor: Anchor;
  s: number;
}

/** Measured values of one segment that replace the generated ones. Any may be left out. */
export interface SegmentOverride {
  massKg?: number;
  lengthM?: number;
  /** distance of the mass centre from the proximal end as a share of the length */
  centreShare?: number;
  /** radii of gyration about front-back, lateral and long axis as shares of the length */
  radiiShare?: [number, number, number];
}

export interface HumanAthlete {
  kind: 'human';
  name: string;
  club?: string;
  sex: 'female' | 'male';
  massKg: number;
  statureM: number;
  /** distance of each joint centre from the midline, m; left out: the published ratio times stature */
  shoulderHalfWidthM?: number;
  hipHalfWidthM?: number;
  /** by segment: head, upperTrunk, middleTrunk, lowerTrunk, upperArm, forearm, hand, thigh, shank, foot, or one side as upperArmL */
  segments?: Record<string, SegmentOverride>;
}

interface TreeSegment {
  name: string;
  /** name of the parent; left out for the root, which comes first */
  parent?: string;
  /** joint in the parent's frame, m */
  jointM?: [number, number, number];
  hinges?: {
    name: string;
    axis: [number, number, number];
    rangeDeg?: [number, number];
    mirror?: string;
    mirrorSign?: 1 | -1;
  }[];
  massKg: number;
  centreM: [number, number, number];
  /** about the mass centre: xx, yy, zz, xy, xz, yz */
  inertiaKgM2: [number, number, number, number, number, number];
  group?: 'upper' | 'arms' | 'legs' | 'whole';
  side?: 'left' | 'right' | 'centre';
  contacts?: { name: string; part: string; pointM: [number, number, number]; radiusM: number }[];
  shapes?: (
    | {
        kind: 'capsule';
        aM: [number, number, number];
        bM: [number, number, number];
        radiusAM: number;
        radiusBM: number;
      }
    | { kind: 'ellipsoid'; centreM: [number, number, number]; radiiM: [number, number, number] }
  )[];
}

interface TreeAthlete {
  kind: 'tree';
  name: string;
  club?: string;
  segments: TreeSegment[];
  /** hip and shoulder points as [segment name, point]; left out: the root frame is the body frame */
  framePoints?: Record<
    'hipL' | 'hipR' | 'shoulderL' | 'shoulderR',
    { segment: string; pointM: [number, number, number] }
  >;
}

export type Athlete = HumanAthlete | TreeAthlete;
/** inline, or a preset or saved athlete by its id, or (command line) a file beside the skill */
export type AthleteRef = Athlete | { ref: string };

export interface FileBlock {
  shape: string;
  from: FileTime;
  to: FileTime;
  arms?: ArmPath;
  /** angles that differ from the shape here, deg, by angle name ("hipFlexion" both sides, "hipFlexionL" one) */
  adjustDeg?: Record<string, number>;
}

export interface FileKey {
  /** "hipFlexion" keys both sides, "hipFlexionL" or "hipFlexionR" one */
  angle: string;
  at: FileTime;
  deg: number;
  kind?: KeyKind;
  /** shoulder plane only: a jump at a pole of elevation */
  nextDeg?: number;
}

interface FileSamples {
  angle: string;
  startS: number;
  rateHz: number;
  deg: number[];
}

/** A hand (or both) that stays on the shin or behind the knee of its own side while the legs move. */
export interface FileContact {
  hand: 'both' | 'L' | 'R';
  on: 'shin' | 'behindKnee';
  from: FileTime;
  to: FileTime;
}

export interface SkillFile {
  format: typeof SKILL_FORMAT;
  version: typeof SKILL_VERSION;
  title: string;
  note?: string;
  /** an estimate sheet kept with the skill */
  sheet?: SheetPart;
  athlete: AthleteRef;
  gravityMPerS2?: number;
  takeoff: {
    massCentreHeightM?: number;
    lowestPointHeightM?: number;
    velocityMPerS: { along: number; up: number; across?: number };
    attitudeDeg?: { somersault?: number; tilt?: number; twist?: number };
    momentum:
      | { vectorKgM2PerS: [number, number, number] }
      | { ratesRevPerS: { somersault: number; tilt?: number; twist?: number } }
      | { straightSomersaults: number };
  };
  end: { durationS: number; surface?: FileSurface } | { surface: FileSurface };
  schedule: {
    /** shape before anything else is keyed; default "straight" */
    base?: string;
    /** path and order of blocks as in the file: a block that would start before the one above it ends is an error */
    blocks?: FileBlock[];
    keys?: FileKey[];
    samples?: FileSamples[];
    /** in the order of time for each hand */
    contacts?: FileContact[];
    smoothing?: { criterion: 'gcv' } | { criterion: 'noise'; rmsDeg: number };
  };
  /** how the athlete gets to the take-off; left out: the flight begins with it */
  approach?: FileApproach;
  /** what happens from touchdown on; left out: the flight ends with it */
  arrival?: FileArrival;
  /** shapes of this file's own, by name; angles in deg not named are 0 */
  shapes?: Record<string, ShapeData>;
  target?: {
    somersaults: number;
    direction?: 'backward' | 'forward';
    twists: number;
    twistTo?: 'left' | 'right';
    landingAngleDeg?: number;
  };
}

export interface FileSwingKey {
  joint: 'shoulder' | 'hip' | 'knee' | 'ankle';
  /** s after the start, or swing angle, as `over` says; one of the two */
  atS?: number;
  atDeg?: number;
  deg: number;
  kind?: KeyKind;
}

export interface FileSwing {
  kind: 'swing';
  rail: 'highBar' | 'unevenHigh' | 'unevenLow';
  sense: 'backward' | 'forward';
  start: { handstandNudgeDegPerS: number } | { castDeg: number } | { angleDeg: number; rateDegPerS: number };
  moves: { over: 'time' | 'angle'; rounds?: number; periodS?: number; keys: FileSwingKey[]; last?: FileSwingKey[] };
  release: { atDeg: number } | { atS: number };
  releaseLateS?: number;
  lateHand?: { hand: 'left' | 'right'; lateS: number };
  durationS: number;
  /** times the strength of the body; left out: driven whatever it takes */
  strength?: number;
}

export interface FileTakeoffContact {
  kind: 'contact';
  place: 'floor' | 'springboard' | 'vaultTable' | 'trampoline' | 'divingBoard';
  timeS?: number;
  frictionCoefficient?: number;
  massCentreOverSurfaceM?: number;
  velocityMPerS: { along: number; up: number; across?: number };
  momentumKgM2PerS?: [number, number, number];
  given?: {
    meanBodyWeights: number;
    leanDeg: number;
    acrossBodyWeights?: number;
    placeM: { along: number; across?: number };
    freeTurnKgM2PerS?: number;
  };
}
export type FileApproach = FileSwing | FileTakeoffContact;

interface FileMat {
  thicknessM: number;
  stiffnessKNPerM: number;
  dampingSPerM: number;
  friction: number;
}

export interface FileArrival {
  mat: 'competitionMat' | 'withSoftLayer' | 'floor' | 'pit' | FileMat;
  legStiffness?: number;
  effort?: number;
  eccentricFactor?: number;
  reflexDelayS?: number;
  kneeDeg?: number;
  keys?: { s: number; joint: 'shoulder' | 'hip' | 'knee' | 'ankle'; deg: number }[];
  durationS?: number;
}

export interface FileSurface {
  kind: 'floor' | 'mat' | 'trampoline' | 'water' | 'other';
  heightM: number;
}

export interface ShapeData {
  title: string;
  /** a short word for the block tile, e.g. "tuck" */
  word: string;
  angles: Record<string, number>;
}
