/**
 * A skill as people ask for it: a code or a dive number, strict or loose, or a name in any order and case. What can mean several skills offers them;
 * what no draft can be says why and offers the nearest.
 */
import { FieldError } from '../math/field-error.ts';
import type { DraftSpec } from '../skill/draft-spec.ts';
import type { SkillPlace } from '../skill/skill-place.ts';
import { diveOfName } from './dive-of-name.ts';
import { draftOfDive, draftOfTrampoline } from './draft-of-code.ts';
import { placeTwists, readLooseCode, readLooseDive } from './loose-code.ts';
import { FAMILIES } from './name-families.ts';
import { type NameReading, readTogether } from './name-reading.ts';
import { readNameWords } from './name-words.ts';
import { type CodeDirection, type CodeShape, parseTrampolineCode, type TrampolineCode } from './trampoline-code.ts';

interface SkillOffer {
  /** the code on bed and water, elsewhere the name */
  readonly text: string;
  readonly title: string;
  readonly spec: DraftSpec;
}
export type AskedSkill =
  | { readonly kind: 'one'; readonly spec: DraftSpec }
  /** `reason`: none of them is what was asked, and why */
  | { readonly kind: 'offers'; readonly offers: readonly SkillOffer[]; readonly reason?: string };

type GroundPlace = 'floor' | 'trampoline';

/** `place`: where it is asked for. A code is of the bed, a dive number of the water; what ends lying and a place in the text itself decide first. */
export function readAsked(text: string, place?: SkillPlace): AskedSkill {
  if (text.trim() === '') throw new FieldError('name', undefined, 'a code, a dive number or a name');
  const codes = readLooseCode(text);
  if (codes) return answer(codes.map((code) => draftOfTrampoline(code)));
  const dives = readLooseDive(text);
  if (dives) return answer(dives.map((dive) => draftOfDive(dive, isWater(place) ? place : undefined)));
  // a code that is wrong in one place is said to be so, and no name
  if (/^\s*\d[\d\s-]*\S?\s*$/.test(text)) parseTrampolineCode(text);
  const words = readNameWords(text);
  if (words.every(({ kind }) => kind === 'place'))
    throw new FieldError('name', text, 'a skill, as "back full" or "double back tuck"');
  const readings = readTogether(words, text);
  // where nobody dives, one and a half is of twists if it can be
  const onGround = (place === 'floor' || place === 'trampoline') && readings.some((one) => !isHalfCount(one));
  const answers = readings
    .filter((one) => !onGround || !isHalfCount(one))
    .map((reading) => answerName(reading, text, place));
  const [first] = answers;
  const reason = answers.flatMap((one) => (one.kind === 'offers' && one.reason ? [one.reason] : []))[0];
  return answers.length === 1 ? first : answer(answers.flatMap(specsOf), reason);
}

const isWater = (place: SkillPlace | undefined): place is 'board' | 'platform' =>
  place === 'board' || place === 'platform';
const groundOf = (place: SkillPlace | undefined, otherwise: GroundPlace): GroundPlace =>
  place === 'floor' || place === 'trampoline' ? place : otherwise;

const specsOf = (asked: AskedSkill): DraftSpec[] =>
  asked.kind === 'one' ? [asked.spec] : asked.offers.map(({ spec }) => spec);

function answer(specs: readonly DraftSpec[], reason?: string): AskedSkill {
  const apart = specs.filter((one, i) => specs.findIndex((s) => keyOf(s) === keyOf(one)) === i);
  if (apart.length === 1 && reason === undefined) return { kind: 'one', spec: apart[0] };
  const offers = apart.map((spec) => ({
    text: spec.place === 'floor' ? spec.title : spec.code,
    title: spec.title,
    spec,
  }));
  return { kind: 'offers', offers, ...(reason === undefined ? {} : { reason }) };
}

const keyOf = ({ code, direction, place }: DraftSpec): string => `${code} ${direction} ${place}`;

/** Barani, rudi, randi, adolph turn forward where they are said. */
function frontReason({ name }: NonNullable<NameReading['own']>): string {
  return `A ${name} turns forward: backward it has another name.`;
}

function answerName(said: NameReading, text: string, asked: SkillPlace | undefined): AskedSkill {
  const place = said.place ?? asked;
  if (said.family) return answerFamily(said, said.family, place);
  if (said.dive || isWater(place) || isHalfCount(said)) {
    const dives = diveOfName(said, text);
    return answer(dives.map((dive) => draftOfDive(dive, isWater(place) ? place : undefined)));
  }
  const placings = Object.keys(said.placed);
  const n = said.somersaults ?? ('middle' in said.placed ? 3 : placings.length > 0 ? 2 : 1);
  if (n < 2 && placings.length > 0) throw new FieldError('name', text, '"in" and "out" with two somersaults or more');
  if (placings.length > 0 && said.halves !== undefined)
    throw new FieldError('name', text, 'every twist with its somersault: in, out');
  const twists = placings.length > 0 ? [placedTwists(said, n)] : placeTwists([said.halves ?? 0], n);
  const isBedWord = said.own !== undefined || n > 2;
  const where = groundOf(place, isBedWord ? 'trampoline' : 'floor');
  const specs = twists.flatMap((halfTwists) => specsOfTwists(said, halfTwists, where));
  const against = said.own && twists.every((halfTwists) => isAgainst(said, halfTwists)) ? said.own : undefined;
  return answer(specs, against && frontReason(against));
}

const isHalfCount = ({ somersaults }: NameReading): boolean => somersaults !== undefined && somersaults % 1 !== 0;

function placedTwists({ placed }: NameReading, n: number): number[] {
  const twists = Array<number>(n).fill(0);
  twists[0] = placed.in ?? 0;
  twists[n - 1] = placed.out ?? 0;
  if (placed.middle !== undefined) twists[1] = placed.middle;
  return twists;
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

/** What turns forward in its last somersault began forward if the twists before it are whole. */
function wayOfOwn({ own }: NameReading, halfTwists: readonly number[]): CodeDirection | undefined {
  if (!own) return undefined;
  const before = own.placing === 'out' ? sum(halfTwists.slice(0, -1)) : 0;
  return before % 2 === 0 ? 'forward' : 'backward';
}

const isAgainst = (said: NameReading, halfTwists: readonly number[]): boolean =>
  said.way !== undefined && said.way !== wayOfOwn(said, halfTwists);

/** The shapes and directions that were left open; the usual one alone where there is one. */
function specsOfTwists(said: NameReading, halfTwists: readonly number[], place: GroundPlace): DraftSpec[] {
  const isTwisting = sum(halfTwists) > 0;
  const isSingle = halfTwists.length === 1;
  const shapes: readonly CodeShape[] = said.shape
    ? [said.shape]
    : isSingle
      ? isTwisting
        ? ['straight']
        : ['tuck', 'pike', 'straight']
      : ['tuck'];
  const own = wayOfOwn(said, halfTwists);
  const ways: readonly CodeDirection[] =
    // both, the one that was said last: nearest to what was asked
    said.way && own && said.way !== own
      ? [own, said.way]
      : said.way
        ? [said.way]
        : own
          ? [own]
          : isSingle && !isTwisting
            ? ['backward', 'forward']
            : [usualWay(halfTwists, place)];
  return ways.flatMap((way) =>
    shapes.map((shape) => draftOfTrampoline({ quarters: 4 * halfTwists.length, halfTwists, shape }, way, place)),
  );
}

/** On a bed a multiple that ends with an odd half twist begins forward, so that the bed is seen; off the floor nearly all is backward (common practice). */
const usualWay = (halfTwists: readonly number[], place: GroundPlace): CodeDirection =>
  place === 'trampoline' && halfTwists.length > 1 && sum(halfTwists) % 2 === 1 ? 'forward' : 'backward';

function answerFamily(said: NameReading, name: NonNullable<NameReading['family']>, place?: SkillPlace): AskedSkill {
  const { usual: single, double, reason } = FAMILIES[name];
  const usual = double && said.somersaults === 2 ? double : single;
  const codes = usual.map(([code, way]): [TrampolineCode, CodeDirection] => [parseTrampolineCode(code), way]);
  const placed = Object.keys(said.placed).length > 0;
  const wanted = placed ? placedTwists(said, codes[0][0].halfTwists.length) : undefined;
  const fitting = codes.filter(
    ([code, way]) =>
      (said.way === undefined || said.way === way) && (!wanted || code.halfTwists.join() === wanted.join()),
  );
  // what was said beyond the name is kept where the family has it
  const meant: [TrampolineCode, CodeDirection][] =
    fitting.length > 0
      ? fitting
      : wanted
        ? [[{ ...codes[0][0], halfTwists: wanted }, said.way ?? usualWay(wanted, 'trampoline')]]
        : codes;
  const where = groundOf(place, name === 'whip' || name === 'arabian' ? 'floor' : 'trampoline');
  const { title } = FAMILIES[name];
  const specs = meant
    .map(([code, way]) => draftOfTrampoline(said.shape ? { ...code, shape: said.shape } : code, way, where))
    .map((spec) => (title ? { ...spec, title } : spec));
  const onlyBed =
    place === 'floor' && specs.every((one) => one.place !== 'floor')
      ? 'It ends lying, which only a bed takes.'
      : undefined;
  return answer(specs, reason ?? onlyBed);
}
