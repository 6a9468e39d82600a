/** What is asked of a whole skill and what comes of it. Plain data: columns and sampled poses. */
import type {
  Athlete,
  ContactFault,
  ContactReport,
  LandingReport,
  LateDose,
  Likelihood,
  ShapeData,
  SkillFile,
  SkillVerdict,
  SwingPeaks,
  Whole,
} from '../../../sim/index.ts';

/** Which row of the time axis belongs to which phase. */
export const PHASES = ['swing', 'contact', 'flight', 'landing'] as const;

/** One value a row; t = 0 is the release or take-off. */
export interface WholeColumns {
  readonly t: Float64Array;
  /** index into PHASES */
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
  /** rev/s about the bar, then of F; NaN in the landing */
  readonly turn: Float64Array;
  /** J over the landing surface: height, moving and turning, held by rail or mat */
  readonly height: Float64Array;
  readonly motion: Float64Array;
  readonly held: Float64Array;
  /** m: of the rail from its rest place, down and along; of the deepest foot in the mat */
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

export interface SwingResult {
  readonly peaks: SwingPeaks;
  readonly driven: boolean;
  /** times the known strength of an adult of this size, which the joints are limited to */
  readonly strength: number;
  /** as shares: of a peak force, of speeds, of energies */
  readonly error: { readonly force: number; readonly speed: number; readonly energy: number };
  readonly radius: number;
  readonly duration: number;
  readonly rail: { readonly height: number; readonly stiffness: number };
  readonly release: { readonly angle: number; readonly up: number; readonly along: number; readonly h: number };
  readonly limited: readonly { readonly joint: string; readonly share: number }[];
  /** beyond what is known of joints, in words; the release is at 0 s */
  readonly cautions: readonly { readonly title: string; readonly detail: string; readonly t: number }[];
  readonly notCompared?: { readonly title: string; readonly detail: string };
  /** largest torque, N m */
  readonly largest: { readonly joint: string; readonly torque: number };
  /** the same turn at constant speed, by the rule of thumb: v^2 / r in g, and felt at the bottom */
  readonly rule: { readonly turnS: number; readonly speed: number; readonly g: number; readonly felt: number };
}

export interface ContactResult {
  readonly time: number;
  readonly impulse: number;
  readonly bodyWeights: number;
  readonly leanDeg: number;
  readonly lever: number;
  readonly angularImpulse: number;
  readonly energy: number;
  readonly frictionNeeded: number;
  readonly place?: { readonly x: number; readonly z: number };
  readonly faults: readonly ContactFault[];
  /** beside what is usual there; left out where that is not known */
  readonly report?: ContactReport;
}

export type LandingOutcome =
  | { readonly kind: 'landed'; readonly report: LandingReport }
  | Exclude<NonNullable<Whole['landing']>, { kind: 'landed' }>;

export interface WholeResult {
  readonly from: number;
  readonly to: number;
  readonly touchdown: number;
  readonly barX: number;
  readonly bodyWeight: number;
  readonly columns: WholeColumns;
  readonly poses: WholePoses;
  readonly swing?: SwingResult;
  readonly late?: { readonly held: number; readonly hand: 'left' | 'right'; readonly peakWeights: number };
  readonly contact?: ContactResult;
  readonly landing?: LandingOutcome;
  /** what comes nearer to rail, table or board than is asked */
  readonly near: SkillVerdict['missed'];
  /** how it ends and what that was judged by, in the place of a verdict that waits for its landing */
  readonly judged?: Pick<SkillVerdict, 'ending' | 'basis'>;
}

/** A release tried: ms after the planned one, and what came of it. */
interface TryResult {
  readonly lateMs: number;
  readonly overDeg: number;
  readonly upMPerS: number;
  readonly airS: number;
  readonly away: number;
  /** least distance from the rail through the flight */
  readonly nearM?: number;
  /** nothing missed, and the landing held */
  readonly meets: boolean;
}
export interface WindowResult {
  readonly tries: readonly TryResult[];
  readonly fromMs: number;
  readonly toMs: number;
  /** of it with nothing nearer to the rail than asked; left out: nothing was measured */
  readonly clearMs?: number;
  /** it turns too fast for its landings to be run: they are judged by the band */
  readonly isByBand?: true;
  /** of all times looked at, by the window that was usual before */
  readonly formerMs: number;
  readonly isOpen: readonly [boolean, boolean];
}
/** 'landing': over the stated ranges; 'all': the studies of the release too */
export type StudyKind = 'landing' | 'all';

export interface WholeRequest {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  /** they take several times as long */
  readonly study?: StudyKind | undefined;
}

export type WholeProgress =
  | { readonly kind: 'whole'; readonly result: WholeResult }
  | { readonly kind: 'running' }
  | { readonly kind: 'likelihood'; readonly result: Likelihood }
  | { readonly kind: 'window'; readonly result: WindowResult | undefined };

/** What the late hand gives for its time, where it was asked for. */
export type WholeEnd = { readonly late: LateDose | undefined } | undefined;
