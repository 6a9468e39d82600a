/** Everything that is said of one recording, as plain data for page and shell. SI and radians; NaN is "not known". */
import type { Body } from '../body/body.ts';
import type { HumanAthlete } from '../files/athlete-schema.ts';
import type { AirSpan, Gap, Smoothing, SmoothingReport } from '../recording/conditioned.ts';
import type { LengthsFrom } from '../recording/pose-recording.ts';
import type { RecordingKind } from '../recording/recording.ts';
import type { RecordingMap } from '../recording/recording-map.ts';

/** Somersault, tilt, twist against time, counted continuously as in docs/conventions.md. */
export interface AttitudeCourse {
  readonly somersault: Float64Array; // (n)
  readonly tilt: Float64Array; // (n)
  readonly twist: Float64Array; // (n)
}

/** Why a recording is no test of the model. */
export type RefusalReason = 'gravity' | 'momentum' | 'parabola' | 'gap' | 'short' | 'unmapped';

export interface RecordingQuality {
  /** m/s2 and its standard error */
  readonly g: number;
  readonly gError: number;
  readonly offParabola: number; // m, root mean square
  /** mean over the span, kg m2/s */
  readonly h_Scm_W: readonly [number, number, number];
  /** root mean square and largest |h - mean| / |mean| */
  readonly momentumSpread: number;
  readonly momentumWorst: number;
  /** first sentence for people is made of these; empty: good enough for a test */
  readonly refusals: readonly { readonly reason: RefusalReason; readonly value: number; readonly limit: number }[];
}

/** The start of a flight, as a take-off of a file states it. World W of the study. */
export interface RecordedStart {
  /** of F, rad */
  readonly attitude: readonly [somersault: number, tilt: number, twist: number];
  readonly h_Scm_W: readonly [number, number, number];
  readonly v_WScm_W: readonly [number, number, number];
  /** of the mass centre over the recording's own zero, m */
  readonly height: number;
}

/** The model, flown with the measured joint angles from the measured start, against what was measured. */
export interface ModelTest {
  readonly measured: AttitudeCourse;
  readonly computed: AttitudeCourse;
  /** largest |computed - measured|, and computed - measured at the end, rad */
  readonly worst: readonly [somersault: number, tilt: number, twist: number];
  readonly atEnd: readonly [somersault: number, tilt: number, twist: number];
}

/** One number of a fit with what it is known to. */
export interface FittedValue {
  readonly name: string;
  readonly unit: 'kg·m²/s' | 'deg' | 'm/s' | 'm' | 's' | 'share';
  readonly from: number;
  readonly to: number;
  /** half of the 95 % interval */
  readonly plusMinus: number;
}

export interface TakeoffFit {
  readonly values: readonly FittedValue[];
  /** root mean square of what is left over: attitude rad, mass centre m */
  readonly leftAttitude: number;
  readonly leftPlace: number;
  readonly rounds: number;
  readonly start: RecordedStart;
  /** the test again, from the fitted start */
  readonly test: ModelTest;
}

export interface RecordingStudy {
  readonly name: string;
  readonly kind: RecordingKind;
  readonly frames: number;
  readonly rateHz: number;
  readonly seconds: number;
  readonly points: number;
  readonly joints: number;
  /** rows in which something is missing */
  readonly missingRows: number;
  readonly map: RecordingMap;
  /** names in the recording that nothing is made of */
  readonly unused: readonly string[];
  readonly notes: readonly string[];
  /** all that were found, the longest first; the chosen one is `span` */
  readonly spans: readonly AirSpan[];
  readonly span: AirSpan | undefined;
  /** the body that was measured: the athlete with the lengths that the recording shows; undefined: nothing could be posed */
  readonly body: Body | undefined;
  readonly athlete: HumanAthlete | undefined;
  /** from which `test` is flown */
  readonly start: RecordedStart | undefined;
  /** rows of the span; t is s from its start */
  readonly t: Float64Array; // (n)
  /** (n x 3) mass centre on its parabola, W, m */
  readonly parabola: Float64Array;
  readonly heightOff: Float64Array; // (n) mass centre less its parabola, m, up
  readonly momentum: Float64Array; // (n) |h|, kg m2/s
  readonly angleNames: readonly string[];
  readonly rawAngles: Float64Array; // (n x angles)
  readonly angles: Float64Array; // (n x angles)
  readonly smoothing: readonly SmoothingReport[]; // (angles)
  readonly gaps: readonly (readonly Gap[])[]; // (angles)
  readonly isSeen: readonly boolean[]; // (angles)
  readonly quality: RecordingQuality | undefined;
  readonly test: ModelTest | undefined;
  /** measured and computed motion as quaternions of the root and its origin, for pictures */
  readonly measuredRoot: { readonly p_WBo_W: Float64Array; readonly quat_WB: Float64Array } | undefined;
  readonly computedRoot: { readonly p_WBo_W: Float64Array; readonly quat_WB: Float64Array } | undefined;
}

export interface StudyOptions {
  /** overrides of the map that names and places give */
  readonly map?: Partial<RecordingMap>;
  /** s in the recording's own time */
  readonly from?: number;
  readonly to?: number;
  readonly smoothing: Smoothing;
  /** by angle name, where it differs */
  readonly smoothingOf?: Readonly<Record<string, Smoothing>>;
  /** longest gap that is filled, s */
  readonly longestGap: number;
  /** lengths of limbs: as recorded (if left out), or the athlete's own */
  readonly lengths?: LengthsFrom;
}
