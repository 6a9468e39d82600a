/** What a recording is studied by, and what comes back: the study, and poses for its pictures. */
import type { HumanAthlete, RecordingStudy, SkillFile, StudyOptions, TakeoffFit } from '../../../sim/index.ts';

export interface RecordingRequest {
  /** of its file */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly athlete: HumanAthlete;
  readonly options: StudyOptions;
}

/** `done`: from 0 to 1 */
export interface RecordingProgress {
  readonly done: number;
  readonly what: string;
}

/** Segments of the body at some rows of the span, in W. */
export interface RecordedPoses {
  /** (n) s from the start of the span */
  readonly t: Float64Array;
  readonly R_WS: Float64Array; // (n x segments x 9)
  readonly p_WSo_W: Float64Array; // (n x segments x 3)
  readonly p_WScm_W: Float64Array; // (n x 3)
}

export interface RecordingResult {
  readonly study: RecordingStudy;
  readonly measured?: RecordedPoses;
  readonly computed?: RecordedPoses;
}

/** The recording as it was studied, made into a skill. */
export interface RecordedSkillRequest extends RecordingRequest {
  readonly title: string;
}

const RECORDED_FORMS = ['bvh', 'trc', 'csv'] as const;
export type RecordedForm = (typeof RECORDED_FORMS)[number];

export interface RecordedFileRequest {
  readonly form: RecordedForm;
  readonly study: RecordingStudy;
  /** of the file that was read: the table says where it is from */
  readonly bytes: Uint8Array;
}

export interface RecordingFitted {
  readonly fit: TakeoffFit;
  readonly file: SkillFile;
}
