/** Why no draft was made, in one text for shell and page: the limit, what was asked beyond it, and the nearest that flies. */
import type { DraftLimit } from '../skill/draft-limits.ts';
import type { Refusal } from '../skill/draft-skill.ts';
import type { DraftSpec } from '../skill/draft-spec.ts';

const LIMITS: Readonly<Record<DraftLimit, string>> = {
  strength: 'it asks more of joints and muscles than is known of them',
  technique: 'it flies, but not as the trade does it',
  push: 'its twist needs a more uneven push than is usual',
  airTime: 'the air time that is usual there is too short',
  momentum: 'it needs more rotation than is usual there',
};

const wordNotFound = 'the search did not converge: no one limit was found to be in the way';

const nameOf = ({ code, title, place }: DraftSpec): string => (place === 'floor' ? title : `${code}, ${title}`);

/** Said wherever such a draft is handed out. */
export const wordBeyond = (asks: readonly string[]): string =>
  `It asks more strength or speed than has been measured: ${asks.slice(0, 2).join('; ')}${asks.length > 2 ? `; and ${asks.length - 2} more` : ''}.`;

/** `asked`: as it was typed. */
export function wordRefusal(asked: string, { limit, faults, airTime, nearest }: Omit<Refusal, 'beyond'>): string {
  const why = limit ? LIMITS[limit] : wordNotFound;
  const best = faults.slice(0, 2).join('; ');
  const parts = [
    `${asked} is not drafted: ${why}${limit && best ? ` (${best})` : ''}.`,
    limit ? 'Without that limit it flies.' : best ? `The nearest flight: ${best}.` : '',
    airTime === undefined ? '' : `It flies with ${airTime.toFixed(2)} s in the air.`,
    nearest ? `Nearest that flies: ${nameOf(nearest)}.` : '',
  ];
  return parts.filter(Boolean).join(' ');
}
