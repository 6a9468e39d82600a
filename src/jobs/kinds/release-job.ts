/** What a swing or a known contact gives the flight of a skill. */
import { buildSkill, calcRelease, contactFor, parseSkill, type Release } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { WholeRequest } from './whole-data.ts';

export const releaseJob: JobKind<Omit<WholeRequest, 'study'>, undefined, never, Release> = {
  open: (request) => () => release(request),
};

async function* release({
  file,
  athlete,
  shapes,
}: Omit<WholeRequest, 'study'>): AsyncGenerator<never, Release, boolean> {
  const skill = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const contact = await loadForJob(() => contactFor({ start: skill.start }));
  // a swing holds functions, which no message can carry
  const { swing: _, ...plain } = calcRelease(skill, contact);
  return plain;
}
