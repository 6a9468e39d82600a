/** What is asked of a whole skill and what comes of it, all its legs on one time axis and in the frame of the first flight. Plain data: columns and sampled poses. */
import type {
  Athlete,
  ChainApparatus,
  ChainSensitivity,
  ChainStop,
  LateDose,
  Likelihood,
  ShapeData,
  SkillFile,
  TakeoffPlace,
} from '../../../sim/index.ts';
import type { CatchWindowResult, LegResult, WindowResult } from './leg-data.ts';

export type PhaseKind = 'swing' | 'contact' | 'flight' | 'landing';

/** A phase on the ruler of the chain, s. */
export interface PhaseSpan {
  readonly kind: PhaseKind;
  readonly leg: number;
  readonly from: number;
  readonly to: number;
  /** of a contact */
  readonly on?: TakeoffPlace;
  readonly by?: 'hands' | 'feet';
}

/** One value a row; t = 0 is the first release or take-off. */
export interface WholeColumns {
  readonly t: Float64Array;
  /** index into the phases */
  readonly phase: Uint8Array;
  /** force from outside besides weight: W, N; and its size in body weights */
  readonly fx: Float64Array;
  readonly fy: Float64Array;
  readonly weights: Float64Array;
  /** g; NaN where it is not known */
  readonly feltHead: Float64Array;
  readonly speed: Float64Array;
  /** about the mass centre, along Z, kg m2/s; about the bar, NaN off it */
  readonly h: Float64Array;
  readonly hBar: Float64Array;
  /** rev/s about the bar, then of F; NaN in a contact and in the landing */
  readonly turn: Float64Array;
  /** J over the landing surface: height, moving and turning, held by rail or mat */
  readonly height: Float64Array;
  readonly motion: Float64Array;
  readonly held: Float64Array;
  /** m: of the rail from its rest place, down and along; of the deepest foot in mat or bed */
  readonly bendX: Float64Array;
  readonly bendY: Float64Array;
  readonly sink: Float64Array;
}

/** Poses for pictures, evenly in each phase. */
export interface WholePoses {
  readonly t: Float64Array;
  /** (n x nseg x 9), (n x nseg x 3), (n x 3), (n x 9) */
  readonly R_WS: Float64Array;
  readonly p_WSo_W: Float64Array;
  readonly p_WScm_W: Float64Array;
  readonly R_WF: Float64Array;
}

export interface WholeResult {
  /** first and last time, s */
  readonly from: number;
  readonly to: number;
  /** N */
  readonly bodyWeight: number;
  readonly phases: readonly PhaseSpan[];
  readonly legs: readonly LegResult[];
  /** what is left, landed on and around it, in its place */
  readonly apparatus: ChainApparatus;
  /** why the legs after the last are not flown */
  readonly stop?: ChainStop;
  readonly columns: WholeColumns;
  readonly poses: WholePoses;
}

/** 'landing': over the stated ranges; 'all': the studies of the release too */
export type StudyKind = 'landing' | 'all';

export interface WholeRequest {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  /** they take several times as long */
  readonly study?: StudyKind | undefined;
  /** the leg that is studied */
  readonly leg?: number | undefined;
}

export type WholeProgress =
  | { readonly kind: 'whole'; readonly result: WholeResult }
  | { readonly kind: 'running' }
  | { readonly kind: 'likelihood'; readonly result: Likelihood }
  | { readonly kind: 'window'; readonly result: WindowResult | undefined }
  | { readonly kind: 'catchWindow'; readonly result: CatchWindowResult | undefined }
  | { readonly kind: 'sensitivity'; readonly result: ChainSensitivity | undefined };

/** What the late hand gives for its time, where it was asked for. */
export type WholeEnd = { readonly late: LateDose | undefined } | undefined;
