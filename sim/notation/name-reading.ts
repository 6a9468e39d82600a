/**
 * What the words of a name say together: "double back straight, full-out" is two somersaults, backward, straight, two half twists in the last.
 * "Double full out" is a double with a full out or a double full out, "front 1 1/2" counts twists or somersaults: both are given.
 */
import { FieldError } from '../math/field-error.ts';
import type { SkillPlace } from '../skill/skill-place.ts';
import type { DiveWord, FamilyName, NameWord } from './name-words.ts';
import type { CodeDirection, CodeShape } from './trampoline-code.ts';

type Placing = 'in' | 'middle' | 'out';

/** What was said, and nothing that was not. */
export interface NameReading {
  readonly somersaults?: number;
  /** half twists of a somersault that was named */
  readonly placed: Readonly<Partial<Record<Placing, number>>>;
  /** half twists that no somersault was named for */
  readonly halves?: number;
  /** barani, rudi, randi, adolph: the name, and the somersault that it was said of */
  readonly own?: { readonly name: string; readonly placing?: Placing };
  readonly shape?: CodeShape;
  readonly way?: CodeDirection;
  readonly place?: SkillPlace;
  readonly dive?: DiveWord;
  readonly family?: FamilyName;
}

type Writable = { -readonly [K in keyof NameReading]: NameReading[K] };

const twice = (text: string, what: string): FieldError => new FieldError('name', text, `${what} once`);

/** At least one; all of them agree with the words. */
export function readTogether(words: readonly NameWord[], text: string): NameReading[] {
  const open = words.find((_, i) => isOpenCount(words, i));
  const orders = open?.kind === 'count' && open.n % 1 !== 0 ? [true, false] : [false, true];
  const readings: NameReading[] = [];
  let fault: unknown;
  for (const isOfTwists of open ? orders : [false])
    try {
      readings.push(readOnce(words, text, isOfTwists));
    } catch (error) {
      fault = error;
    }
  if (readings.length === 0) throw fault;
  return readings;
}

const kindAt = (words: readonly NameWord[], i: number): NameWord['kind'] | undefined => words[i]?.kind;
const isPlacing = (kind: NameWord['kind'] | undefined): kind is Placing =>
  kind === 'in' || kind === 'out' || kind === 'middle';

/** A count that is of twists or of somersaults: before "full out", and "one and a half" alone. */
function isOpenCount(words: readonly NameWord[], i: number): boolean {
  const [one, next] = [words[i], words[i + 1]];
  if (one.kind !== 'count') return false;
  if (one.n % 1 !== 0)
    return (
      next?.kind !== 'somersault' && next?.kind !== 'twistNoun' && !isPlacing(next?.kind) && !words.some(isOfDives)
    );
  return isFull(next) && isPlacing(kindAt(words, i + 2));
}

const isFull = (one: NameWord | undefined): boolean =>
  one?.kind === 'twist' && one.own === undefined && one.halves === 2 && !one.isBound;

function readOnce(words: readonly NameWord[], text: string, isOfTwists: boolean): NameReading {
  const said: Writable & { placed: Partial<Record<Placing, number>> } = { placed: {} };
  const put = <K extends 'somersaults' | 'halves' | 'shape' | 'way' | 'place' | 'dive' | 'family'>(
    key: K,
    value: NonNullable<NameReading[K]>,
  ): void => {
    const isCount = key === 'somersaults' || key === 'halves';
    if (said[key] !== undefined && (isCount || said[key] !== value)) throw twice(text, SAID[key]);
    (said as Record<string, unknown>)[key] = value;
  };
  const putTwist = (halves: number, i: number, own?: string): number => {
    const placing = kindAt(words, i);
    if (isPlacing(placing)) {
      if (said.placed[placing] !== undefined) throw twice(text, `the twist ${placing}`);
      said.placed[placing] = halves;
    } else put('halves', halves);
    if (own) {
      if (said.own) throw twice(text, 'one name of a twist');
      said.own = { name: own, ...(isPlacing(placing) ? { placing } : {}) };
    }
    return isPlacing(placing) ? i + 1 : i;
  };
  let isSomersault = false;
  for (let i = 0; i < words.length; ) {
    const one = words[i];
    const next = words[i + 1];
    if (one.kind === 'count') {
      const isTwist =
        next?.kind === 'twistNoun' ||
        (isPlacing(next?.kind) && one.n % 1 !== 0) ||
        (isOpenCount(words, i) ? isOfTwists : isFull(next) && one.n % 1 === 0);
      if (isTwist) {
        const isOfFulls = one.n % 1 === 0 && isFull(next);
        i += isOfFulls || next?.kind === 'twistNoun' ? 2 : 1;
        if (isOfFulls && kindAt(words, i) === 'twistNoun') i++;
        i = putTwist(2 * one.n, i);
      } else {
        put('somersaults', one.n);
        i++;
      }
    } else if (one.kind === 'twist') {
      i++;
      if (kindAt(words, i) === 'twistNoun') i++;
      i = putTwist(one.halves, i, one.own);
    } else if (one.kind === 'twistNoun') {
      i = putTwist(2, i + 1);
    } else if (one.kind === 'way' && isPlacing(next?.kind)) {
      // "back-in full-out": a somersault without twist
      if (next.kind === 'in') put('way', one.way);
      i = putTwist(0, i + 1);
    } else {
      if (isPlacing(one.kind))
        throw new FieldError('name', one.kind, `a twist before "${one.kind}", as in "full-${one.kind}"`);
      if (one.kind === 'shape') put('shape', one.shape);
      else if (one.kind === 'way') put('way', one.way);
      else if (one.kind === 'place') put('place', one.place);
      else if (one.kind === 'dive') {
        if (one.word !== 'dive' || said.dive === undefined) put('dive', one.word);
      } else if (one.kind === 'somersault') isSomersault = true;
      else if (one.kind === 'family') put('family', one.family);
      i++;
    }
  }
  if (isSomersault) said.somersaults ??= 1;
  return said;
}

const isOfDives = (one: NameWord): boolean =>
  one.kind === 'dive' || (one.kind === 'place' && (one.place === 'board' || one.place === 'platform'));

const SAID = {
  somersaults: 'the number of somersaults',
  halves: 'the twist',
  shape: 'the shape',
  way: 'forward or backward',
  place: 'the place',
  dive: 'the kind of dive',
  family: 'a name',
} as const;
