/** What each leg of a chain reports to the page: what comes before its flight, the flight, what ends it. Plain data; of each leg in the frame and from the take-off of its own flight. */
import type {
  CatchOutcome,
  CatchResult,
  CatchSpec,
  Clearance,
  ContactFault,
  ContactReport,
  CourseFault,
  CourseUnknown,
  LandingReport,
  SkillVerdict,
  SurfaceKind,
  SwingPeaks,
  TakeoffPlace,
  Vec3,
  Whole,
} from '../../../sim/index.ts';

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

/** The contact as a course in time, where what pushes is known of the body. */
export interface CourseResult {
  /** what its pose and attitude at the start come from */
  readonly entry: 'flight' | 'stated' | 'assumed';
  /** body weights, by the shape of the force that is assumed */
  readonly peak: { readonly up: number; readonly along: number };
  /** m, what hands or feet move on their place */
  readonly drift: number;
  /** rad about the lateral axis */
  readonly turned: number;
  /** J/kg */
  readonly work: number;
  readonly brought: number;
  readonly gave: { readonly v_W: Vec3; readonly h_Scm_W: Vec3 };
  /** m, of a bed */
  readonly depth?: number;
  readonly faults: readonly CourseFault[];
  readonly unknowns: readonly CourseUnknown[];
}

export interface ContactResult {
  /** what it is on, and with what */
  readonly on: TakeoffPlace;
  readonly by: 'hands' | 'feet';
  readonly time: number;
  /** m/s: as it comes, along X and up */
  readonly comes: readonly [number, number];
  readonly course?: CourseResult;
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

/** The flight of a leg in numbers. */
export interface LegFlight {
  /** m/s along X, up, to the right: as it begins and as it ends */
  readonly leaves: Vec3;
  readonly arrives: Vec3;
  /** |h|, kg m2/s */
  readonly momentum: number;
  /** m: of the mass centre at its highest, over the floor; and over where it left */
  readonly top: number;
  readonly rise: number;
  /** m along X */
  readonly travel: number;
}

/** One value a time for each hand: m, m/s along the arms towards the rail; x, y from the rail. */
export interface HandRows {
  readonly distance: Float64Array;
  readonly reach: Float64Array;
  readonly along: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Hands and the rail that they may meet, through the flight; chain time. */
export interface LegCatch {
  readonly spec: CatchSpec;
  readonly outcome: CatchOutcome;
  readonly t: Float64Array;
  readonly left: HandRows;
  readonly right: HandRows;
  /** of the mass centre towards the rail, m/s */
  readonly toward: Float64Array;
  readonly seen?: readonly (readonly [number, number])[];
  /** at the catch, rad */
  readonly turned?: { readonly tilt: number; readonly unfinished: number };
  /** body weights on the hands, and over the stiffnesses of arms and rail */
  readonly load?: { readonly weights: number; readonly range: readonly [number, number] };
  readonly notComputed?: CatchResult['notComputed'];
}

/** The release before a catch, earlier and later. */
export interface CatchWindowResult {
  readonly leg: number;
  readonly tries: readonly { readonly ms: number; readonly gapM: number }[];
  readonly span?: { readonly fromMs: number; readonly toMs: number; readonly isOpen: readonly [boolean, boolean] };
  /** what fails just beyond either end */
  readonly ends: readonly [CatchOutcome | undefined, CatchOutcome | undefined];
}

/** What ends the flight of the last leg. */
export type LegEnd = 'landing' | 'catch' | 'entry' | 'bounce' | 'open';

export interface LegResult {
  readonly title: string;
  /** chain time, s: what comes before its flight begins, its take-off, the end of its flight */
  readonly from: number;
  readonly takeoff: number;
  readonly touchdown: number;
  /** a place in its flight, turned half round about the vertical where `facing` is -1, and moved by this, is one in the chain, m */
  readonly offset: Vec3;
  readonly facing: 1 | -1;
  /** of a rail let go, in the flight, turned so, m */
  readonly barX: number;
  readonly surfaceY: number;
  readonly surface?: SurfaceKind;
  /** m/s along the chain's X as it takes off */
  readonly vx: number;
  readonly swing?: SwingResult;
  readonly late?: { readonly held: number; readonly hand: 'left' | 'right'; readonly peakWeights: number };
  readonly contact?: ContactResult;
  readonly flight: LegFlight;
  /** left out: another leg follows */
  readonly end?: LegEnd;
  readonly landing?: LandingOutcome;
  readonly catch?: LegCatch;
  /** to rail, table or board */
  readonly nearest?: Clearance;
  /** of this leg alone; where a landing follows it is that of the landing */
  readonly verdict: SkillVerdict;
  /** how it ends and what that was judged by, in the place of a verdict that waits for its landing */
  readonly judged?: Pick<SkillVerdict, 'ending' | 'basis'>;
}

/** A release tried: ms after the planned one, and what came of it. */
export interface TryResult {
  readonly lateMs: number;
  readonly overDeg: number;
  readonly upMPerS: number;
  readonly airS: number;
  readonly away: number;
  /** least distance from the rail through the flight */
  readonly nearM?: number;
  /** rad / 2 pi, of twist: less (-) or more (+) than wanted */
  readonly twistOff: number;
  /** part that comes down first, where that is not the feet */
  readonly part?: string;
  /** nothing missed, and the landing held */
  readonly meets: boolean;
  /** of the mass centre from release to touchdown, m, (n x 2): along X from the rail, up */
  readonly path: Float64Array;
}
export interface WindowResult {
  /** the leg that is let go earlier or later */
  readonly leg: number;
  /** ms that the release was late as planned: the tries count from it */
  readonly baseMs: number;
  readonly tries: readonly TryResult[];
  readonly fromMs: number;
  readonly toMs: number;
  /** of it with nothing nearer to the rail than asked; left out: nothing was measured */
  readonly clearMs?: number;
  /** it turns too fast for its landings to be run: they are judged by the band */
  readonly isByBand?: true;
  /** of all times looked at, by the window that was usual before */
  readonly formerMs: number;
  /** ms: times looked at from which nothing comes down on the surface */
  readonly lostMs: readonly number[];
  readonly isOpen: readonly [boolean, boolean];
}
