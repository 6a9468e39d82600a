/** The take-off of a recording fitted, and the skill that flies from it. */
import { fitTakeoffSteps, writeRecordedSkill } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import { prepareFor } from './recorded-skill-job.ts';
import type { RecordedSkillRequest, RecordingFitted, RecordingProgress } from './recording-data.ts';

/** Shares of the work: reading it once more, and the search; the rest says what it is known to. */
const READ = 0.2;
const SEARCHED = 0.5;

export const recordingFitJob: JobKind<RecordedSkillRequest, undefined, RecordingProgress, RecordingFitted> = {
  open: (request) =>
    function* () {
      const { flight, athlete } = yield* prepareFor(request, READ);
      const steps = fitTakeoffSteps([flight]);
      let step = steps.next();
      for (; !step.done; step = steps.next()) {
        const { phase, done, of } = step.value;
        yield phase === 'search'
          ? { done: READ + ((SEARCHED - READ) * done) / of, what: 'fitting the take-off' }
          : { done: SEARCHED + ((1 - SEARCHED) * done) / of, what: 'finding what it is known to' };
      }
      const [fit] = step.value;
      const { title, name } = request;
      return { fit, file: writeRecordedSkill(flight.motion, fit.start, { title, athlete, file: name }) };
    },
};
