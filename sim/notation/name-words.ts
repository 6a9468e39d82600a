/**
 * The words that names of skills are made of, in any order and case. Common practice, no source: gyms differ.
 */
import { FieldError, nearestName } from '../math/field-error.ts';
import type { SkillPlace } from '../skill/skill-place.ts';
import type { CodeDirection, CodeShape } from './trampoline-code.ts';

/** Names that stand for more than one skill, or for one that a draft cannot be. */
export type FamilyName = 'fliffis' | 'triffis' | 'arabian' | 'cody' | 'ballOut' | 'crashDive' | 'lazyBack' | 'whip';
export type DiveWord = 'dive' | 'inward' | 'reverse' | 'armstand';

export type NameWord =
  /** a count of turns: 1, 1.5, 2 ... */
  | { readonly kind: 'count'; readonly n: number }
  /** `isBound`: written as one word with its place, "full-out"; `own`: a name of its own, of a front somersault */
  | { readonly kind: 'twist'; readonly halves: number; readonly own?: string; readonly isBound?: boolean }
  /** "twist", "twists", "twisting" */
  | { readonly kind: 'twistNoun' }
  | { readonly kind: 'somersault' }
  /** in the first somersault, in the last, in the middle one */
  | { readonly kind: 'in' | 'out' | 'middle' }
  | { readonly kind: 'shape'; readonly shape: CodeShape }
  | { readonly kind: 'way'; readonly way: CodeDirection }
  | { readonly kind: 'place'; readonly place: SkillPlace }
  | { readonly kind: 'dive'; readonly word: DiveWord }
  | { readonly kind: 'family'; readonly family: FamilyName };

const shape = (one: CodeShape): NameWord => ({ kind: 'shape', shape: one });
const way = (one: CodeDirection): NameWord => ({ kind: 'way', way: one });
const count = (n: number): NameWord => ({ kind: 'count', n });
const own = (name: string, halves: number): NameWord => ({ kind: 'twist', halves, own: name });
const family = (name: FamilyName): NameWord => ({ kind: 'family', family: name });
const at = (place: SkillPlace): NameWord => ({ kind: 'place', place });
const dive = (word: DiveWord): NameWord => ({ kind: 'dive', word });
const somersault: NameWord = { kind: 'somersault' };
const twistNoun: NameWord = { kind: 'twistNoun' };

const WORDS: Readonly<Record<string, NameWord>> = {
  tuck: shape('tuck'),
  tucked: shape('tuck'),
  puck: shape('tuck'),
  pucked: shape('tuck'),
  pike: shape('pike'),
  piked: shape('pike'),
  straight: shape('straight'),
  layout: shape('straight'),
  stretched: shape('straight'),
  back: way('backward'),
  backward: way('backward'),
  backwards: way('backward'),
  front: way('forward'),
  forward: way('forward'),
  forwards: way('forward'),
  single: count(1),
  one: count(1),
  double: count(2),
  two: count(2),
  triple: count(3),
  three: count(3),
  quadruple: count(4),
  quad: count(4),
  four: count(4),
  half: { kind: 'twist', halves: 1 },
  full: { kind: 'twist', halves: 2 },
  fulls: { kind: 'twist', halves: 2 },
  barani: own('barani', 1),
  baranie: own('barani', 1),
  rudi: own('rudi', 3),
  rudy: own('rudi', 3),
  randi: own('randi', 5),
  randy: own('randi', 5),
  adolph: own('adolph', 7),
  adolf: own('adolph', 7),
  twist: twistNoun,
  twists: twistNoun,
  twisting: twistNoun,
  somersault: somersault,
  somersaults: somersault,
  salto: somersault,
  saltos: somersault,
  somi: somersault,
  flip: somersault,
  in: { kind: 'in' },
  out: { kind: 'out' },
  middle: { kind: 'middle' },
  mid: { kind: 'middle' },
  floor: at('floor'),
  tumbling: at('floor'),
  trampoline: at('trampoline'),
  tramp: at('trampoline'),
  bed: at('trampoline'),
  board: at('board'),
  springboard: at('board'),
  platform: at('platform'),
  dive: dive('dive'),
  inward: dive('inward'),
  reverse: dive('reverse'),
  armstand: dive('armstand'),
  handstand: dive('armstand'),
  fliffis: family('fliffis'),
  fliffus: family('fliffis'),
  triffis: family('triffis'),
  triffus: family('triffis'),
  arabian: family('arabian'),
  cody: family('cody'),
  ballout: family('ballOut'),
  crashdive: family('crashDive'),
  lazyback: family('lazyBack'),
  whip: family('whip'),
  whipback: family('whip'),
};

/** Say nothing by themselves. */
const SILENT = new Set(['with', 'and', 'a', 'an', 'the', 'of', 'on', 'from', 'into', 'to']);

/** Names of two words, and numbers with a half, as one word. */
const JOINED: readonly [RegExp, string][] = [
  [/\blay[ -]?out\b/g, 'layout'],
  [/\bball[ -]out\b/g, 'ballout'],
  [/\bcrash[ -]dive\b/g, 'crashdive'],
  [/\blazy[ -]back\b/g, 'lazyback'],
  [/\bwhip[ -]back\b/g, 'whipback'],
  [/\b([1-4])\s*(?:½|[\s-]1\/2|\.5)/g, ' #$1.5 '],
  [/\b(one|two|three|four) and a half\b/g, ' #$1.5 '],
  [/½/g, ' half '],
];
const NUMBERS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4 };

/** A word that is not known is named, with the nearest one. */
export function readNameWords(text: string): NameWord[] {
  let plain = text
    .toLowerCase()
    .replace(/[\u2010-\u2014]/g, '-')
    .replace(/[,.;:!?"“”()]+(?=\s|$)/g, ' ');
  for (const [found, put] of JOINED) plain = plain.replace(found, put);
  return plain.split(/\s+/).filter(Boolean).flatMap(readChunk);
}

/** "half-out", "double-full-in", "rudi": what is written together belongs together. */
function readChunk(chunk: string): NameWord[] {
  const number = /^#(\w+)\.5$/.exec(chunk);
  if (number) return [count((NUMBERS[number[1]] ?? Number(number[1])) + 0.5)];
  const parts = chunk.split('-').filter(Boolean);
  const words = parts.filter((part) => !SILENT.has(part)).map(readWord);
  const [first, second] = words;
  if (words.length < 2) return words;
  if (first.kind === 'count' && second.kind === 'twist')
    return bound([{ kind: 'twist', halves: first.n * second.halves }, ...words.slice(2)]);
  return bound(words);
}

const isPlacing = (one: NameWord | undefined): boolean =>
  one !== undefined && (one.kind === 'in' || one.kind === 'out' || one.kind === 'middle');
const bound = (words: readonly NameWord[]): NameWord[] =>
  words.map((one, i) => (one.kind === 'twist' && isPlacing(words[i + 1]) ? { ...one, isBound: true } : one));

function readWord(part: string): NameWord {
  const known = Object.hasOwn(WORDS, part) ? WORDS[part] : /^[1-4]$/.test(part) ? count(Number(part)) : undefined;
  if (known) return known;
  const near = part.length > 2 ? nearestName(part, Object.keys(WORDS)) : undefined;
  throw new FieldError('name', part, 'a name or code of a skill', { kind: 'noName', ...(near ? { near } : {}) });
}
