/** The nearest of rail, table or board in a plain line, for the command line. */
import { ASKED_CLEARANCE, type Clearance } from '../measure/clearance.ts';

/** Nothing where it is farther than asked; no finer than a centimetre. */
export function formatClearance(c: Clearance | undefined, asked = ASKED_CLEARANCE): string {
  if (!c || c.distance >= asked) return '';
  const when = `${c.t.toFixed(2)} s`;
  const verb = /s$|feet$/.test(c.part) ? '' : 's';
  const cm = Math.max(1, Math.round(100 * c.distance));
  return c.distance <= 0
    ? `${c.part} ${verb ? 'touches' : 'touch'} the ${c.solid} at ${when}: what follows is not flown so`
    : `${c.part} pass${verb ? 'es' : ''} ${cm} cm from the ${c.solid} at ${when} (${Math.round(100 * asked)} cm asked for, our judgement)`;
}
