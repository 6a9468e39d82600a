/** What a search makes of a verdict: whether its landing is held, and what it would touch on its way. */
import type { Clearance } from '../measure/clearance.ts';
import { HELD } from './held-landing.ts';
import type { SkillVerdict } from './skill-verdict.ts';

/** With a hop or a small step at most: by the landing model where it was run, else by its band. At a rail: gap and speed along the arms as asked. */
export function isHeld({ ending }: Pick<SkillVerdict, 'ending'>): boolean {
  if (ending.kind === 'atRail') return ending.outcome === 'caught';
  if (ending.kind === 'landed') return HELD.has(ending.how);
  if (ending.kind === 'notComputed' && ending.why.kind === 'fast') return ending.why.isWithin === true;
  return ending.kind === 'touches' && ending.place === 'held';
}

/** Not held, and not down either. */
export const isInSteps = ({ ending }: Pick<SkillVerdict, 'ending'>): boolean =>
  (ending.kind === 'landed' && ending.how === 'steps') || (ending.kind === 'touches' && ending.place === 'steps');

/** Rail, table or board that is touched in the air. */
export function touchedOf({ missed }: Pick<SkillVerdict, 'missed'>): Clearance['solid'] | undefined {
  for (const miss of missed) if (miss.kind === 'near' && miss.distance <= 0) return miss.solid;
  return undefined;
}
