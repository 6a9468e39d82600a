/** From a code to what a first draft of the skill needs; sim/skill/draft-skill.ts makes it fly. */
import { FieldError } from '../math/field-error.ts';
import type { DraftPlace, DraftSpec } from '../skill/draft-spec.ts';
import {
  type DiveNumber,
  directionOfDive,
  entersHeadFirst,
  formatDiveNumber,
  parseDiveNumber,
  wordDive,
} from './dive-number.ts';
import { wordTrade } from './trade-words.ts';
import {
  type CodeDirection,
  formatTrampolineCode,
  parseTrampolineCode,
  type TrampolineCode,
} from './trampoline-code.ts';

/** A dive number ends in a letter A to D, a trampoline code in o, < or /. */
const DIVE = /[a-d]\s*$/i;

/** Reads either notation, as it is written. A direction where one is given: a trampoline code does not say it. */
export function draftOfCode(text: string, direction?: CodeDirection): DraftSpec {
  if (DIVE.test(text)) return draftOfDive(parseDiveNumber(text));
  if (!/[o</]\s*$/i.test(text))
    throw new FieldError('code', text, 'a trampoline code such as "8 02 /" or a dive number such as "5253B"');
  return draftOfTrampoline(parseTrampolineCode(text), direction);
}

/** An odd number of half twists turns forward and an even one backward, so that the landing can be seen (judgement). */
const usualWay = ({ halfTwists }: TrampolineCode): CodeDirection =>
  halfTwists.reduce((a, b) => a + b, 0) % 2 === 1 ? 'forward' : 'backward';

/** Only a bed takes what does not end on the feet. */
export function draftOfTrampoline(
  code: TrampolineCode,
  direction = usualWay(code),
  place: 'floor' | 'trampoline' = 'trampoline',
): DraftSpec {
  const somersaults = code.quarters / 4;
  const written = formatTrampolineCode(code);
  const isOnFeet = code.quarters % 4 === 0;
  const where = isOnFeet ? place : 'trampoline';
  return {
    code: written,
    title: titleOf(code, direction) ?? `${written} ${direction}`,
    direction,
    somersaults,
    halfTwists: code.halfTwists,
    shape: code.shape,
    takeoff: 'feet',
    landing: isOnFeet ? 'feet' : 'body',
    place: where,
    surface: where,
    travel: direction,
  };
}

const FAMILY = ['', '', '', ' triffis', ' quadriffis'];
const QUARTERS = ['', '1/4', '1/2', '3/4'];

/** "Barani-out triffis, tuck", "1 1/4 front somersaults, tuck" */
function titleOf({ quarters, halfTwists, shape }: TrampolineCode, direction: CodeDirection): string | undefined {
  const isTwisting = halfTwists.some((n) => n > 0);
  const [word] = wordTrade({ direction, somersaults: quarters / 4, halfTwists });
  if (word) return `${word[0].toUpperCase()}${word.slice(1)}${isTwisting ? FAMILY[halfTwists.length] : ''}, ${shape}`;
  if (quarters === 0 || isTwisting) return undefined;
  const count = [Math.floor(quarters / 4) || '', QUARTERS[quarters % 4]].filter(Boolean).join(' ');
  return `${count} ${direction === 'forward' ? 'front' : 'back'} somersault${quarters > 4 ? 's' : ''}, ${shape}`;
}

/** Three and a half somersaults and more, and armstands, are a platform's (common practice, no source). */
const PLATFORM_HALVES = 7;
const usualHeight = ({ group, halfSomersaults }: DiveNumber): 'board' | 'platform' =>
  group === 6 || halfSomersaults >= PLATFORM_HALVES ? 'platform' : 'board';

/** The twists of a dive go into its first somersault (judgement; the number does not say where). */
export function draftOfDive(dive: DiveNumber, place: DraftPlace = usualHeight(dive)): DraftSpec {
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
    place: place === 'board' && dive.group !== 6 ? 'board' : 'platform',
    surface: 'water',
    travel: dive.takeoffGroup === 1 || dive.takeoffGroup === 3 ? 'forward' : 'backward',
  };
}
