/** Where a skill is done: what the trade counts it by, and what it is called there. */
import { PLATFORM_FROM } from './apparatus-sizes.ts';
import type { LaunchedSkill } from './launch.ts';

export const SKILL_PLACES = ['floor', 'trampoline', 'bars', 'vault', 'board', 'platform'] as const;
export type SkillPlace = (typeof SKILL_PLACES)[number];

/** m, of the mass centre over the feet as a diver leaves: our judgement, board and platform lie two metres apart. */
const STANDING = 1;

/** By what is left, and by what is met: who comes down on a bed is judged by the bed. */
export function placeOfSkill({
  launch: { rail, place },
  catch: ask,
  end,
  takeoff,
}: Pick<LaunchedSkill, 'launch' | 'catch' | 'end' | 'takeoff'>): SkillPlace {
  if (rail || ask) return 'bars';
  if (place === 'vaultTable' || place === 'springboard') return 'vault';
  const surface = end.surface;
  if (surface?.kind === 'water') {
    const { of, y } = takeoff.height;
    const over = y - surface.y - (of === 'massCentre' ? STANDING : 0);
    return over >= PLATFORM_FROM ? 'platform' : 'board';
  }
  return surface?.kind === 'trampoline' ? 'trampoline' : 'floor';
}
