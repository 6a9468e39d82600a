/** Whether there is something about a landing that "Fix the landing" is for, and how near a fixed one comes (judgement). SI, radians. */
import { RAD, REV } from '../math/angles.ts';
import type { LaunchedSkill } from './launch.ts';
import type { SkillVerdict } from './skill-verdict.ts';
import { isHeld, touchedOf } from './verdict-held.ts';

/** Twists in revolutions. A verdict calls 30 deg of twist and 10 of tilt missed. */
export const FIXED = { twists: (10 * RAD) / REV, tilt: 6 * RAD, landing: 8 * RAD } as const;

type Wanted = Pick<LaunchedSkill, 'target' | 'end' | 'catch'>;

/** A landing on a surface, with a target, that nothing was touched before. */
function isToJudge({ target, end, catch: ask }: Wanted, verdict: SkillVerdict): boolean {
  if (!target || !end.surface || end.surface.by || ask || touchedOf(verdict)) return false;
  const { ending } = verdict;
  return ending.kind !== 'inAir' && !(ending.kind === 'notComputed' && ending.why.kind === 'pending');
}

/** Whether a flight that was judged misses what it is to land as. */
export function needsFix(wanted: Wanted, verdict: SkillVerdict): boolean {
  if (!isToJudge(wanted, verdict)) return false;
  const { target } = wanted;
  const { ending, flown, missed, short = 0 } = verdict;
  if (missed.length > 0 || ending.kind === 'down') return true;
  if (Math.abs((flown.twists ?? 0) - (target?.twists ?? 0)) > FIXED.twists) return true;
  if (ending.kind === 'bounces' || ending.kind === 'enters') return Math.abs(short) > FIXED.landing;
  // of an uneven landing no ending is computed, and none is missed
  if (ending.kind === 'notComputed' && ending.why.kind !== 'fast') return Math.abs(short) > FIXED.landing;
  return !isHeld(verdict);
}
