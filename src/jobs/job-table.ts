/** The kinds of jobs. The caller imports only the types; the workers import the table. */
import { accountJob } from './kinds/account-job.ts';
import { classFilesJob } from './kinds/class-files-job.ts';
import { classJob } from './kinds/class-job.ts';
import { clipPosedJob } from './kinds/clip-posed-job.ts';
import { conditioningJob } from './kinds/conditioning-job.ts';
import { draftJob } from './kinds/draft-job.ts';
import { filmErrorsJob } from './kinds/film-errors-job.ts';
import { filmJob } from './kinds/film-job.ts';
import { fixJob } from './kinds/fix-job.ts';
import { flightJob } from './kinds/flight-job.ts';
import { forgivingJob } from './kinds/forgiving-job.ts';
import { mapJob } from './kinds/map-job.ts';
import { readJob } from './kinds/read-job.ts';
import { recordedSkillJob } from './kinds/recorded-skill-job.ts';
import { recordingFileJob } from './kinds/recording-file-job.ts';
import { recordingFitJob } from './kinds/recording-fit-job.ts';
import { recordingJob } from './kinds/recording-job.ts';
import { releaseJob } from './kinds/release-job.ts';
import { sheetJob } from './kinds/sheet-job.ts';
import { solveJob } from './kinds/solve-job.ts';
import { studyJob } from './kinds/study-job.ts';
import { tryJob } from './kinds/try-job.ts';
import { twistJob } from './kinds/twist-job.ts';
import { wholeJob } from './kinds/whole-job.ts';
import { worksheetJob } from './kinds/worksheet-job.ts';

export const jobKinds = {
  account: accountJob,
  class: classJob,
  classFiles: classFilesJob,
  clipPosed: clipPosedJob,
  conditioning: conditioningJob,
  draft: draftJob,
  film: filmJob,
  filmErrors: filmErrorsJob,
  fix: fixJob,
  flight: flightJob,
  forgiving: forgivingJob,
  map: mapJob,
  read: readJob,
  recordedSkill: recordedSkillJob,
  recording: recordingJob,
  recordingFile: recordingFileJob,
  recordingFit: recordingFitJob,
  release: releaseJob,
  sheet: sheetJob,
  solve: solveJob,
  study: studyJob,
  try: tryJob,
  twist: twistJob,
  whole: wholeJob,
  worksheet: worksheetJob,
} as const;

type Kinds = typeof jobKinds;
export type JobName = keyof Kinds;
export type SubjectOf<N extends JobName> = Parameters<Kinds[N]['open']>[0];
type Run<N extends JobName> = Awaited<ReturnType<Kinds[N]['open']>>;
export type PieceOf<N extends JobName> = Parameters<Run<N>>[0];
export type ProgressOf<N extends JobName> = Parameters<Parameters<Run<N>>[1]>[0];
type StepResult<S> = S extends { next(stop: boolean): infer R } ? Awaited<R> : never;
export type ResultOf<N extends JobName> =
  StepResult<ReturnType<Run<N>>> extends infer R ? (R extends { done: true; value: infer V } ? V : never) : never;
