/** The account of a flight: flown again with each set of parts left out, one flight a step; then what the eyes see. */
import {
  buildSkill,
  calcFrames,
  contactFor,
  flySkill,
  frameTimes,
  launch,
  parseSkill,
  stepTiltAccount,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { AccountEnd, AccountProgress, AccountRequest } from './account-data.ts';
import { makeSightResult } from './account-sight.ts';

/** as the page's own frames */
const RATE_HZ = 120;
const MOST_FRAMES = 300;

export const accountJob: JobKind<AccountRequest, undefined, AccountProgress, AccountEnd> = {
  open: (request) => () => account(request),
};

async function* account({
  file,
  athlete,
  shapes,
  at,
  tiltOnly,
}: AccountRequest): AsyncGenerator<AccountProgress, AccountEnd, boolean> {
  const spec = parseSkill({ ...file, athlete }, { athletes: {}, shapes });
  const skill = launch(buildSkill(spec), await loadForJob(() => contactFor(spec)));
  const flight = flySkill(skill);
  const steps = stepTiltAccount(skill, { flight, at });
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield { kind: 'progress', progress: step.value };
  yield { kind: 'tilt', account: step.value };
  if (tiltOnly) return undefined;
  const rate = Math.min(RATE_HZ, MOST_FRAMES / flight.duration);
  return { sight: makeSightResult(flight, calcFrames(flight, frameTimes(flight.duration, rate))) };
}
