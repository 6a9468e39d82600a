/**
 * The letters of a line as tokens: numbers with a point or a decimal comma, words of any alphabet, readouts in braces,
 * signs. Whatever is none of these is a fault, so nothing else ever reaches the parser of formulas.
 */
import { quote, rewrite, SheetFault } from './sheet-fault.ts';

export interface LineToken {
  readonly kind: 'number' | 'word' | 'link' | 'sign';
  /** as it is meant: a number with a point, a sign of ours, the words of a readout */
  readonly text: string;
  /** as typed, and where */
  readonly typed: string;
  readonly at: number;
}

/** What other keyboards and other habits have for our signs. */
const SIGNS: Readonly<Record<string, string>> = {
  '×': '*',
  '·': '*',
  '⋅': '*',
  '∗': '*',
  '÷': '/',
  '∕': '/',
  '−': '-',
  '–': '-',
  '±': '+-',
  '’': "'",
  '′': "'",
  '”': '"',
  '″': '"',
};
const PLAIN_SIGNS = '+-*/^()=,%\'"';
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const WORD = /^[\p{L}_][\p{L}\p{M}\p{Nd}\p{Nl}_₀-₉]*/u;
const NUMBER = /^(?:\d(?:[\d\u202f\u2009\u00a0]*\d)?(?:[.,]\d+)*\.?|[.,]\d+)/;
const EXPONENT = /^[eE][+-]?\d+(?![\p{L}\p{N}_])/u;

/** Tokens of a text, up to the word "if" outside braces; what follows that word is free text. */
export function tokenize(text: string): { readonly tokens: LineToken[]; readonly rest?: string } {
  const tokens: LineToken[] = [];
  // of every open bracket: whether its commas part the values of a function
  const open: boolean[] = [];
  let i = 0;
  const put = (kind: LineToken['kind'], means: string, length: number): void => {
    tokens.push({ kind, text: means, typed: text.slice(i, i + length), at: i });
    i += length;
  };
  while (i < text.length) {
    const rest = text.slice(i);
    const space = /^\s+/.exec(rest);
    if (space) {
      i += space[0].length;
      continue;
    }
    const word = WORD.exec(rest)?.[0];
    if (word === 'º') put('word', 'deg', 1);
    else if (/^\.\p{L}/u.test(rest) && tokens.at(-1)?.kind === 'word')
      // N.m
      put('sign', '*', 1);
    else if (word !== undefined) {
      if (word === 'if') return { tokens, rest: rest.slice(2) };
      put('word', word === 'π' ? 'pi' : word, word.length);
    } else if (rest[0] === '{') {
      const end = rest.indexOf('}');
      if (end < 0) throw new SheetFault('A readout in braces is not closed: } is missing.', rest);
      const inner = rest.slice(1, end);
      if (inner.includes('{'))
        throw new SheetFault('A readout in braces holds no other braces.', rest.slice(0, end + 1));
      put('link', inner.trim().replace(/\s+/g, ' '), end + 1);
    } else if (/^[\d]|^[.,]\d/.test(rest) && !(rest[0] === ',' && open.at(-1))) {
      const typed = open.at(-1)
        ? (/^(?:\d+(?:\.\d*)?|\.\d+)/.exec(rest) as RegExpExecArray)[0]
        : (NUMBER.exec(rest)?.[0] ?? rest[0]);
      const exponent = EXPONENT.exec(rest.slice(typed.length))?.[0] ?? '';
      put('number', readNumber(typed) + exponent, typed.length + exponent.length);
    } else {
      const sign = readSign(rest);
      if (sign.text === '(') open.push(/^(min|max)$/.test(tokens.at(-1)?.text ?? ''));
      if (sign.text === ')') open.pop();
      put(sign.kind, sign.text, sign.length);
    }
  }
  return { tokens };
}

function readSign(rest: string): { readonly kind: 'sign' | 'word'; readonly text: string; readonly length: number } {
  const pair = /^(?:\+\/[-−]|\+[-−])/.exec(rest)?.[0];
  if (pair) return { kind: 'sign', text: '+-', length: pair.length };
  if (rest.startsWith('**')) return { kind: 'sign', text: '^', length: 2 };
  if (/^['’′]{2}/.test(rest)) return { kind: 'sign', text: '"', length: 2 };
  const raised = /^[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/.exec(rest)?.[0];
  if (raised) {
    const digits = [...raised].map((c) => (c === '⁻' ? '-' : c === '⁺' ? '' : String(RAISED.indexOf(c)))).join('');
    return { kind: 'sign', text: `^(${digits})`, length: raised.length };
  }
  const [c] = rest;
  if (c === '°') return { kind: 'word', text: 'deg', length: 1 };
  if (c === '√') return { kind: 'word', text: 'sqrt', length: 1 };
  const sign = SIGNS[c] ?? (PLAIN_SIGNS.includes(c) ? c : undefined);
  if (sign === undefined) {
    const whole = [...rest][0];
    throw new SheetFault(
      `${quote(whole)} has no place here. A formula holds numbers, names, units, + - * / ^ ( ) and readouts in braces.`,
      whole,
    );
  }
  return { kind: 'sign', text: sign, length: c.length };
}

const GROUPED = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;

/** A number as typed, with a point; asks where a comma could be either. */
function readNumber(typed: string): string {
  const text = typed.replace(/[\u202f\u2009\u00a0]/g, '');
  if (!text.includes(',')) {
    if (text.indexOf('.') !== text.lastIndexOf('.')) throw new SheetFault(`${quote(typed)} is no number.`, typed);
    return text.replace(/\.$/, '');
  }
  const [whole, ...parts] = text.split(',');
  if (GROUPED.test(text)) {
    const joined = text.replace(/,/g, '');
    if (parts.length > 1 || text.includes('.')) return joined;
    const point = text.replace(',', '.');
    throw new SheetFault(`${typed}: ${point} or ${joined}? Write one of them without a comma.`, typed, [
      rewrite(typed, point),
      rewrite(typed, joined),
    ]);
  }
  if (parts.length === 1 && !text.includes('.')) return `${whole || '0'}.${parts[0]}`;
  if (parts.length === 1 && whole.includes('.')) {
    const joined = `${whole.replace(/\./g, '')}.${parts[0]}`;
    throw new SheetFault(`${typed} has both a point and a comma: is it ${joined}?`, typed, [rewrite(typed, joined)]);
  }
  throw new SheetFault(`${quote(typed)} is no number.`, typed);
}
