/** Rails, hands and where a hand is from a rail, in words. */
import type { MissedWay } from '../skill/find-catch.ts';

const RAIL_WORDS: Readonly<Record<string, string>> = {
  highBar: 'the high bar',
  unevenHigh: 'the high rail',
  unevenLow: 'the low rail',
};
export const wordRail = (rail: string): string => RAIL_WORDS[rail] ?? rail;

export const HANDS_WORDS = { both: 'both hands', left: 'the left hand', right: 'the right hand' } as const;

export const WAY_WORDS: Readonly<Record<MissedWay, string>> = {
  short: 'short of it',
  past: 'past it',
  over: 'over it',
  under: 'under it',
  beside: 'off the end of it',
};
