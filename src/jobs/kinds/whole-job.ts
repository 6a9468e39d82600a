/** A whole skill, all its legs; then, when asked, the studies of one of them: its release, its landing. */
import {
  buildChain,
  calcChainSensitivity,
  calcLateDose,
  flyChain,
  likelihoodSteps,
  loadContact,
  parseChain,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import { makeCatchWindow } from './catch-result.ts';
import type { WholeEnd, WholeProgress, WholeRequest } from './whole-data.ts';
import { makeWholeResult } from './whole-result.ts';
import { makeWindowResult } from './window-result.ts';

export const wholeJob: JobKind<WholeRequest, undefined, WholeProgress, WholeEnd> = {
  open: (request) => () => flyAll(request),
};

async function* flyAll({
  file,
  athlete,
  shapes,
  study,
  leg,
}: WholeRequest): AsyncGenerator<WholeProgress, WholeEnd, boolean> {
  const contact = await loadForJob(loadContact);
  const chain = buildChain(parseChain({ ...file, athlete }, { athletes: {}, shapes }));
  const flown = flyChain(chain, contact);
  yield { kind: 'whole', result: makeWholeResult(flown, contact) };
  if (!study) return undefined;
  const { legs } = flown;
  const steps = likelihoodSteps(legs[legs.length - 1].whole, contact);
  let step = steps.next();
  for (; !step.done; step = steps.next())
    // a newer question may be waiting
    yield { kind: 'running' };
  if (step.value) yield { kind: 'likelihood', result: step.value };
  if (study === 'landing') return undefined;
  yield { kind: 'sensitivity', result: calcChainSensitivity(chain, contact) };
  const at = Math.min(leg ?? 0, legs.length - 1);
  yield { kind: 'window', result: makeWindowResult(legs[at], at, contact) };
  if (legs[at].whole.catch) yield { kind: 'catchWindow', result: makeCatchWindow(legs[at], at, contact) };
  return { late: calcLateDose(legs[at].skill, contact) };
}
