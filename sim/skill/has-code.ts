/** Codes are the trampoline's and the water's, and are lent to the floor; what leaves or meets a rail, or leaves board or table, is counted another way. */
import type { LaunchedSkill } from './launch.ts';

export const hasCode = ({ launch: { rail, place }, catch: ask }: Pick<LaunchedSkill, 'launch' | 'catch'>): boolean =>
  !rail && !ask && place !== 'vaultTable' && place !== 'springboard';
