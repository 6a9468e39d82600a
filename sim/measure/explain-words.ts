/**
 * The sentence of an explanation: "arms in: long-axis moment 2.6 -> 1.0 kg·m², twist rate 0.9 -> 2.4 rev/s, angular
 * momentum unchanged; joints put in 95 J". All its texts stand in EXPLAIN_WORDS, to be put into another language as one.
 */
import { RAD, REV } from '../math/angles.ts';
import type { Explanation, InstantState } from './explain.ts';
import type { MoveWord } from './move-words.ts';
import { wordTilt } from './words.ts';

export interface ExplainWords {
  readonly moves: Readonly<Record<MoveWord, string>>;
  readonly and: string;
  readonly nothingYet: string;
  readonly longMoment: string;
  readonly lateralMoment: string;
  readonly twistRate: string;
  readonly somersaultRate: string;
  readonly tilt: string;
  readonly momentOf: (value: string) => string;
  /** `turned`: the other way round than the value before */
  readonly rateOf: (value: string, turned: boolean) => string;
  readonly angleOf: (value: string, side: 'left' | 'right' | '') => string;
  readonly fromTo: (what: string, before: string, after: string) => string;
  readonly unchanged: string;
  readonly changed: string;
  readonly none: string;
  readonly putIn: (joules: string) => string;
  readonly tookOut: (joules: string) => string;
  readonly noWork: string;
}

export const EXPLAIN_WORDS: ExplainWords = {
  moves: {
    armsIn: 'arms in',
    armsOut: 'arms out',
    armsUp: 'arms up',
    armsDown: 'arms down',
    armsApart: 'arms apart',
    armsLevel: 'arms level',
    armsRound: 'arms round',
    armsAdjust: 'arms adjust',
    armsBend: 'arms bend',
    armsStretch: 'arms stretch',
    tuck: 'tuck',
    pike: 'pike',
    open: 'open',
    arch: 'arch',
    legsApart: 'legs apart',
    legsTogether: 'legs together',
    legsSplit: 'legs split',
    legsCircle: 'legs circle',
    kneesBend: 'knees bend',
    kneesStretch: 'knees stretch',
    hipsBend: 'hips bend',
    hipsStraighten: 'hips extend',
    round: 'back rounds',
    straighten: 'back straightens',
    sideBend: 'side bend',
    turnTrunk: 'trunk turns',
    head: 'head moves',
    feet: 'feet move',
    joints: 'joints move',
  },
  and: ', ',
  nothingYet: 'nothing has moved yet',
  longMoment: 'long-axis spread',
  lateralMoment: 'lateral spread',
  twistRate: 'twist rate',
  somersaultRate: 'somersault rate',
  tilt: 'tilt',
  momentOf: (value) => `${value} kg·m²`,
  rateOf: (value, turned) => `${value} rev/s${turned ? ' the other way' : ''}`,
  angleOf: (value, side) => `${value} deg${side ? ` ${side}` : ''}`,
  fromTo: (what, before, after) => `${what} ${before} -> ${after}`,
  unchanged: 'angular momentum unchanged',
  changed: 'angular momentum not kept: the flight is not to be trusted here',
  none: 'no angular momentum, before or after',
  putIn: (joules) => `joints put in ${joules} J`,
  tookOut: (joules) => `joints took out ${joules} J`,
  noWork: 'joints did next to no net work',
};

/** Beyond this share |h| has changed; the engine keeps it to 1e-12 or so. */
const KEPT = 1e-6;
/** Least change worth a word: share of a moment, rev/s, rad, J. */
const MOMENT = 0.08;
const RATE = 0.1;
const TILT = 2 * RAD;
const WORK = 1;

/** Why the tilt changes at an instant, in one sentence. */
export function formatExplanation(e: Explanation | undefined, words: ExplainWords = EXPLAIN_WORDS): string {
  if (!e) return words.nothingYet;
  const moves = e.moves
    .slice(0, 2)
    .map((m) => words.moves[m])
    .join(words.and);
  const parts = [...changes(e.before, e.after, words), momentum(e, words)];
  return `${moves}: ${parts.join(', ')}; ${work(e.jointWork, words)}`;
}

function changes(a: InstantState, b: InstantState, w: ExplainWords): string[] {
  const out: string[] = [];
  const differs = (x: number, y: number): boolean => Math.abs(y - x) > MOMENT * Math.max(x, y);
  const moment = (what: string, x: number, y: number): void => {
    const places = Math.max(x, y) < 0.995 ? 2 : 1;
    out.push(w.fromTo(what, x.toFixed(places), w.momentOf(y.toFixed(places))));
  };
  // rates are said unsigned; next to none has no direction
  const rate = (what: string, x: number, y: number): void => {
    const turned = x * y < 0 && Math.min(Math.abs(x), Math.abs(y)) >= 0.05 * REV;
    out.push(w.fromTo(what, (Math.abs(x) / REV).toFixed(1), w.rateOf((Math.abs(y) / REV).toFixed(1), turned)));
  };
  const faster = (x: number, y: number): boolean =>
    Number.isFinite(x) && Number.isFinite(y) && Math.abs(y - x) >= RATE * REV;
  const long = differs(a.longMoment, b.longMoment);
  const twists = faster(a.twistRate, b.twistRate);
  const lateral = differs(a.lateralMoment, b.lateralMoment);
  const somersaults = faster(a.somersaultRate, b.somersaultRate);
  if (lateral && (somersaults || !twists)) moment(w.lateralMoment, a.lateralMoment, b.lateralMoment);
  if (somersaults) rate(w.somersaultRate, a.somersaultRate, b.somersaultRate);
  if (long && (twists || out.length === 0)) moment(w.longMoment, a.longMoment, b.longMoment);
  if (Math.abs(b.tilt - a.tilt) >= TILT) out.push(tilt(a.tilt, b.tilt, w));
  if (twists) rate(w.twistRate, a.twistRate, b.twistRate);
  return out;
}

function tilt(x: number, y: number, w: ExplainWords): string {
  const say = (v: number, said: boolean): string =>
    said ? w.angleOf((Math.abs(v) / RAD).toFixed(0), wordTilt(v)) : (Math.abs(v) / RAD).toFixed(0);
  // the side is said twice only where it changes
  return w.fromTo(w.tilt, say(x, wordTilt(x) !== '' && wordTilt(x) !== wordTilt(y)), say(y, true));
}

function momentum(e: Explanation, w: ExplainWords): string {
  if (e.momentumDrift > KEPT) return w.changed;
  return Math.max(e.before.momentum, e.after.momentum) < 1e-6 ? w.none : w.unchanged;
}

function work(joules: number, w: ExplainWords): string {
  if (!(Math.abs(joules) >= WORK)) return w.noWork;
  // two figures: a joint's work is known no better
  const said = String(Number(Math.abs(joules).toPrecision(2)));
  return joules > 0 ? w.putIn(said) : w.tookOut(said);
}
