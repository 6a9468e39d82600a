/** From a code to what a first draft of the skill needs; sim/skill/draft-skill.ts makes it fly. */
import { FieldError } from '../math/field-error.ts';
import type { DraftSpec } from '../skill/draft-spec.ts';
import { directionOfDive, entersHeadFirst, formatDiveNumber, parseDiveNumber, wordDive } from './dive-number.ts';
import { wordTrade } from './trade-words.ts';
import { type CodeDirection, formatTrampolineCode, parseTrampolineCode } from './trampoline-code.ts';

/** A dive number ends in a letter A to D, a trampoline code in o, < or /. */
const DIVE = /[a-d]\s*$/i;

/**
 * Reads either notation. The direction is not in a trampoline code: where it is not given, an odd number of half twists
 * turns forward and an even one backward, so that the landing can be seen (judgement).
 */
export function draftOfCode(text: string, direction?: CodeDirection): DraftSpec {
  if (DIVE.test(text)) return draftOfDive(text);
  if (!/[o</]\s*$/i.test(text))
    throw new FieldError('code', text, 'a trampoline code such as "8 02 /" or a dive number such as "5253B"');
  const code = parseTrampolineCode(text);
  const total = code.halfTwists.reduce((a, b) => a + b, 0);
  const way = direction ?? (total % 2 === 1 ? 'forward' : 'backward');
  const somersaults = code.quarters / 4;
  const [word] = wordTrade({ direction: way, somersaults, halfTwists: code.halfTwists });
  const written = formatTrampolineCode(code);
  return {
    code: written,
    title: word ? `${word[0].toUpperCase()}${word.slice(1)}, ${code.shape}` : `${written} ${way}`,
    direction: way,
    somersaults,
    halfTwists: code.halfTwists,
    shape: code.shape,
    takeoff: 'feet',
    landing: code.quarters % 4 === 0 ? 'feet' : 'body',
    surface: 'trampoline',
    travel: way,
  };
}

/** The twists of a dive go into its first somersault (judgement; the number does not say where). */
function draftOfDive(text: string): DraftSpec {
  const dive = parseDiveNumber(text);
  const somersaults = dive.halfSomersaults / 2;
  const digits = Math.max(1, Math.floor(somersaults));
  return {
    code: formatDiveNumber(dive),
    title: `${formatDiveNumber(dive)}, ${wordDive(dive)}`,
    direction: directionOfDive(dive),
    somersaults,
    halfTwists: Array.from({ length: digits }, (_, i) => (i === 0 ? dive.halfTwists : 0)),
    // free: straight while it twists, piked after
    shape:
      dive.letter === 'C' ? 'tuck' : dive.letter === 'B' || (dive.letter === 'D' && digits > 1) ? 'pike' : 'straight',
    takeoff: dive.group === 6 ? 'hands' : 'feet',
    landing: entersHeadFirst(dive) ? 'headFirst' : 'feet',
    surface: 'water',
    travel: dive.takeoffGroup === 1 || dive.takeoffGroup === 3 ? 'forward' : 'backward',
  };
}
