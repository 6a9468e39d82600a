/** A recording as a skill: flown from the measured start by the measured joint angles, or from a start that was fitted. */
import {
  type HumanAthlete,
  type PreparedFlight,
  prepareRecording,
  type SkillFile,
  writeRecordedSkill,
} from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { RecordedSkillRequest, RecordingProgress } from './recording-data.ts';

export function* prepareFor(
  { name, bytes, athlete, options }: RecordedSkillRequest,
  share: number,
): Generator<RecordingProgress, { readonly flight: PreparedFlight; readonly athlete: HumanAthlete }> {
  const steps = prepareRecording({ name, bytes }, athlete, options);
  for (;;) {
    const step = steps.next();
    if (!step.done) {
      yield { done: share * step.value.done, what: step.value.what };
      continue;
    }
    const { flight, posed } = step.value;
    if (!flight) throw new RangeError('no flight was found');
    return { flight, athlete: posed.athlete };
  }
}

export const recordedSkillJob: JobKind<RecordedSkillRequest, undefined, RecordingProgress, SkillFile> = {
  open: (request) =>
    function* () {
      const { flight, athlete } = yield* prepareFor(request, 1);
      return writeRecordedSkill(flight.motion, flight.start, { title: request.title, athlete, file: request.name });
    },
};
