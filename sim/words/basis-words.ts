/** What an ending was judged by, or why it is not computed, in a line. */
import { RAD } from '../math/angles.ts';
import type { BandPlace } from '../measure/landing-band.ts';
import type { NotComputed, SkillVerdict } from '../skill/skill-verdict.ts';
import { type NumberWords, PENDING, PLAIN_NUMBERS } from './verdict-words.ts';

/** What the ending was judged by, and what that leaves out; or why it is not computed. */
export function wordBasis({ ending, basis, flown }: SkillVerdict, n: NumberWords = PLAIN_NUMBERS): string {
  const words = ending.kind === 'notComputed' ? `Not computed: ${wordNotComputed(ending.why, n)}.` : BASIS_WORDS[basis];
  const band = ending.kind === 'touches' ? [ending.isFast ? FAST : BAND_SHARES[ending.place]] : [];
  return [words, ...band, ...(flown.isTwistCoarse ? [wordCoarseTwist(n)] : [])].join(' ');
}
/** Of a skill with one hand late: what half a millisecond of it is worth at least (9 to 60 deg of the ready skill, the more the shorter it holds: docs/swing.md). */
const LATE_GRAIN = 10 * RAD;
export const wordCoarseTwist = (n: NumberWords = PLAIN_NUMBERS): string =>
  `One hand lets go late: half a millisecond of it is some ${n.angle(LATE_GRAIN)} of twist or more, so the twist is known to a tenth and no finer.`;

/** How often a run in full ends so: docs/landing.md. */
export const BAND_SHARES: Readonly<Record<BandPlace, string>> = {
  held: 'Held is standing, with a hop or a small step at most: of 10 landings run in full of which this is said, 7 are held.',
  steps: 'Of 10 landings run in full of which this is said, 5 step and 3 fall.',
  falls: 'Of 10 landings run in full of which this is said, 8 fall.',
};
const FAST =
  'It turns faster than the landings that the band was read off, so how often this is right is not known: of those that turn backward half as fast again, half of what it calls held is held; beyond, the model run in full seldom holds what gymnasts do.';
const BASIS_WORDS: Readonly<Record<SkillVerdict['basis'], string>> = {
  landingModel:
    'Ending judged by the landing model: both legs alike, in a plane. No landing of a measured athlete was compared with it.',
  landingBand:
    'No landing after the flight is stated: judged by where the mass centre, its speed and the turning left would have to be caught, as the landing model has it for this surface. Add a landing to have it run.',
  touchdown: 'Ending judged by the attitude as the flight ends; how it goes on is not judged.',
  hands:
    'Judged by how near hands and rail come and how fast along the arms: at most 5 cm and 1.5 to 2 m/s, from memory. Whether the fingers hold is not judged.',
  none: '',
};

/** Why not, in a line. */
export function wordNotComputed(why: NotComputed, n: NumberWords = PLAIN_NUMBERS): string {
  switch (why.kind) {
    case 'asymmetric':
      return `the landing model is flat: ${why.of.map((a) => wordAsymmetry(a, n)).join('; ')}. Most twisting landings are uneven (50 to 83 %: Marinšek & Čuk)`;
    case 'fast':
      return `it turns with ${why.turning.toFixed(0)} kg m2/s at touchdown; endings are judged up to ${why.limit.toFixed(0)} for this body, since beyond the landing model holds none and gymnasts do. The forces of its impact are computed where a landing is stated`;
    case 'undefined':
      return 'the body lies along its somersault axis';
    case 'noLanding':
      return 'the skill states no landing after its flight';
    case 'pending':
      return PENDING;
    case 'heldEqual':
      return 'its take-off is made equal to another version’s';
    case 'failed':
      return 'the landing could not be run';
  }
}

type AsymmetryOf = Extract<NotComputed, { kind: 'asymmetric' }>['of'][number];
export function wordAsymmetry({ kind, value, limit }: AsymmetryOf, n: NumberWords): string {
  switch (kind) {
    case 'tilt':
      return `tilted by ${n.angle(value)} (limit ${n.angle(limit)})`;
    case 'twist':
      return `twist off by ${n.angle(value)} (limit ${n.angle(limit)})`;
    case 'sides':
      return `legs apart by ${n.angle(value)} (limit ${n.angle(limit)})`;
    case 'across':
      return `moving across at ${n.speed(value)} (limit ${n.speed(limit)})`;
  }
}
