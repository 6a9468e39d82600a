/** Recordings of a body from a worker: read, posed, set beside the model. Loaded with the tool. */
import type { SkillFile } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type {
  RecordedFileRequest,
  RecordedSkillRequest,
  RecordingFitted,
  RecordingProgress,
  RecordingRequest,
  RecordingResult,
} from '../jobs/kinds/recording-data.ts';
import type { JobCall, Pool } from '../jobs/pool.ts';

export type GivenRecording = Pick<RecordingRequest, 'name' | 'bytes'>;

type Report = (progress: RecordingProgress) => void;

/** All can be cancelled; their errors say where in the file something is wrong. */
export interface Recordings {
  study(request: RecordingRequest, report: Report): JobCall<RecordingResult>;
  /** flown from the measured start by the measured joint angles */
  skill(request: RecordedSkillRequest, report: Report): JobCall<SkillFile>;
  /** the start fitted to all that was measured, and the skill from it */
  fit(request: RecordedSkillRequest, report: Report): JobCall<RecordingFitted>;
  write(request: RecordedFileRequest, report: (progress: { readonly done: number }) => void): JobCall<string>;
}

export function makeRecordings(pool: Pool = makePagePool(1)): Recordings {
  return {
    study: (request, report) => pool.run('recording', request, { onProgress: report }),
    skill: (request, report) => pool.run('recordedSkill', request, { onProgress: report }),
    fit: (request, report) => pool.run('recordingFit', request, { onProgress: report }),
    write: (request, report) => pool.run('recordingFile', request, { onProgress: report }),
  };
}
