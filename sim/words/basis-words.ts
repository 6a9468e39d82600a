/** What an ending was judged by, or why it is not computed, in a line. */
import { RAD } from '../math/angles.ts';
import type { NotComputed, SkillVerdict } from '../skill/skill-verdict.ts';
import { type NumberWords, PENDING, PLAIN_NUMBERS } from './verdict-words.ts';

/** What the ending was judged by, and what that leaves out; or why it is not computed. */
export function wordBasis({ ending, basis, flown }: SkillVerdict, n: NumberWords = PLAIN_NUMBERS): string {
  const words = ending.kind === 'notComputed' ? `Not computed: ${wordNotComputed(ending.why, n)}.` : BASIS_WORDS[basis];
  const isFast = ending.kind === 'touches' && ending.isFast;
  return [words, ...(isFast ? [FAST] : []), ...(flown.isTwistCoarse ? [wordCoarseTwist(n)] : [])].join(' ');
}
/** Of a skill with one hand late: what half a millisecond of it is worth at least (9 to 60 deg of the ready skill, the more the shorter it holds: docs/swing.md). */
const LATE_GRAIN = 10 * RAD;
export const wordCoarseTwist = (n: NumberWords = PLAIN_NUMBERS): string =>
  `One hand lets go late: half a millisecond of it is some ${n.angle(LATE_GRAIN)} of twist or more, so the twist is known to a tenth and no finer.`;

const FAST =
  'It turns faster than they did, as straight and double somersaults do: run in full, the model seldom holds what gymnasts do there.';
const BASIS_WORDS: Readonly<Record<SkillVerdict['basis'], string>> = {
  landingModel:
    'Ending judged by the landing model: both legs alike, in a plane. No landing of a measured athlete was compared with it.',
  landingBand:
    'No landing after the flight is stated: judged by where the mass centre, its speed and the turning left would have to be caught, as the landing model has it for this surface. Of landings run in full three in four ended as this says. Add a landing to have yours run.',
  touchdown: 'Ending judged by the attitude as the flight ends; how it goes on is not judged.',
  none: '',
};

/** Why not, in a line. */
export function wordNotComputed(why: NotComputed, n: NumberWords = PLAIN_NUMBERS): string {
  switch (why.kind) {
    case 'asymmetric':
      return `the landing model is flat: ${why.of.map((a) => asymmetryWords(a, n)).join('; ')}. Most twisting landings are uneven (50 to 83 %: Marinšek & Čuk)`;
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
function asymmetryWords({ kind, value, limit }: AsymmetryOf, n: NumberWords): string {
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
