// What holds of every input, however damaged: it is read, or refused in one line of plain words; and nothing that all share is changed.

import { FieldError } from '../../../sim/math/field-error.ts';
import { wordFault } from '../../../src/app/say/fault-words.ts';
import { wordBadInput } from '../../../src/cli/command-error.ts';

export type Outcome = 'read' | 'refused';

/** A law that an input broke: a fault of ours. */
export class LawBroken extends Error {
  override readonly name = 'LawBroken';
}

export function hold(isHeld: boolean, what: string): void {
  if (!isHeld) throw new LawBroken(what);
}

/** Words of a program, which are not for a reader; allowed where the file itself has them. */
const FORBIDDEN: readonly RegExp[] = [
  /undefined/,
  /\[object/,
  /\bNaN\b/,
  /Infinity/,
  /Expected property name/i,
  /is not (a function|iterable|defined|an object)/,
  /Cannot (read|set|destructure|convert)/i,
  /Unexpected (token|end|non-whitespace|number|string)/i,
  /in JSON at position/,
  /\bat \S+ \(?\S+:\d+:\d+/,
  /\ba object\b/,
  /Maximum call stack/,
  /Invalid (array length|string length|typed array|regular|date|time value)/i,
  /out of (memory|bounds)/i,
  /\b(TypeError|RangeError|SyntaxError|ReferenceError|Symbol|prototype)\b/,
  /\.tsx?\b|\.m?js\b|node_modules/,
  /valibot|fflate|mathjs|planck/i,
];
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/u;
const LONGEST = 1000;

/** A line that somebody reads. `input`: what was given, whose own words it may repeat. */
export function checkSentence(sentence: string, input: string): void {
  const cut = sentence.slice(0, 300);
  hold(sentence.trim() !== '', 'the refusal says nothing');
  hold(sentence.length <= LONGEST, `the refusal has ${sentence.length} letters: ${cut}`);
  hold(!CONTROLS.test(sentence), `a control character in the refusal: ${JSON.stringify(cut)}`);
  hold(!/[\ud800-\udfff]/u.test(sentence), `half a letter in the refusal: ${JSON.stringify(cut)}`);
  for (const pattern of FORBIDDEN) {
    const found = pattern.exec(sentence)?.[0];
    hold(found === undefined || input.includes(found), `"${found}" in the refusal: ${cut}`);
  }
}

/** A refusal of a file, as page and shell say it; anything that is none goes on as a fault of ours. */
export function checkRefusal(error: unknown, input: string): void {
  const said = wordBadInput(error) ?? wordLink(error);
  if (said === undefined) {
    const { name = '', message = String(error), stack = '' } = error instanceof Error ? error : ({} as Error);
    throw new LawBroken(`${name}: ${message.slice(0, 200)} ${stack.split('\n').slice(1, 4).join(' |')}`);
  }
  checkSentence(said, input);
  const onPage = wordFault(error);
  checkSentence(onPage, input);
  hold(
    !/ is not possible; allowed: |this field is missing; needed: /.test(onPage),
    `the page says the line of the shell: ${onPage.slice(0, 300)}`,
  );
  if (!(error instanceof FieldError)) return;
  hold(/: (.*(allowed|needed)|it is )/s.test(error.message), `no word of what is allowed: ${said}`);
  hold(error.field !== undefined && error.allowed !== '', `neither place nor range: ${said}`);
}

const wordLink = (error: unknown): string | undefined =>
  error instanceof Error && error.name === 'LinkError' ? error.message : undefined;

/** Tries to read: what is read, or a refusal that was checked. */
export function tryRead<T>(read: () => T, input: string): { readonly value: T } | { readonly refused: Error } {
  try {
    return { value: read() };
  } catch (error) {
    if (error instanceof LawBroken) throw error;
    checkRefusal(error, input);
    return { refused: error as Error };
  }
}

/** Two doors for one file: both read it, or both say the same of it. */
export function sameDoor<T>(one: () => T, other: () => T, input: string): { readonly value: T } | undefined {
  const [a, b] = [tryRead(one, input), tryRead(other, input)];
  const say = (found: typeof a): string => ('refused' in found ? found.refused.message : 'read');
  hold(say(a) === say(b), `page and shell differ: ${say(a).slice(0, 200)} / ${say(b).slice(0, 200)}`);
  return 'value' in a ? a : undefined;
}

const SHARED = [Object, Array, String, Number, Boolean, Function, RegExp, Promise, Map, Set] as const;
const look = (): string =>
  SHARED.map((one) => [Object.getOwnPropertyNames(one.prototype), Object.keys(one.prototype)].join()).join('|');

/** Nothing that all objects share was changed by the work. */
export function checkShared<T>(work: () => T): T {
  const before = look();
  const done = work();
  hold(look() === before, 'what all objects share was changed');
  hold(
    ({} as Record<string, unknown>).polluted === undefined && ({} as Record<string, unknown>).x === undefined,
    'an object has what it was not given',
  );
  return done;
}

/** From then on a change of it throws. */
export function freezeDeep<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const inner of Object.values(value)) freezeDeep(inner);
  return value;
}
