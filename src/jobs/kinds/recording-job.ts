/** A recording read, posed and set beside the model, beside the page: files come from anywhere and may be long. */
import { studyRecording } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import { calcRecordedPoses } from './recorded-poses.ts';
import type { RecordingProgress, RecordingRequest, RecordingResult } from './recording-data.ts';

export const recordingJob: JobKind<RecordingRequest, undefined, RecordingProgress, RecordingResult> = {
  open: ({ name, bytes, athlete, options }) =>
    function* () {
      const steps = studyRecording({ name, bytes }, athlete, options);
      let far = 0;
      let step = steps.next();
      for (; !step.done; step = steps.next()) {
        // a bar does not go back
        far = Math.max(far, step.value.done);
        yield { ...step.value, done: far };
      }
      const study = step.value;
      const measured = calcRecordedPoses(study, study.measuredRoot);
      const computed = study.test && calcRecordedPoses(study, study.computedRoot);
      return { study, ...(measured ? { measured } : {}), ...(computed ? { computed } : {}) };
    },
};
