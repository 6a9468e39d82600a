/**
 * Finds where a text stops being JSON (RFC 8259). Engines say it each in their own way or not at all, so the place is
 * found here; only called for a text that did not parse. Keeps its own stack: depth is no danger.
 */
interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly expected: string;
}

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON strings may not hold them, so they are named
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const WORD = /true|false|null/y;

export function findJsonFault(text: string): JsonFault {
  let at = 0;
  const open: ('{' | '[')[] = [];
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
    if (!take(STRING)) return false;
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
        open.push(c);
        space();
        if (text[at] === (c === '{' ? '}' : ']')) {
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
    expected = inside === '{' ? '"," or "}"' : inside === '[' ? '"," or "]"' : 'the end of the file';
    if (at >= text.length || !inside) break;
    if (text[at] === ',') {
      at++;
      if (inside === '{' && !name()) break;
      want = 'value';
    } else if (text[at] === (inside === '{' ? '}' : ']')) {
      at++;
      open.pop();
    } else break;
  }
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before[before.length - 1].length + 1, expected };
}
