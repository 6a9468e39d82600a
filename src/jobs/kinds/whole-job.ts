/** A whole skill: swing, flight, landing; then, when asked, the studies of the release. */
import { buildSkill, calcLateDose, flyWhole, likelihoodSteps, loadContact, parseSkill } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { WholeEnd, WholeProgress, WholeRequest } from './whole-data.ts';
import { makeWholeResult, makeWindowResult } from './whole-result.ts';

export const wholeJob: JobKind<WholeRequest, undefined, WholeProgress, WholeEnd> = {
  open: (request) => () => flyAll(request),
};

async function* flyAll({
  file,
  athlete,
  shapes,
  study,
}: WholeRequest): AsyncGenerator<WholeProgress, WholeEnd, boolean> {
  const contact = await loadForJob(loadContact);
  const skill = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const whole = flyWhole(skill, contact);
  yield { kind: 'whole', result: makeWholeResult(whole, contact) };
  if (!study) return undefined;
  const steps = likelihoodSteps(whole, contact);
  let step = steps.next();
  for (; !step.done; step = steps.next())
    // a newer question may be waiting
    yield { kind: 'running' };
  if (step.value) yield { kind: 'likelihood', result: step.value };
  if (study === 'landing') return undefined;
  yield { kind: 'window', result: makeWindowResult(whole, contact) };
  return { late: calcLateDose(skill, contact) };
}
