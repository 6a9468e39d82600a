/** How sensitive a result is, on one line, what decides it first. Texts in one table, ready for translation. */
import { DEG, REV } from '../math/angles.ts';
import type { MoveWord } from '../measure/move-words.ts';
import type { Sensitivity } from '../skill/conditioning.ts';

const CONDITIONING_WORDS = {
  title: 'Sensitive',
  /** what the value is for one of */
  to: {
    takeoffTilt: (value: string, _s: string, _what: string, deg: string) => `${value} for 1${deg} of tilt at take-off`,
    momentum: (value: string) => `${value} for 1 % of angular momentum`,
    letGo: (value: string) => `${value} for 1 ms in letting go`,
    lateHand: (value: string) => `${value} for 0.1 ms of the late hand`,
    move: (value: string, s: string, what: string) => `${value} for 1 ms in the move at ${s} s${what && `, ${what}`}`,
    moves: (value: string) => `${value} for 1 ms in all moves`,
  },
  of: {
    twist: (rev: string) => `${rev} twists`,
    twistAngle: (angle: string) => `${angle} of twist`,
    landing: (angle: string) => `${angle} at the landing`,
  },
  /** not in proportion: steeper or flatter for a small change than for a larger one */
  atFirst: (entry: string) => `at first ${entry}`,
  beyond: (entry: string) => `${entry}, and more beyond`,
  /** in no proportion to small changes */
  atError: (entry: string, change: string) => `${entry}, but ${change} for a usual error`,
  weights: {
    slight: 'usual errors hardly show',
    shows: 'usual errors show',
    decides: 'usual errors decide it',
  },
  with: (entry: string, weight: string) => `${entry} (${weight})`,
};

/** From this share on a result does not go in proportion. */
const BENT = 0.1;
/** One of each, in SI. */
const ONE = { takeoffTilt: 1 / DEG, momentum: 0.01, letGo: 1e-3, lateHand: 1e-4, move: 1e-3, moves: 1e-3 } as const;

const ORDER = ['decides', 'shows', 'slight'] as const;

type MoveWords = Readonly<Record<MoveWord, string>>;

/** Whole turns read best as twists, small ones as degrees. */
function sayValue(to: Sensitivity['to'], of: Sensitivity['of'], value: number, degree: string): string {
  const rad = Math.abs(value) * ONE[to];
  return sayChange(of, rad, degree);
}

function sayChange(of: Sensitivity['of'], rad: number, degree: string): string {
  const w = CONDITIONING_WORDS.of;
  const angle = `${(rad * DEG).toFixed(rad * DEG < 9.95 ? 1 : 0)}${degree}`;
  if (of === 'landing') return w.landing(angle);
  return rad < 0.05 * REV ? w.twistAngle(angle) : w.twist((rad / REV).toFixed(rad < 0.995 * REV ? 2 : 1));
}

function wordOne(
  { to, of, value, bend, atError, outgrows, move, weight }: Sensitivity,
  moves: MoveWords,
  degree: string,
): string {
  const w = CONDITIONING_WORDS;
  const said = sayValue(to, of, value, degree);
  const entry =
    to === 'move' && move
      ? w.to.move(said, move.t.toFixed(2), move.words.length > 0 ? moves[move.words[0]] : '')
      : w.to[to](said, '', '', degree);
  if (outgrows && atError !== undefined && weight !== 'slight')
    return w.with(w.atError(entry, sayChange(of, atError, degree)), w.weights[weight]);
  return w.with(Math.abs(bend) < BENT ? entry : bend < 0 ? w.atFirst(entry) : w.beyond(entry), w.weights[weight]);
}

/** `degree`: how a degree is written, " deg" or "°". */
export const wordConditioning = (list: readonly Sensitivity[], moves: MoveWords, degree = ' deg'): string[] =>
  ORDER.flatMap((weight) => list.filter((one) => one.weight === weight)).map((one) => wordOne(one, moves, degree));

/** For the command line; empty where nothing is known. */
export const formatConditioning = (list: readonly Sensitivity[], moves: MoveWords): string =>
  list.length === 0 ? '' : `${CONDITIONING_WORDS.title}  ${wordConditioning(list, moves).join('; ')}`;
