/** A whole skill: swing, flight, landing; then, when asked, the studies of the release. */
import { buildSkill, calcLateDose, flyWhole, loadContact, parseSkill } from '../../../sim/index.ts';
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
  yield { kind: 'window', result: makeWindowResult(whole) };
  return { late: calcLateDose(skill, contact) };
}
