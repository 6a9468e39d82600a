/** A whole skill: swing, flight, landing; then, when asked, the studies of the release. */
import { buildSkill, calcFlightEnd, flyWhole, loadContact, parseSkill } from '../../../sim/index.ts';
import { REV } from '../../../sim/math/angles.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { WholeEnd, WholeProgress, WholeRequest } from './whole-data.ts';
import { tellLate, tellWhole, tellWindow } from './whole-told.ts';

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
  yield { kind: 'whole', told: tellWhole(whole, contact) };
  if (!study) return undefined;
  yield { kind: 'window', told: tellWindow(whole) };
  const twistsOf = (one: typeof whole): number => Math.abs(calcFlightEnd(one.flight).twist) / REV;
  return { late: tellLate(skill, contact, twistsOf) };
}
