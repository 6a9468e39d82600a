/** The nearest of rail, table or board in a plain line, for the command line. */
import type { Clearance } from '../measure/clearance.ts';
import { nearWords, PLAIN_NUMBERS } from './verdict-words.ts';

/** Nothing where it is farther than `asked`, m. */
export function formatClearance(c: Clearance | undefined, asked: number): string {
  if (!c || c.distance >= asked) return '';
  const line = `${nearWords(c)} at ${PLAIN_NUMBERS.seconds(c.t)}`;
  return c.distance <= 0
    ? `${line}: what follows is not flown so`
    : `${line} (${PLAIN_NUMBERS.centimetres(asked)} asked for, our judgement)`;
}
