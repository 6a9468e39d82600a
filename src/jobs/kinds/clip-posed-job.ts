/** Posed frames of a clip flown: the flight that they are of, as a skill file, and how far it is from each of them. */
import {
  buildSkill,
  contactFor,
  flyPosedSteps,
  flySkill,
  launch,
  type PosedFlight,
  type PosedFlightRequest,
  parseSkill,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

/** `done`: from 0 to 1 */
export const clipPosedJob: JobKind<PosedFlightRequest, undefined, number, PosedFlight | undefined> = {
  open: (request) => () => flown(request),
};

async function* flown(request: PosedFlightRequest): AsyncGenerator<number, PosedFlight | undefined, boolean> {
  const { file, athlete, shapes } = request;
  const spec = parseSkill({ ...file, athlete }, { athletes: {}, shapes });
  const skill = launch(buildSkill(spec), await loadForJob(() => contactFor(spec)));
  const steps = flyPosedSteps(request, { skill, flight: flySkill(skill) });
  let step = steps.next();
  for (; !step.done; step = steps.next()) if (yield step.value.done / step.value.of) return undefined;
  return step.value;
}
