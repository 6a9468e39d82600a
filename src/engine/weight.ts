/**
 * What a flight is taken to cost, counted from its file before anything of it is computed: what weighs more than MOST_HERE is flown
 * beside the page. A point is what one key of one angle costs. Weights are rounded from times measured on 2026-11-30: a flight
 * of a thousand points, or of MOST_STEPS steps, takes about a tenth of a second; a ready skill weighs under 200 and takes under 400 steps.
 */
import { type Athlete, flightOf, type SkillFile } from '../../sim/index.ts';

export const MOST_HERE = 1000;
/** Of the integration, those of looking for the touchdown among them. */
export const MOST_STEPS = 1500;

const BLOCK = 10;
const HOLD = 50;
const SEGMENT = 12;
/** Values of samples: each is smoothed once, but looked at again for every touchdown that is tried. */
const VALUES = 20;

export function weighFlight(file: SkillFile, athlete: Athlete): number {
  const { keys = [], blocks = [], samples = [], contacts = [] } = flightOf(file).schedule;
  const values = samples.reduce((sum, { deg }) => sum + deg.length, 0);
  const isSought =
    values > 0 &&
    'surface' in flightOf(file).end &&
    [...keys.map(({ at }) => at), ...[...blocks, ...contacts].flatMap(({ from, to }) => [from, to])].some(
      ({ anchor }) => anchor === 'touchdown',
    );
  return (
    keys.length +
    BLOCK * blocks.length +
    HOLD * contacts.length +
    (isSought ? values : values / VALUES) +
    (athlete.kind === 'tree' ? SEGMENT * athlete.segments.length : 0)
  );
}
