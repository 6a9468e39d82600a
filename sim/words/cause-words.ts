/**
 * What was changed in a skill, or is to be, as a coach would tell it to the athlete: "Hold the wrap 0.02 s longer" before it is done, "Held the wrap 0.02 s
 * longer" of what was. Physics words have no place here. Texts in one table, ready for translation.
 */

import { RAD } from '../math/angles.ts';
import type { Leaves } from '../math/closed-shape.ts';
import { own } from '../math/own.ts';
import { sideOf, withoutSide } from '../math/side.ts';
import { spell } from '../math/spell.ts';
import type { LandingFix } from '../search/landing-fix.ts';
import { degreesOf, type NumberWords, upper } from './verdict-words.ts';

/** Words of shapes (`from`, `into`, `shape`) as the list of shapes has them. + is later, longer, more, higher. SI, radians. */
export type Cause =
  /** a move begins later: the shape before it is held longer; `leaves`: that one is opened by it, or one is gone into, or neither */
  | {
      readonly kind: 'move';
      readonly from: string;
      readonly into: string;
      readonly leaves: Leaves;
      readonly by: number;
    }
  /** a shape is left later (+), by a quicker move, or reached later, by a slower one: one end of a move alone */
  | { readonly kind: 'edge'; readonly shape: string; readonly side: 'from' | 'to'; readonly by: number }
  | { readonly kind: 'shapeAngle'; readonly shape: string; readonly angle: string; readonly by: number }
  | { readonly kind: 'airTime'; readonly by: number }
  /** a share; `off`: what is pushed off or let go of, where that is known */
  | { readonly kind: 'rotation'; readonly by: number; readonly off?: string | undefined }
  | SaidCause;

type Measure = 'stature' | 'mass' | 'age' | 'sex';

/** What is said of a change that was made, and never asked for. */
type SaidCause =
  /** the rise of the mass centre, with the same angular momentum or not */
  | { readonly kind: 'height'; readonly by: number; readonly isSameSpin: boolean }
  /** as the feet leave: + higher, back, right, left, forward, right */
  | {
      readonly kind: 'start';
      readonly of: 'place' | 'lean' | 'tilt' | 'turn' | 'along' | 'across';
      readonly by: number;
    }
  /** of the same person one measurement, as it is written now; or somebody else */
  | {
      readonly kind: 'athlete';
      readonly of: 'other' | Measure | 'several';
      readonly is: string;
      /** of several: each as it is written now; none where segments alone were measured otherwise */
      readonly parts?: readonly { readonly of: Measure; readonly is: string }[];
    }
  | { readonly kind: 'gravity'; readonly is: string }
  /** a shape is come to later (+), by a quicker or slower move; or moved whole */
  | { readonly kind: 'reach' | 'moved'; readonly shape: string; readonly by: number }
  | { readonly kind: 'added' | 'removed'; readonly shape: string }
  | { readonly kind: 'replaced'; readonly shape: string; readonly was: string }
  /** hips and knees of a tuck bent further (+) or less */
  | { readonly kind: 'tuck'; readonly by: number }
  /** several angles of one limb, in a shape or at a time */
  | { readonly kind: 'limb'; readonly limb: string; readonly shape?: string; readonly at?: number }
  | { readonly kind: 'keyAngle'; readonly angle: string; readonly at: number; readonly by: number }
  | { readonly kind: 'surface'; readonly by: number }
  | { readonly kind: 'before'; readonly is: 'swing' | 'contact' }
  /** about another axis, the other way, or from nothing */
  | { readonly kind: 'otherRotation' }
  | { readonly kind: 'other' };

/** To be done, done, or what an answer does. */
type Mood = 'cue' | 'said' | 'does';

/** As nouns: "the wrap". */
const NOUNS: Readonly<Record<string, string>> = {
  wrapped: 'the wrap',
  tuck: 'the tuck',
  'open tuck': 'the open tuck',
  pike: 'the pike',
  'dive pike': 'the pike',
  'open pike': 'the open pike',
  straddle: 'the straddle',
  overhead: 'arms overhead',
  'arms out': 'arms out',
  'low wide': 'arms low',
  forward: 'arms forward',
  'right up': '“right arm up, left arm down”',
  'left up': '“left arm up, right arm down”',
  straight: 'arms at the sides',
  entry: 'the entry',
  star: 'the star',
  arch: 'the arch',
  split: 'the split',
  'heels back': 'heels to the seat',
  handstand: 'the handstand line',
};
/** A word of the list of shapes is said as one; a name that somebody gave is quoted. */
const nounOf = (word: string): string =>
  own(NOUNS, word) ?? (/^[a-z ]+$/.test(word) ? `the ${word} shape` : `“${word}”`);
/** "in the wrap"; a noun without an article would run into the sentence: "in “arms out”". */
function inShape(word: string): string {
  const noun = nounOf(word);
  return /^(the |“)/.test(noun) ? `in ${noun}` : `in “${noun}”`;
}

const MOVES = {
  closed: {
    later: {
      cue: (s: string, by: string) => `Hold ${s} ${by} longer`,
      said: (s: string, by: string) => `Held ${s} ${by} longer`,
      does: (s: string, by: string) => `holds ${s} ${by} longer`,
    },
    earlier: {
      cue: (s: string, by: string) => `Open ${s} ${by} earlier`,
      said: (s: string, by: string) => `Opened ${s} ${by} earlier`,
      does: (s: string, by: string) => `opens ${s} ${by} earlier`,
    },
  },
  forClosed: {
    later: {
      cue: (s: string, by: string) => `Go into ${s} ${by} later`,
      said: (s: string, by: string) => `Went into ${s} ${by} later`,
      does: (s: string, by: string) => `goes into ${s} ${by} later`,
    },
    earlier: {
      cue: (s: string, by: string) => `Go into ${s} ${by} earlier`,
      said: (s: string, by: string) => `Went into ${s} ${by} earlier`,
      does: (s: string, by: string) => `goes into ${s} ${by} earlier`,
    },
  },
  open: {
    later: {
      cue: (s: string, by: string) => `Move to ${s} ${by} later`,
      said: (s: string, by: string) => `Moved to ${s} ${by} later`,
      does: (s: string, by: string) => `moves to ${s} ${by} later`,
    },
    earlier: {
      cue: (s: string, by: string) => `Move to ${s} ${by} earlier`,
      said: (s: string, by: string) => `Moved to ${s} ${by} earlier`,
      does: (s: string, by: string) => `moves to ${s} ${by} earlier`,
    },
  },
} as const;

/** The other end of the move keeps its time. */
const EDGES = {
  from: {
    later: {
      cue: (s: string, by: string) => `Reach ${s} ${by} later, by a slower move`,
      said: (s: string, by: string) => `Reached ${s} ${by} later, by a slower move`,
      does: (s: string, by: string) => `reaches ${s} ${by} later, by a slower move`,
    },
    earlier: {
      cue: (s: string, by: string) => `Reach ${s} ${by} earlier, by a quicker move`,
      said: (s: string, by: string) => `Reached ${s} ${by} earlier, by a quicker move`,
      does: (s: string, by: string) => `reaches ${s} ${by} earlier, by a quicker move`,
    },
  },
  to: {
    later: {
      cue: (s: string, by: string) => `Hold ${s} ${by} longer, and leave it by a quicker move`,
      said: (s: string, by: string) => `Held ${s} ${by} longer, and left it by a quicker move`,
      does: (s: string, by: string) => `holds ${s} ${by} longer, and leaves it by a quicker move`,
    },
    earlier: {
      cue: (s: string, by: string) => `Begin to leave ${s} ${by} earlier, by a slower move`,
      said: (s: string, by: string) => `Began to leave ${s} ${by} earlier, by a slower move`,
      does: (s: string, by: string) => `begins to leave ${s} ${by} earlier, by a slower move`,
    },
  },
} as const;

/** By the angle without its side: + and -. */
const ANGLES: Readonly<Record<string, readonly [part: string, more: string, less: string]>> = {
  hipFlexion: ['hips', 'more bent', 'more open'],
  hipAbduction: ['legs', 'further out to the side', 'further in'],
  kneeFlexion: ['knees', 'more bent', 'straighter'],
  shoulderElevation: ['arms', 'higher', 'lower'],
  elbowFlexion: ['elbows', 'more bent', 'straighter'],
};
const ONE_SIDE: Readonly<Record<string, string>> = {
  hips: 'hip',
  legs: 'leg',
  knees: 'knee',
  arms: 'arm',
  elbows: 'elbow',
};

type Numbers = Pick<NumberWords, 'seconds' | 'angle' | 'centimetres' | 'speed'>;

/** One cause of a change, as a clause or a cue. */
export function wordCause(cause: Cause, mood: Mood, n: Numbers): string {
  switch (cause.kind) {
    case 'move': {
      const { from, into, leaves, by } = cause;
      const words = MOVES[leaves][by > 0 ? 'later' : 'earlier'][mood];
      return words(nounOf(leaves === 'closed' ? from : into), n.seconds(Math.abs(by)));
    }
    case 'edge':
      return EDGES[cause.side][cause.by > 0 ? 'later' : 'earlier'][mood](
        nounOf(cause.shape),
        n.seconds(Math.abs(cause.by)),
      );
    case 'shapeAngle':
      return `${wordAngle(cause.angle, cause.by, n)} ${inShape(cause.shape)}`;
    case 'airTime': {
      const { by } = cause;
      const time = n.seconds(Math.abs(by));
      if (mood === 'cue')
        return by > 0 ? `Jump higher: ${time} more in the air` : `Jump lower: ${time} less in the air`;
      return `${time} ${by > 0 ? 'more' : 'less'} in the air`;
    }
    case 'rotation':
      return `${percent(cause.by)} ${cause.by > 0 ? 'more' : 'less'} rotation ${cause.off ? `off ${cause.off}` : 'at take-off'}`;
    default:
      return wordSaid(cause, n);
  }
}

const percent = (share: number): string =>
  Math.abs(share) < 0.005 ? 'Under 1 %' : `${Math.abs(100 * share).toFixed(0)} %`;

/** "Left arm 6 deg higher". */
function wordAngle(angle: string, by: number, n: Numbers): string {
  const side = sideOf(angle);
  const known = own(ANGLES, withoutSide(angle));
  const part = known ? (side ? ONE_SIDE[known[0]] : known[0]) : spell(withoutSide(angle));
  const way = known ? known[by > 0 ? 1 : 2] : by > 0 ? 'more' : 'less';
  const whose = side === 'L' ? `left ${part}` : side === 'R' ? `right ${part}` : part;
  return `${upper(whose)} ${n.angle(Math.abs(by))} ${way}`;
}

const START: Readonly<Record<Extract<SaidCause, { kind: 'start' }>['of'], (by: string, isMore: boolean) => string>> = {
  place: (by, more) => `Leaves ${by} ${more ? 'higher' : 'lower'}`,
  lean: (by, more) => `Leans ${by} further ${more ? 'back' : 'forward'} at take-off`,
  tilt: (by, more) => `Tilts ${by} further to the ${more ? 'right' : 'left'} at take-off`,
  turn: (by, more) => `Turned ${by} further to the ${more ? 'left' : 'right'} at take-off`,
  along: (by, more) => `${by} more speed ${more ? 'forward' : 'backward'}`,
  across: (by, more) => `${by} more speed to the ${more ? 'right' : 'left'}`,
};
const MEASURES: Readonly<Record<Measure, (is: string) => string>> = {
  stature: (is) => `stature ${is}`,
  // mass is said beside it and is no cause: nobody lands by another mass
  mass: () => 'another body',
  age: (is) => (is ? `age ${is}` : 'no age stated'),
  sex: (is) => `proportions: ${is}`,
};

function wordAthlete({ of, is, parts = [] }: Extract<SaidCause, { kind: 'athlete' }>): string {
  if (of === 'other') return `Flown by ${is}`;
  if (of !== 'several') return upper(MEASURES[of](is));
  const said = parts.filter((part) => part.of !== 'mass').map((part) => MEASURES[part.of](part.is));
  return said.length > 0 ? upper(said.join(', ')) : `${is} with other measurements`;
}

/** Undefined of what is no mass. */
export function wordMass(cause: Cause): string | undefined {
  if (cause.kind !== 'athlete') return undefined;
  const mass = cause.of === 'mass' ? cause : cause.parts?.find(({ of }) => of === 'mass');
  return mass && `mass ${mass.is}`;
}

function wordSaid(cause: SaidCause, n: Numbers): string {
  switch (cause.kind) {
    case 'height': {
      const spin = cause.isSameSpin ? ', same spin' : '';
      return `${cause.by > 0 ? 'More' : 'Less'} height${spin}`;
    }
    case 'start': {
      const { of } = cause;
      const by = Math.abs(cause.by);
      const size =
        of === 'place' ? n.centimetres(by) : of === 'along' || of === 'across' ? n.speed(by) : smallAngle(by, n);
      return START[of](size, cause.by > 0);
    }
    case 'athlete':
      return wordAthlete(cause);
    case 'gravity':
      return `Gravity ${cause.is}`;
    case 'reach':
      return `Reached ${nounOf(cause.shape)} ${lateness(cause.by, n)}`;
    case 'moved':
      return `Moved ${nounOf(cause.shape)} ${lateness(cause.by, n)}`;
    case 'added':
      return `Added ${nounOf(cause.shape)}`;
    case 'removed':
      return `Without ${nounOf(cause.shape)}`;
    case 'replaced':
      return `${upper(nounOf(cause.shape))} in place of ${nounOf(cause.was)}`;
    case 'tuck':
      return cause.by > 0 ? 'Tighter tuck' : 'Looser tuck';
    case 'limb': {
      const where = cause.shape === undefined ? `at ${n.seconds(cause.at ?? 0)}` : inShape(cause.shape);
      return `Changed the ${cause.limb} ${where}`;
    }
    case 'keyAngle':
      return `${wordAngle(cause.angle, cause.by, n)} at ${n.seconds(cause.at)}`;
    case 'surface':
      return `Lands ${n.centimetres(Math.abs(cause.by))} ${cause.by > 0 ? 'higher' : 'lower'}`;
    case 'before':
      return cause.is === 'swing' ? 'Another swing' : 'Another push';
    case 'otherRotation':
      return 'Another rotation off the take-off';
    case 'other':
      return 'This change';
  }
}

/** Rounded to none it is still a change. */
const smallAngle = (by: number, n: Numbers): string =>
  Number(degreesOf(by)) === 0 ? `less than ${n.angle(RAD)}` : n.angle(by);
const lateness = (by: number, n: Numbers): string => `${n.seconds(Math.abs(by))} ${by > 0 ? 'later' : 'earlier'}`;

/** Several things at once, as one sentence without its full stop. */
export function joinCauses(words: readonly string[]): string {
  const [first, ...rest] = words;
  return [first, ...rest.map((w) => `${w[0].toLowerCase()}${w.slice(1)}`)].join(' and ');
}

/** Both sides are one: "arms". */
function joinLimbs(limbs: string, more: string): string {
  const all = [...limbs.split(/, | and /), more];
  const isBoth = (limb: string): boolean =>
    all.includes(`${limb}s`) || (all.includes(`left ${limb}`) && all.includes(`right ${limb}`));
  const said = all.map((limb) => {
    const plain = limb.replace(/^(left|right) /, '');
    return plain !== limb && isBoth(plain) ? `${plain}s` : limb;
  });
  return [...new Set(said)].join(', ').replace(/, ([^,]*)$/, ' and $1');
}

/** Limbs that are changed in one place as one cause: "the left arm and right leg in the wrap". */
export function mergeLimbs(causes: readonly Cause[]): readonly Cause[] {
  const merged: Cause[] = [];
  for (const cause of causes) {
    const last = merged.at(-1);
    if (cause.kind === 'limb' && last?.kind === 'limb' && cause.shape === last.shape && cause.at === last.at)
      merged[merged.length - 1] = { ...last, limb: joinLimbs(last.limb, cause.limb) };
    else merged.push(cause);
  }
  return merged;
}

/** The change that fixes a landing as a cause; `wordOf` gives the word of a shape, `left` what the athlete leaves. */
export function causeOfFix(
  { cue, by }: LandingFix['steps'][number],
  [airTime, before]: LandingFix['airTime'],
  wordOf: (shape: string) => string,
  left: string | undefined,
): Cause {
  switch (cue.kind) {
    case 'time':
      return { kind: 'move', from: wordOf(cue.from), into: wordOf(cue.into), leaves: cue.leaves, by };
    case 'edge':
      return { kind: 'edge', shape: wordOf(cue.shape), side: cue.side, by };
    case 'shape':
      return { kind: 'shapeAngle', shape: wordOf(cue.shape), angle: cue.angle, by };
    case 'airTime':
      return { kind: 'airTime', by: airTime - before };
    case 'rotation':
      return { kind: 'rotation', by, off: left };
  }
}
