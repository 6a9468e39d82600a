/** What an ending was judged by, or why it is not computed, in a line. */
import { RAD, REV } from '../math/angles.ts';
import type { BandPlace } from '../measure/landing-band.ts';
import type { NotComputed, SkillVerdict } from '../skill/skill-verdict.ts';
import { type NumberWords, PENDING, PLAIN_NUMBERS } from './verdict-words.ts';

/** What the ending was judged by, and what that leaves out; or why it is not computed. */
export function wordBasis(verdict: SkillVerdict, n: NumberWords = PLAIN_NUMBERS): string {
  const { ending, basis, flown } = verdict;
  const words =
    ending.kind === 'notComputed' ? `${wordOpen(ending.why)}: ${wordNotComputed(ending.why, n)}.` : BASIS_WORDS[basis];
  const band = ending.kind === 'touches' ? [ending.isFast ? FAST : BAND_SHARES[ending.place]] : [];
  const run =
    ending.kind === 'landed' ? [...(ending.isOverBed ? [OVER_BED] : []), ...(ending.isFast ? [FAST_RUN] : [])] : [];
  return [words, ...band, ...run, ...wordCount(verdict, n), ...(flown.isTwistCoarse ? [wordCoarseTwist(n)] : [])].join(
    ' ',
  );
}
const IMPACT_RUN = 'The first tenth of a second is run, for the forces of the impact';
/** Why a whole somersault is written as a little less where the athlete is to come down with a lean. */
function wordCount({ isLeanWanted, lean, flown }: SkillVerdict, n: NumberWords): string[] {
  if (!isLeanWanted || lean === undefined || flown.somersaults === undefined) return [];
  const way = lean > 0 ? 'back' : 'forward';
  return [
    `Somersaults are counted from the attitude at take-off to that at touchdown: leaning ${n.angle(lean)} ${way} from upright there is ${n.turns(Math.abs(lean) / REV)} of one${n.inDegrees ? '' : ' somersault'}, and “short” or “past” is measured from the lean wanted.`,
  ];
}
/** Of a skill with one hand late: what half a millisecond of it is worth at least (9 to 60 deg of the ready skill, the more the shorter it holds: docs/swing.md). */
const LATE_GRAIN = 10 * RAD;
/** That the twist of a late hand is known to a tenth, in one sentence. */
export const wordCoarseTwist = (n: NumberWords = PLAIN_NUMBERS): string =>
  `One hand lets go late: half a millisecond of it is some ${n.angle(LATE_GRAIN)} of twist or more, so the twist is known to a tenth and no finer.`;

/** How often a run in full ends so: docs/landing.md. */
export const BAND_SHARES: Readonly<Record<BandPlace, string>> = {
  held: 'Held is standing, with a hop or a small step at most. Of 10 landings of which this is said, 7 are held when run in full.',
  steps: 'Of 10 landings of which this is said, 5 step and 3 fall when run in full.',
  falls: 'Of 10 landings of which this is said, 8 fall when run in full.',
};
const FAST =
  'It turns faster than the landings that the band was read off, so how often this is right is not known. Of backward landings up to half as fast again the model in full holds half of those within the band of what is held, of forward ones a third; of faster ones it holds few, and gymnasts do hold them.';
const FAST_RUN =
  'It turns faster than the landings that this model holds as often as gymnasts do: a step or a fall of such a landing is what the model makes of it, not evidence that a gymnast could not hold it.';
const OVER_BED = 'The bed under the mat is taken not to give way.';
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

const wordOpen = (why: NotComputed): string =>
  why.kind === 'fast' && why.hasImpact ? 'How it ends is not computed' : 'Not computed';

/** Why not, in a line. */
export function wordNotComputed(why: NotComputed, n: NumberWords = PLAIN_NUMBERS): string {
  switch (why.kind) {
    case 'asymmetric':
      return `the landing model is flat: ${why.of.map((a) => wordAsymmetry(a, n)).join('; ')}. Most twisting landings are uneven (50 to 83 %: Marinšek & Čuk)`;
    case 'fast':
      return `it turns with ${n.momentum(why.turning)} at touchdown; endings are judged up to ${n.momentum(why.limit)} for this body, since beyond the landing model holds none and gymnasts do. ${why.hasImpact ? IMPACT_RUN : 'The forces of its impact are computed where a landing is stated'}`;
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
