/**
 * One verdict on a skill: what was missed of what was wanted, what was flown, how it ends, and what the ending was judged by. Headline,
 * command line, studies, comparison, print and speech read this object, so that no two of them can disagree (docs/decisions/0019-verdict.md).
 * Angles in rad, lengths in m, counts in revolutions; "forward" and "back" as the athlete faces.
 */
import type { EndingKind, LandingEnding } from '../contact/ending.ts';
import type { Asymmetry } from '../contact/landing-entry.ts';
import type { ContactLimb, SurfaceKind } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import type { RailName } from '../math/rail-heights.ts';
import { ASKED_CLEARANCE, type Clearance } from '../measure/clearance.ts';
import { type BandPlace, bandOf, MOST_JUDGED_TURNING, MOST_TURNING, placeInBand } from '../measure/landing-band.ts';
import type { Summary } from '../measure/summary.ts';
import { isLeanWanted } from '../measure/target.ts';
import type { SideWord, SomersaultWord } from '../measure/words.ts';
import type { CatchAsk } from './catch-ask.ts';
import type { Hand } from './catch-watch.ts';
import type { CatchOutcome, MissedWay } from './find-catch.ts';
import { isIntoBed } from './into-bed.ts';
import type { LaunchedSkill } from './launch.ts';
import type { Whole } from './whole.ts';

/** From these on something is called missed. */
export const MISS_WIDTHS = {
  /** smallest of the judging bands for unfinished twist (30 / 60 / 90 deg; from memory) */
  twist: 30 * RAD,
  /** where the planar landing ends (our judgement) */
  tilt: 10 * RAD,
  /** short or past by so much no feet are under the body: the count is said instead of the angle (our judgement) */
  somersault: 60 * RAD,
  /** turns the other way by at least so much (half a turn: the least that is a skill of its own) */
  wrongWay: 0.5 * REV,
} as const;

/** Where the planar landing ends besides twist and tilt (our judgement): legs apart, rad, and moving across, m/s. */
export const UNEVEN = { sides: 20 * RAD, across: 1 } as const;

export type Miss =
  /** comes nearer to rail, table or board than is asked, or touches it */
  | ({ readonly kind: 'near' } & Clearance)
  | {
      readonly kind: 'wrongWay';
      readonly of: 'somersault' | 'twist';
      readonly done: number;
      readonly word: string;
      readonly wanted: string;
    }
  | { readonly kind: 'somersaults'; readonly done: number; readonly wanted: number }
  /** `past`: + more than wanted */
  | { readonly kind: 'twists'; readonly done: number; readonly wanted: number; readonly past: number }
  | { readonly kind: 'tilt'; readonly tilt: number; readonly headTo: SideWord };

interface Flown {
  /** undefined: not defined from `undefinedFrom` on */
  readonly somersaults?: number;
  readonly somersaultWord: SomersaultWord;
  readonly twists?: number;
  readonly twistWord: SideWord;
  /** off a rail: what the trade counts, which begins before the release */
  readonly trade?: string;
  readonly duration: number;
  readonly undefinedFrom?: number;
  /** one hand let go late: half a millisecond of it is a good part of a tenth of a twist (late-dose.ts), so no word on the twist is finer */
  readonly isTwistCoarse?: boolean;
}

/** Why a landing is not computed. */
export type NotComputed =
  | { readonly kind: 'asymmetric'; readonly of: readonly Asymmetry[] }
  | { readonly kind: 'undefined' }
  /** turns faster than the landing model can judge, kg m^2/s; by its band it would be held; its first impact was run */
  | {
      readonly kind: 'fast';
      readonly turning: number;
      readonly limit: number;
      readonly isWithin?: true;
      readonly hasImpact?: true;
    }
  /** the file states no landing after the flight */
  | { readonly kind: 'noLanding' }
  /** on its way */
  | { readonly kind: 'pending' }
  /** of a version whose take-off is made equal to another's */
  | { readonly kind: 'heldEqual' }
  /** could not be run */
  | { readonly kind: 'failed' };

export type Ending =
  | {
      readonly kind: 'landed';
      readonly how: EndingKind;
      readonly direction?: 'forward' | 'back';
      readonly t: number;
      /** turns by more than the landings that the model holds as people do */
      readonly isFast?: true;
      /** on a mat that lies on a bed */
      readonly isOverBed?: true;
    }
  /** another part than the feet touches first */
  | { readonly kind: 'down'; readonly part: string }
  | { readonly kind: 'enters'; readonly first: 'head' | 'feet' | 'flat'; readonly bend: number }
  /** thrown up again: travel along as the athlete faced at take-off, + forward, and what the body is bent by */
  | { readonly kind: 'bounces'; readonly travel: number; readonly bend: number }
  /** by the screen of the landing model, which was not run: its place in the band, and where it goes */
  | {
      readonly kind: 'touches';
      readonly place: BandPlace;
      readonly direction: 'forward' | 'back';
      /** turns by more than the band was read for */
      readonly isFast?: true;
    }
  | { readonly kind: 'inAir' }
  /** hands or feet come down on what they are to push off, and the skill goes on */
  | { readonly kind: 'meets'; readonly limb: ContactLimb }
  | RailEnding
  | { readonly kind: 'notComputed'; readonly why: NotComputed };

/** A flight that was to end with the hands at a rail. */
export interface RailEnding {
  readonly kind: 'atRail';
  readonly rail: RailName;
  readonly hands: CatchAsk['hands'];
  readonly outcome: CatchOutcome['kind'];
  /** of the farther hand from the rail at its nearest, m */
  readonly gap: number;
  /** along the arms, m/s, + towards the rail, and the most that was asked */
  readonly closing: number;
  readonly most: number;
  /** across the arms, m/s */
  readonly across: number;
  /** hands are there, but the mass centre goes away from the rail: the published difference between missed and caught ("What governs... Kovacs", J Biomech, from a secondary copy) */
  readonly isAway?: true;
  /** missed: where the hand is then */
  readonly ways: readonly MissedWay[];
  /** missed, of two hands: the one that is there */
  readonly only?: Hand;
}

/** What the ending was judged by. */
type Basis = 'landingModel' | 'landingBand' | 'touchdown' | 'hands' | 'none';

export interface SkillVerdict {
  /** in the order in which they are said */
  readonly missed: readonly Miss[];
  readonly flown: Flown;
  /** F at the end against what was wanted, in the direction of rotation: + short, - past; undefined: nothing turns, or it is not defined */
  readonly short?: number;
  /** how far the body leans from upright at the end, + backward as the athlete faces */
  readonly lean?: number;
  /** what is wanted is no upright (or head-down) end but a lean: `short` is of that, and `lean` is not */
  readonly isLeanWanted?: true;
  readonly ending: Ending;
  readonly basis: Basis;
}

interface VerdictContext {
  readonly surface?: SurfaceKind;
  /** only these meet the surface */
  readonly by?: ContactLimb | undefined;
  /** the hands and the rail, where that is what ends the flight */
  readonly atRail?: RailEnding | undefined;
  /** the landing where it was run; 'pending' where it is on its way */
  readonly arrival?: ArrivalEnd | 'pending';
  /** what came nearest to rail, table or board */
  readonly nearest?: Clearance | undefined;
  /** one hand let go after the other */
  readonly isHandLate?: boolean;
}

/** What is read of a landing that was run. */
export type ArrivalEnd =
  | { readonly kind: 'notOnFeet'; readonly part: string }
  | { readonly kind: 'asymmetric'; readonly asymmetry: readonly Asymmetry[] }
  | { readonly kind: 'landed'; readonly report: { readonly ending: LandingEnding } };

export function calcSkillVerdict(summary: Summary, context: VerdictContext): SkillVerdict {
  const { landing, somersaultWord } = summary;
  const ending = endingOf(summary, context);
  // a stretch of a flight, of which nothing is wanted, is short of nothing
  const isOpenEnded = ending.kind === 'inAir' && summary.target === undefined;
  return {
    missed: [...nearOf(context.nearest), ...missedOf(summary)],
    flown: {
      ...(summary.somersaults === undefined ? {} : { somersaults: summary.somersaults }),
      somersaultWord,
      ...(summary.twists === undefined ? {} : { twists: summary.twists }),
      twistWord: summary.twistWord,
      duration: summary.duration,
      ...(summary.undefinedFrom === undefined ? {} : { undefinedFrom: summary.undefinedFrom }),
      ...(context.isHandLate ? { isTwistCoarse: true } : {}),
    },
    ...(landing && somersaultWord && !isOpenEnded ? { short: landing.short } : {}),
    ...(landing ? { lean: landing.lean } : {}),
    ...(isLeanWanted(summary.target) ? { isLeanWanted: true } : {}),
    ending,
    basis: basisOf(ending),
  };
}

/** What comes nearer than is asked. */
export const nearOf = (c: Clearance | undefined): readonly Miss[] =>
  c && c.distance < ASKED_CLEARANCE ? [{ kind: 'near', ...c }] : [];

/** What a flight says before its landing is run; `nearest` of rail, table or board. */
export function verdictInFlight(
  { end, after, launch, catch: ask }: Pick<LaunchedSkill, 'end' | 'after' | 'launch' | 'catch'>,
  summary: Summary,
  nearest?: Clearance,
  met?: CatchOutcome,
): SkillVerdict {
  const surface = end.surface?.kind;
  const lands = after !== undefined && !isIntoBed({ end, after });
  return calcSkillVerdict(summary, {
    ...(surface ? { surface } : {}),
    by: end.surface?.by,
    atRail: ask && met && railEnding(ask, met),
    ...(lands ? { arrival: 'pending' } : {}),
    nearest,
    isHandLate: launch.late !== undefined,
  });
}

/** A whole skill's. */
export function verdictOf(
  { skill, landing, flight }: Pick<Whole, 'skill' | 'landing' | 'flight'>,
  summary: Summary,
  nearest?: Clearance,
): SkillVerdict {
  const inFlight = verdictInFlight(skill, summary, nearest, flight.met);
  const { ending } = inFlight;
  if (!landing || !isPending(ending)) return inFlight;
  const judged = arrivalEnding(landing, summary, skill.end.surface?.kind);
  const fast =
    judged.kind === 'notComputed' ? tooFast(summary, skill.end.surface?.kind, landing.kind === 'landed') : undefined;
  const found = fast ?? judged;
  return { ...inFlight, ending: found, basis: basisOf(found) };
}

const isPending = (ending: Ending): boolean => ending.kind === 'notComputed' && ending.why.kind === 'pending';

const basisOf = ({ kind }: Ending): Basis =>
  kind === 'landed'
    ? 'landingModel'
    : kind === 'touches'
      ? 'landingBand'
      : kind === 'atRail'
        ? 'hands'
        : kind === 'notComputed' || kind === 'meets'
          ? 'none'
          : 'touchdown';

function missedOf(s: Summary): Miss[] {
  const { target } = s;
  if (s.twists === undefined || s.somersaults === undefined) return [];
  const missed: Miss[] = [];
  if (target) {
    const turn = target.somersaultWord;
    const side = target.twistWord;
    const turnsWrong =
      turn !== '' &&
      s.somersaultWord !== '' &&
      turn !== s.somersaultWord &&
      s.somersaults * REV >= MISS_WIDTHS.wrongWay;
    const twistsWrong =
      side !== '' &&
      target.twists > 0 &&
      s.twistWord !== '' &&
      side !== s.twistWord &&
      s.twists * REV >= MISS_WIDTHS.wrongWay;
    if (turnsWrong)
      missed.push({ kind: 'wrongWay', of: 'somersault', done: s.somersaults, word: s.somersaultWord, wanted: turn });
    if (twistsWrong) missed.push({ kind: 'wrongWay', of: 'twist', done: s.twists, word: s.twistWord, wanted: side });
    else {
      const done = s.twists * (side !== '' && s.twistWord !== '' && side !== s.twistWord ? -1 : 1);
      const past = (done - target.twists) * REV;
      if (Math.abs(past) >= MISS_WIDTHS.twist)
        missed.push({ kind: 'twists', done: s.twists, wanted: target.twists, past });
    }
    if (!turnsWrong && Math.abs(s.landing?.short ?? 0) >= MISS_WIDTHS.somersault)
      missed.push({ kind: 'somersaults', done: s.somersaults, wanted: target.somersaults });
  }
  if (s.tilt !== undefined && Math.abs(s.tilt) >= MISS_WIDTHS.tilt)
    missed.push({ kind: 'tilt', tilt: s.tilt, headTo: s.tiltWord });
  return missed;
}

function railEnding({ rail, hands, closing: most }: CatchAsk, met: CatchOutcome): RailEnding {
  const { gap, along, across, toward } = met.moment;
  const { ways = [], only } = met.kind === 'missed' ? met : {};
  return {
    kind: 'atRail',
    rail,
    hands,
    outcome: met.kind,
    gap,
    closing: along,
    most,
    across,
    ...(toward < 0 ? { isAway: true } : {}),
    ways,
    ...(only ? { only } : {}),
  };
}

function endingOf(s: Summary, { surface, by, atRail, arrival }: VerdictContext): Ending {
  if (atRail) return atRail;
  if (surface === undefined || !s.lands) return { kind: 'inAir' };
  const notComputed = (why: NotComputed): Ending => ({ kind: 'notComputed', why });
  if (surface === 'water') {
    if (s.landing === undefined) return notComputed({ kind: 'undefined' });
    const upright = Math.cos(s.landing.lean);
    const first = Math.abs(upright) < Math.SQRT1_2 ? 'flat' : upright > 0 ? 'feet' : 'head';
    return { kind: 'enters', first, bend: s.endBend };
  }
  if (by !== undefined) return { kind: 'meets', limb: by };
  if (s.touchedBy !== undefined && s.touchedBy !== 'feet') return { kind: 'down', part: s.touchedBy };
  if (surface === 'trampoline' && arrival === undefined) return { kind: 'bounces', travel: s.travel, bend: s.endBend };
  if (s.landing === undefined) return notComputed({ kind: 'undefined' });
  if (arrival === 'pending') return notComputed({ kind: 'pending' });
  if (arrival !== undefined) return arrivalEnding(arrival, s, surface);
  const asymmetry = unevenIn(s);
  if (asymmetry.length > 0) return notComputed({ kind: 'asymmetric', of: asymmetry });
  const fast = tooFast(s, surface);
  if (fast) return fast;
  const band = bandOf(surface);
  if (!band || !s.touchdownReach) return notComputed({ kind: 'noLanding' });
  return { kind: 'touches', ...placeInBand(s.touchdownReach, band) };
}

/** What a planar landing says nothing of: tilted, turned from facing along or against X, legs apart, moving across. */
function unevenIn({ tilt = 0, facingOff = 0, legsApart, across }: Summary): Asymmetry[] {
  const found = [
    { kind: 'tilt', value: Math.abs(tilt), limit: MISS_WIDTHS.tilt },
    { kind: 'twist', value: Math.abs(facingOff), limit: MISS_WIDTHS.twist },
    { kind: 'sides', value: legsApart, limit: UNEVEN.sides },
    { kind: 'across', value: across, limit: UNEVEN.across },
  ] as const;
  return found.filter(({ value, limit }) => value > limit);
}

/** Undefined where it turns slowly enough to be judged. */
function tooFast({ touchdownReach: at }: Summary, surface?: SurfaceKind, hasImpact = false): Ending | undefined {
  if (!at || Math.abs(at.turning) <= MOST_JUDGED_TURNING) return undefined;
  const band = bandOf(surface);
  const isWithin = band && placeInBand(at, band).place === 'held';
  const turning = Math.abs(at.momentum);
  const limit = (turning * MOST_JUDGED_TURNING) / Math.abs(at.turning);
  return {
    kind: 'notComputed',
    why: { kind: 'fast', turning, limit, ...(isWithin ? { isWithin } : {}), ...(hasImpact ? { hasImpact } : {}) },
  };
}

function arrivalEnding(arrival: ArrivalEnd, { touchdownReach: at }: Summary, surface?: SurfaceKind): Ending {
  if (arrival.kind === 'notOnFeet') return { kind: 'down', part: arrival.part };
  if (arrival.kind === 'asymmetric') return { kind: 'notComputed', why: { kind: 'asymmetric', of: arrival.asymmetry } };
  const { kind: how, direction, t, reasons } = arrival.report.ending;
  const [first] = reasons;
  if (first?.kind === 'turnsFast')
    return { kind: 'notComputed', why: { kind: 'fast', turning: first.turning, limit: first.limit, hasImpact: true } };
  const isFast = at !== undefined && Math.abs(at.turning) > MOST_TURNING;
  return {
    kind: 'landed',
    how,
    ...(direction ? { direction } : {}),
    t,
    ...(isFast ? { isFast } : {}),
    ...(surface === 'trampoline' ? { isOverBed: true } : {}),
  };
}
