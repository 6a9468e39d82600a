/**
 * One walk over a text of JSON (RFC 8259). It finds what an engine does not say or not everywhere alike: where the text stops
 * being JSON, and the same key twice in one object, of which JSON.parse silently keeps the last. Keeps its own stack: depth is
 * no danger. A package would do either; both together are one walk that was here already.
 */
import { nameOfCharacter } from '../math/field-error.ts';
import { joinPath } from './field-path.ts';

interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly expected: string;
  /** what is there in its place, as it can be shown */
  readonly found: string;
}

/** The place of a key that its object has already, as people read it: "phases[0].schedule.base". */
interface RepeatedKey {
  readonly path: string;
  readonly line: number;
}

interface Branch {
  readonly end: '}' | ']';
  /** keys of an object so far */
  readonly seen: Set<string>;
  /** the place being read in it */
  at: string | number;
}

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON strings may not hold them, so they are named
const STRING = /"[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\u0000-\u001f]*)*"/y;
const WORD = /true|false|null/y;
/** spaces other than the usual one among them */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]|(?! )\p{Zs}/gu;
/** letters of what is said to be found */
const LONGEST = 30;

/** Only for a text that does not parse. */
export const findJsonFault = (text: string): JsonFault => scan(text).fault;
/** Only for a text that parses. */
export const findRepeatedKey = (text: string): RepeatedKey | undefined => scan(text).repeated;

/** The end of a text without a fault comes out as one that nobody asks for. */
function scan(text: string): { fault: JsonFault; repeated?: RepeatedKey } {
  let at = 0;
  const open: Branch[] = [];
  let repeated: RepeatedKey | undefined;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found || found[0] === '') return false;
    at += found[0].length;
    return true;
  };
  const space = (): void => {
    take(SPACE);
  };
  /** member name and colon; false leaves `at` at the fault */
  let expected = 'a value';
  const name = (): boolean => {
    space();
    expected = 'a field name in double quotes';
    const from = at;
    if (!take(STRING)) return false;
    const key = JSON.parse(text.slice(from, at)) as string;
    const inside = open[open.length - 1];
    inside.at = key;
    if (inside.seen.has(key))
      repeated ??= {
        path: open.reduce((path, branch) => joinPath(path, branch.at), ''),
        line: text.slice(0, from).split('\n').length,
      };
    inside.seen.add(key);
    space();
    expected = '":"';
    if (text[at] !== ':') return false;
    at++;
    return true;
  };

  let want: 'value' | 'after' = 'value';
  for (;;) {
    space();
    if (want === 'value') {
      expected = 'a value';
      const c = text[at];
      if (c === '{' || c === '[') {
        at++;
        open.push({ end: c === '{' ? '}' : ']', seen: new Set(), at: c === '{' ? '' : 0 });
        space();
        if (text[at] === open[open.length - 1].end) {
          at++;
          open.pop();
          want = 'after';
        } else if (c === '{' && !name()) break;
        continue;
      }
      if (!take(STRING) && !take(NUMBER) && !take(WORD)) break;
      want = 'after';
      continue;
    }
    const inside = open[open.length - 1];
    expected = inside ? `"," or "${inside.end}"` : 'the end of the file';
    if (at >= text.length || !inside) break;
    if (text[at] === ',') {
      at++;
      if (typeof inside.at === 'number') inside.at++;
      else if (!name()) break;
      want = 'value';
    } else if (text[at] === inside.end) {
      at++;
      open.pop();
    } else break;
  }
  const before = text.slice(0, at).split('\n');
  const fault = {
    line: before.length,
    column: before[before.length - 1].length + 1,
    expected,
    found: foundAt(text, at),
  };
  return { fault, ...(repeated ? { repeated } : {}) };
}

/** A text, a word or a number whole where it is short, else one character. */
function foundAt(text: string, at: number): string {
  if (at >= text.length) return 'the end of the file';
  STRING.lastIndex = at;
  const string = STRING.exec(text)?.[0];
  if (string !== undefined) return string.length > LONGEST ? 'a long text' : string.replace(UNSEEN, nameOfCharacter);
  if (text[at] === '"') return 'a text that does not close on its line, or holds what a text cannot';
  const word = /^[\w.+-]+/.exec(text.slice(at, at + LONGEST))?.[0] ?? String.fromCodePoint(text.codePointAt(at) ?? 0);
  return word.replace(UNSEEN, '') === word ? `"${word}"` : nameOfCharacter(word);
}
