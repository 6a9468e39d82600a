/**
 * What people of the trade call a skill: barani, rudi, full-in, half-in half-out. Common practice, no source; gyms differ,
 * and where two names are in use both are given, the usual one first.
 */
import type { CodeDirection } from './trampoline-code.ts';

interface TradeResult {
  readonly direction: CodeDirection | '';
  /** somersaults done, in revolutions; words are for whole ones */
  readonly somersaults: number;
  /** half twists in each complete somersault; one entry where there is no complete one */
  readonly halfTwists: readonly number[];
  /** half twists done at the first quarter somersault, where known: tells an arabian */
  readonly earlyHalfTwists?: number;
}

const MULTIPLE = ['', '', 'double', 'triple', 'quadruple'];
/** By half twists. */
const TWIST_WORDS = ['', 'half', 'full', '1 1/2', 'double full', '2 1/2', 'triple full', '3 1/2', 'quadruple full'];
/** Of a forward somersault, by half twists: odd ones come to face the bed again and have names of their own. */
const FRONT_WORDS: Readonly<Record<number, string>> = { 1: 'barani', 3: 'rudi', 5: 'randi', 7: 'adolph' };

/** The words for a result, the usual first; empty where the trade has none. */
export function wordTrade(result: TradeResult): string[] {
  const whole = Math.floor(result.somersaults + 1 / 8);
  // one and a half is no single
  if (result.somersaults - whole > 1 / 8) return [];
  if (whole < 1 || whole > 4 || result.direction === '' || result.halfTwists.length !== whole) return [];
  const forward = result.direction === 'forward';
  const words = whole === 1 ? wordSingle(result.halfTwists[0], forward) : wordMultiple(result.halfTwists, forward);
  // a back take-off, half a twist at once, then as a forward one
  const arabian = !forward && result.earlyHalfTwists === 1 && result.halfTwists.every((t, i) => t === (i ? 0 : 1));
  return arabian ? [whole === 1 ? 'arabian' : `${MULTIPLE[whole]} arabian`, ...words] : words;
}

function wordSingle(twists: number, forward: boolean): string[] {
  const way = forward ? 'front' : 'back';
  if (twists === 0) return [`${way} somersault`];
  const own = forward ? FRONT_WORDS[twists] : undefined;
  const plain = TWIST_WORDS[twists] ? [`${way} ${TWIST_WORDS[twists]}`] : [];
  return own ? [own, ...plain] : plain;
}

/** In: in the first somersault; out: in the last; the middle of a triple is named so. */
function wordMultiple(twists: readonly number[], forward: boolean): string[] {
  const last = twists.length - 1;
  const way = `${MULTIPLE[twists.length]} ${forward ? 'front' : 'back'}`;
  if (twists.every((t) => t === 0)) return [way];
  if (twists.some((t) => t > 0 && !TWIST_WORDS[t])) return [];
  let turned = 0;
  const words = twists.flatMap((t, i) => {
    // after an odd number of half twists the athlete turns the other way
    const frontNow = forward !== (turned % 2 === 1);
    turned += t;
    if (t === 0) return [];
    const own = i === last && frontNow ? FRONT_WORDS[t] : undefined;
    const place = i === 0 ? 'in' : i === last ? 'out' : 'middle';
    // "half-out" is what half-in half-out is called; alone in the last, a barani says it
    const name = own && !(t === 1 && turned > t) ? own : TWIST_WORDS[t].replace(/ /g, '-');
    return [`${name}-${place}`];
  });
  return [words.join(' ')];
}
