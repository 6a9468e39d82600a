/**
 * A result in words: one sentence as clauses, each with its weight and the place it speaks of, for headline, shell, print and speech alike.
 * Order: what was missed, what was flown, time in the air, how it ends. Texts in one place, ready for translation.
 */

import type { EndingKind } from '../contact/ending.ts';
import { RAD, REV } from '../math/angles.ts';
import { own } from '../math/own.ts';
import type { Clearance } from '../measure/clearance.ts';
import type { Ending, Miss, RailEnding, SkillVerdict } from '../skill/skill-verdict.ts';
import { HANDS_WORDS, WAY_WORDS, wordRail } from './rail-words.ts';

/** How numbers are written: a shell writes "43 deg", a page "43°" in its units. */
export interface NumberWords {
  /** revolutions: "1.00", or an angle with its sign; coarse: "1.0", or to ten degrees */
  turns(revolutions: number, isCoarse?: boolean): string;
  /** turns are written as angles */
  readonly inDegrees: boolean;
  /** rad, to the degree, unsigned */
  angle(rad: number): string;
  seconds(s: number): string;
  /** m, to the decimetre, unsigned */
  metres(m: number): string;
  /** m, to the centimetre */
  centimetres(m: number): string;
  /** m/s, to the decimetre a second */
  speed(metresPerSecond: number): string;
  /** kg·m²/s, to the whole number, with its unit */
  momentum(kgM2PerS: number): string;
}

export const PLAIN_NUMBERS: NumberWords = {
  turns: (n, isCoarse) => n.toFixed(isCoarse ? 1 : 2),
  inDegrees: false,
  angle: (rad) => `${degreesOf(rad)} deg`,
  seconds: (s) => `${s.toFixed(2)} s`,
  metres: (m) => `${Math.abs(m).toFixed(1)} m`,
  centimetres: (m) => `${(100 * m).toFixed(0)} cm`,
  speed: (v) => `${v.toFixed(1)} m/s`,
  momentum: (h) => `${h.toFixed(0)} kg·m²/s`,
};

/** Under this many revolutions there is no turn to speak of, and under this lean, rad, no lean. */
export const LEAST_TURN = 0.05;
const LEAST_LEAN = 0.5 * RAD;

export const degreesOf = (rad: number): string => Math.abs((rad * 360) / REV).toFixed(0);

/** What a press on a clause shows. */
export type ClausePlace = 'takeoff' | 'fastestTwist' | 'apex' | 'nearest' | 'touchdown';

/** A piece of a clause: strong carries the result, plain joins, quiet can be overlooked. */
interface Run {
  readonly text: string;
  readonly weight: 'strong' | 'plain' | 'quiet';
  readonly hue?: 'somersault' | 'twist' | 'stop';
  /** not computed or not defined: underlined */
  readonly isOpen?: true;
}

export interface Clause {
  /** what parts it from the clause before it */
  readonly join: '' | ', ' | ', then ' | '; ' | ': ' | '. ';
  readonly place: ClausePlace;
  readonly runs: readonly Run[];
}

const strong = (text: string, hue?: Run['hue']): Run => ({ text, weight: 'strong', ...(hue ? { hue } : {}) });
const plain = (text: string, hue?: Run['hue']): Run => ({ text, weight: 'plain', ...(hue ? { hue } : {}) });
const quiet = (text: string): Run => ({ text, weight: 'quiet' });
const open = (text: string): Run => ({ text, weight: 'strong', isOpen: true });

const way = (direction?: 'forward' | 'back'): string => (direction ? ` ${direction}` : '');

/** Every ending of a landing that was run; the direction as the athlete faces. */
export const ENDING_WORDS: Readonly<
  Record<EndingKind, (direction?: 'forward' | 'back') => readonly [string, string?]>
> = {
  stands: () => ['stands'],
  hop: (d) => [`a hop${way(d)}`],
  smallStep: (d) => [`a small step${way(d)}`],
  steps: (d) => [`steps${way(d)}`],
  deepSquat: () => ['deep squat', ', hips below the knees'],
  hands: (d) => [d === 'back' ? 'hands down behind' : 'hands down in front'],
  knees: () => ['down on the knees'],
  seat: () => ['sits down'],
  back: () => ['falls on the back'],
  head: () => ['falls, head to the mat'],
  unsettled: () => ['neither stands nor is down', ' when the run ends'],
  tooFast: () => ['how it ends is not computed'],
};
/** These follow the skill after a comma, the others after a colon. */
const FOLLOWS: ReadonlySet<EndingKind> = new Set(['hop', 'smallStep', 'steps', 'deepSquat']);

const PART_WORDS: Readonly<Record<string, string>> = {
  hands: 'on the hands',
  knees: 'on the knees',
  seat: 'on the seat',
  back: 'on the back',
  head: 'on the head',
};

/** On the feet where no run of the landing says more: by what a body could hold. */
export const wordTouches = ({ place, direction, isFast }: Extract<Ending, { kind: 'touches' }>): string =>
  ({
    held: isFast ? 'may take a step' : 'could be held',
    steps: `would step ${direction}`,
    falls: `would fall ${direction}`,
  })[place];

/** What a run says that the model seldom holds and gymnasts do is said to be of the model. */
const NOT_HELD: ReadonlySet<EndingKind> = new Set(['steps', 'hands', 'knees', 'seat', 'back', 'head', 'unsettled']);
const IN_MODEL = ' in the model';
const BED_STILL = ', as if the bed did not give';
type Landed = Extract<Ending, { kind: 'landed' }>;
function landedWords({ how, direction, isFast, isOverBed }: Landed): readonly [string, string] {
  const [word, more = ''] = ENDING_WORDS[how](direction);
  return [word, `${more}${isFast && NOT_HELD.has(how) ? IN_MODEL : ''}${isOverBed ? BED_STILL : ''}`];
}
/** How a landing that was run ends. */
export const wordLanded = (ending: Landed): string => landedWords(ending).join('');

/** Another part than the feet touches first. */
export const wordDown = (part: string): string => `lands ${own(PART_WORDS, part) ?? `on the ${part}`}`;

const NOT_COMPUTED = 'landing not computed';
const IMPACT_ONLY = 'of the landing only the first impact is computed';
export const PENDING = 'landing being computed';
const UPRIGHT = 'upright';

/** Bent by more than this in hips or knees, the body is not straight any more (our judgement), rad. */
const BENT = 0.35;

export function verdictClauses(r: SkillVerdict, n: NumberWords = PLAIN_NUMBERS): Clause[] {
  const clauses: Clause[] = [];
  const add = (join: Clause['join'], place: ClausePlace, ...runs: Run[]): void => {
    clauses.push({ join: clauses.length === 0 ? '' : join, place, runs });
  };
  const missedTwists = r.missed.some((m) => m.kind === 'twists' || (m.kind === 'wrongWay' && m.of === 'twist'));
  const missedTurns = r.missed.some(
    (m) => m.kind === 'somersaults' || (m.kind === 'wrongWay' && m.of === 'somersault'),
  );
  let join: Clause['join'] = ', ';
  for (const miss of r.missed) {
    add(
      join,
      miss.kind === 'twists' ? 'fastestTwist' : miss.kind === 'near' ? 'nearest' : 'touchdown',
      ...missRuns(miss, n, r.flown.isTwistCoarse),
    );
    join = miss.kind === 'near' ? '. ' : ', ';
  }
  if (join === ', ' && clauses.length > 0) join = '; ';
  const go = (place: ClausePlace, ...runs: Run[]): void => {
    add(join, place, ...runs);
    join = ', ';
  };
  const { flown, ending } = r;
  if (ending.kind === 'atRail') {
    if (join === ', ' && clauses.length > 0) join = '; ';
    add(clauses.length === 0 ? '' : join, 'touchdown', ...railRuns(ending, flown.duration, n));
    join = ', ';
  }
  if (flown.trade && !missedTurns) {
    add(clauses.length === 0 ? '' : join, 'takeoff', strong(upper(flown.trade)));
    join = ', ';
  }
  if (flown.somersaults === undefined)
    go(
      'touchdown',
      open('somersault and twist not defined'),
      plain(` after ${n.seconds(flown.undefinedFrom ?? 0)}: lies along the somersault axis`),
    );
  else {
    if (!missedTurns) {
      const runs = somersaultRuns(flown.somersaults, flown.somersaultWord, n);
      go('takeoff', ...runs, ...(flown.trade ? [plain(' flown', 'somersault')] : []));
    }
    if (!missedTwists) go('fastestTwist', ...twistRuns(flown, n));
  }
  if (ending.kind !== 'atRail') go('apex', strong(n.seconds(flown.duration)), quiet(' in the air'));
  else if (ending.outcome === 'missed') return clauses;
  const off = offWords(r, n);
  const [parted, ...runs] = endingRuns(r.ending, r, n, off);
  add(parted, 'touchdown', ...runs);
  return clauses;
}

function missRuns(miss: Miss, n: NumberWords, isCoarse = false): Run[] {
  switch (miss.kind) {
    case 'near':
      return [strong(nearWords(miss, n), 'stop')];
    case 'wrongWay': {
      const rough = isCoarse && miss.of === 'twist';
      const count = `${countOf(miss.of, miss.done, n, rough)} ${miss.word}`;
      return [strong('wrong way'), plain(': '), strong(count, miss.of), plain(`, ${miss.wanted} was wanted`)];
    }
    case 'somersaults':
      return [
        strong(n.turns(miss.done), 'somersault'),
        plain(`${nounOf('somersault', 2, n)} of ${plainCount(miss.wanted, n)}`, 'somersault'),
      ];
    case 'twists':
      return [
        strong(about(n.turns(miss.done, isCoarse), isCoarse), 'twist'),
        plain(`${nounOf('twist', 2, n)} of ${plainCount(miss.wanted, n)}`, 'twist'),
        plain(': '),
        strong(
          `${about(n.angle(isCoarse ? toTen(miss.past) : miss.past), isCoarse)} ${miss.past > 0 ? 'past' : 'short'}`,
        ),
      ];
    case 'tilt':
      return [plain('tilted '), strong(n.angle(miss.tilt)), plain(miss.headTo ? `, head to the ${miss.headTo}` : '')];
  }
}

/** "catches the high rail with both hands after 0.59 s", "misses the high bar by 37 cm: short of it". */
function railRuns(
  { rail, hands, outcome, gap, ways, only, most, isAway }: RailEnding,
  t: number,
  n: NumberWords,
): Run[] {
  const name = wordRail(rail);
  const after: Run[] = [plain(` with ${HANDS_WORDS[hands]} after `), strong(n.seconds(t))];
  if (outcome === 'caught' && isAway) return [strong(`hands meet ${name}`), plain(' after '), strong(n.seconds(t))];
  if (outcome === 'caught') return [strong(`catches ${name}`), ...after];
  if (outcome === 'tooFast')
    return [strong(`too fast to catch ${name}`, 'stop'), ...after, plain(`, asked ${n.speed(most)} at most`)];
  const one = only ? [plain(`, the ${only} hand is there`)] : [];
  return [
    strong(`misses ${name} by ${n.centimetres(gap)}`, 'stop'),
    ...(ways.length > 0 ? [plain(`: ${ways.map((way) => WAY_WORDS[way]).join(', ')}`)] : []),
    ...one,
  ];
}

/** "closing at 0.8 m/s, 4.3 m/s across the arms"; and what is known of missed catches. */
function passRuns({ closing, across, isAway }: RailEnding, n: NumberWords): Run[] {
  return [
    plain(closing < 0 ? 'drawing away at ' : 'closing at '),
    strong(n.speed(Math.abs(closing))),
    plain(`, ${n.speed(across)} across the arms`),
    ...(isAway ? [plain(', '), strong('the body going away from it')] : []),
  ];
}

/** "Toes pass 2 cm from the rail": no finer than a centimetre. */
export function nearWords(
  { part, solid, distance }: Pick<Clearance, 'part' | 'solid' | 'distance'>,
  n = PLAIN_NUMBERS,
): string {
  const many = /s$|feet$/.test(part);
  if (distance <= 0) return `${part} touch${many ? '' : 'es'} the ${solid}`;
  return `${part} pass${many ? '' : 'es'} ${n.centimetres(Math.max(0.01, distance))} from the ${solid}`;
}

const plainCount = (turns: number, n: NumberWords): string =>
  n.inDegrees ? n.turns(turns) : String(Number(turns.toFixed(2)));

/** One is only what prints as one. */
const isPlural = (turns: number, decimals = 2): boolean => Number(turns.toFixed(decimals)) !== 1;
const nounOf = (of: 'somersault' | 'twist', turns: number, n: NumberWords, isCoarse = false): string =>
  n.inDegrees ? ` of ${of}` : ` ${of}${isPlural(turns, isCoarse ? 1 : 2) ? 's' : ''}`;
const countOf = (of: 'somersault' | 'twist', turns: number, n: NumberWords, isCoarse: boolean): string =>
  about(n.turns(turns, isCoarse), isCoarse) + nounOf(of, turns, n, isCoarse);
/** What is not known to its last digit. */
const about = (text: string, isCoarse: boolean): string => (isCoarse ? `about ${text}` : text);
const toTen = (rad: number): number => 10 * RAD * Math.round(rad / (10 * RAD));

function somersaultRuns(turns: number, word: string, n: NumberWords): Run[] {
  if (turns < LEAST_TURN) return [plain('no somersault')];
  return [
    strong(n.turns(turns), 'somersault'),
    plain(`${nounOf('somersault', turns, n)}${word ? ` ${word}` : ''}`, 'somersault'),
  ];
}

function twistRuns({ twists = 0, twistWord, isTwistCoarse = false }: SkillVerdict['flown'], n: NumberWords): Run[] {
  if (twists < LEAST_TURN) return [plain('no twist')];
  const shown = about(n.turns(twists, isTwistCoarse), isTwistCoarse);
  const noun = nounOf('twist', twists, n, isTwistCoarse);
  return [strong(shown, 'twist'), plain(`${noun}${twistWord ? ` ${twistWord}` : ''}`, 'twist')];
}

/** "8° short", "43° past"; where nothing turns the lean; '' where it prints as nothing, or where the count of somersaults is missed. */
function offWords(r: SkillVerdict, n: NumberWords): string {
  if (r.missed.some((m) => m.kind === 'somersaults' || (m.kind === 'wrongWay' && m.of === 'somersault'))) return '';
  return r.short === undefined || Number(degreesOf(r.short)) === 0 ? '' : wordOverRotated(r.short, r.isLeanWanted, n);
}

/** Past a lean that is wanted the body may still be short of upright: which way it is off is said first. */
const wordOverRotated = (short: number, isLeanWanted: true | undefined, n: NumberWords): string =>
  isLeanWanted && short < 0 ? `${n.angle(short)} over-rotated, past the lean wanted` : wordOff(short, isLeanWanted, n);

/** "8° short", of upright; where a lean is wanted, of that: "3° short of the lean wanted". */
export const wordOff = (short: number, isLeanWanted: true | undefined, n: NumberWords = PLAIN_NUMBERS): string =>
  `${n.angle(short)} ${short > 0 ? 'short' : 'past'}${isLeanWanted ? (short > 0 ? ' of the lean wanted' : ' the lean wanted') : ''}`;

/** Off a whole half twist by more than a twist is called missed by: who faces aside is not called upright. */
const ASIDE = 30 * RAD;

/** rad; 0 within ASIDE, and where the twist is not defined */
export function asideOf(twists: number | undefined): number {
  if (twists === undefined) return 0;
  const off = (Math.abs(2 * twists - Math.round(2 * twists)) * REV) / 2;
  return off > ASIDE ? off : 0;
}

const uprightWords = ({ flown }: Pick<SkillVerdict, 'flown'>, n: NumberWords): string => {
  const aside = asideOf(flown.twists);
  return aside > 0 ? `facing ${n.angle(aside)} aside` : UPRIGHT;
};

function leanWords(lean: number, r: SkillVerdict, n: NumberWords): string {
  const deg = Number(degreesOf(lean));
  if (deg === 0) return uprightWords(r, n);
  if (deg === 180) return 'head down';
  const isOn = r.short !== undefined && Number(degreesOf(r.short)) === 0;
  const asWanted = r.isLeanWanted && isOn ? ', as wanted' : '';
  return `leaning ${n.angle(lean)} ${lean > 0 ? 'back' : 'forward'}${asWanted}`;
}

const bentRuns = (bend: number, n: NumberWords): Run[] =>
  bend > BENT ? [plain(`, body bent by ${n.angle(bend)}`)] : [];

function endingRuns(ending: Ending, r: SkillVerdict, n: NumberWords, off: string): [Clause['join'], ...Run[]] {
  const before: Run[] = off ? [strong(off), plain(', ')] : [];
  const beforeColon: Run[] = off ? [strong(off), plain(': ')] : [];
  switch (ending.kind) {
    case 'landed': {
      const [word, more] = landedWords(ending);
      const follows = FOLLOWS.has(ending.how);
      const runs = [...(follows ? before : beforeColon), strong(word), ...(more ? [quiet(more)] : [])];
      return [off || follows ? ', ' : ': ', ...runs];
    }
    case 'down':
      return [off ? ', ' : ': ', ...beforeColon, strong(wordDown(ending.part))];
    case 'enters': {
      const how = ending.first === 'flat' ? 'enters flat' : `enters ${ending.first} first`;
      const at = off
        ? `, ${off}`
        : r.short === undefined && r.lean !== undefined && ending.first === 'feet'
          ? `, ${leanWords(r.lean, r, n)}`
          : '';
      return [': ', strong(how), strong(at), ...bentRuns(ending.bend, n)];
    }
    case 'bounces': {
      const lean =
        r.short === undefined && r.lean !== undefined && Math.abs(r.lean) > LEAST_LEAN
          ? `, ${leanWords(r.lean, r, n)}`
          : '';
      const travel =
        Math.abs(ending.travel) < 0.05 ? '' : `, ${n.metres(ending.travel)} ${ending.travel > 0 ? 'forward' : 'back'}`;
      return [
        ', ',
        ...before,
        strong('bounces'),
        ...(lean ? [strong(lean)] : []),
        ...(travel ? [quiet(travel)] : []),
        ...bentRuns(ending.bend, n),
      ];
    }
    case 'touches': {
      return [', ', quiet('on the feet, '), ...before, strong(wordTouches(ending))];
    }
    case 'meets':
      return [', then ', strong(`${ending.limb} down`)];
    case 'atRail':
      return ['; ', ...passRuns(ending, n)];
    case 'inAir': {
      const how = off || (r.lean === undefined ? '' : leanWords(r.lean, r, n));
      return [', ', quiet('ends '), strong(how || uprightWords(r, n))];
    }
    case 'notComputed': {
      const lean = off || (r.lean === undefined ? uprightWords(r, n) : leanWords(r.lean, r, n));
      if (ending.why.kind === 'undefined') return ['; ', open(NOT_COMPUTED)];
      if (ending.why.kind === 'pending') return [', ', strong(`on the feet, ${lean}`), plain('; '), quiet(PENDING)];
      const words = ending.why.kind === 'fast' && ending.why.hasImpact ? IMPACT_ONLY : NOT_COMPUTED;
      return [', ', quiet('on the feet, '), strong(lean), plain('; '), open(words)];
    }
  }
}

export const startsSentence = (join: Clause['join']): boolean => join === '' || join === '. ';
export const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const sentence = (text: string): string => `${upper(text)}.`;

/** The sentence as text. */
export function wordVerdict(r: SkillVerdict, n: NumberWords = PLAIN_NUMBERS): string {
  return verdictClauses(r, n)
    .map(({ join, runs }) => {
      const text = runs.map((run) => run.text).join('');
      return join + (startsSentence(join) ? upper(text) : text);
    })
    .join('');
}
