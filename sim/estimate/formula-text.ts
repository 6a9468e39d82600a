/**
 * Tokens of a formula written out for the parser: words and readouts as places that it cannot take for anything of its own,
 * quantities in two units as a sum. What is wrong by its order is said here, in words and with its place.
 */
import { type Compound, type FindUnit, readCompound } from './compound.ts';
import { FUNCTIONS } from './expression.ts';
import { quote, rewrite, SheetFault } from './sheet-fault.ts';
import type { LineToken } from './tokens.ts';
import { findSpelling, findUnit } from './units.ts';

/** Letters that nobody can type into a formula, each followed by an index. */
export const LINK = '\u2113';
export const WORD = '\u2115';

export interface FormulaText {
  readonly text: string;
  readonly words: readonly LineToken[];
  readonly links: readonly LineToken[];
}

const isFunction = (text: string): boolean => (FUNCTIONS as readonly string[]).includes(text);
const isOperator = (t: LineToken | undefined): boolean => t?.kind === 'sign' && /^[+\-*/^,]$/.test(t.text);
/** May have a number or word after it without an operator between; a sign of inches is a word. */
const isValue = (t: LineToken | undefined): boolean =>
  t !== undefined && (t.kind !== 'sign' || /^(?:\)|\^\(.*)$/.test(t.text));

/** Signs of feet and inches are their words; km/h is one unit. */
function readSigns(tokens: readonly LineToken[]): LineToken[] {
  const out: LineToken[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i];
    if (t.kind === 'sign' && (t.text === "'" || t.text === '"')) {
      if (tokens[i - 1]?.kind !== 'number')
        throw new SheetFault(
          `${quote(t.typed)} has no place here; after a number it is ${t.text === '"' ? 'inches' : 'feet'}.`,
          t.typed,
        );
      out.push({ ...t, kind: 'word', text: t.text === '"' ? 'inch' : 'ft' });
    } else if (t.text === 'km' && tokens[i + 1]?.text === '/' && tokens[i + 2]?.text === 'h') {
      out.push({ ...t, text: 'kph', typed: 'km/h' });
      i += 2;
    } else out.push(t);
  }
  return out;
}

export function writeFormula(typed: readonly LineToken[], names: ReadonlySet<string>): FormulaText {
  const tokens = readSigns(typed);
  const find: FindUnit = (t) =>
    t?.kind === 'word' && !names.has(t.text) ? (findUnit(t.text) ?? findSpelling(t.text)) : undefined;
  checkOrder(tokens);
  const words: LineToken[] = [];
  const links: LineToken[] = [];
  const out: string[] = [];
  const word = (t: LineToken): string => `${WORD}${words.push(t) - 1}`;
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i];
    const before = tokens[i - 1];
    if (t.kind === 'number') {
      if (isValue(before)) sideBySide(before, t);
      const compound: Compound | undefined = readCompound(tokens, i, find);
      if (compound) {
        const parts = compound.parts.map(
          ({ number, unit }) => `${number.text} ${word({ ...number, kind: 'word', text: unit.name })}`,
        );
        out.push(`(${parts.join(' + ')})`);
        i += compound.length - 1;
      } else {
        checkSoft(t, tokens[i + 1], names);
        out.push(t.text);
      }
    } else if (t.kind === 'link') out.push(`${LINK}${links.push(t) - 1}`);
    else if (t.kind === 'word') out.push(writeWord(t, tokens, i, names, word));
    else if (t.text === '%') out.push('/ 100)');
    else out.push(t.text);
    if (tokens[i + 1]?.text === '%' && t.kind === 'number') out.splice(out.length - 1, 0, '(');
  }
  return { text: out.join(' '), words, links };
}

function writeWord(
  t: LineToken,
  tokens: readonly LineToken[],
  i: number,
  names: ReadonlySet<string>,
  word: (t: LineToken) => string,
): string {
  const next = tokens[i + 1];
  // min is a function with brackets, else the minute
  const isMinute = findUnit(t.text) !== undefined && next?.text !== '(';
  if (isFunction(t.text) && !names.has(t.text) && !isMinute) {
    if (next?.text !== '(') throw new SheetFault(`${t.text} needs brackets: ${t.text}( ).`, t.typed);
    return t.text;
  }
  if (next?.text === '(') {
    const isKnown =
      names.has(t.text) || findUnit(t.text) !== undefined || findSpelling(t.text) !== undefined || t.text === 'pi';
    throw new SheetFault(
      isKnown
        ? `Between ${quote(t.typed)} and the bracket an operator is missing.`
        : `${quote(t.typed)} is no function. There are: ${FUNCTIONS.join(', ')}.`,
      t.typed,
      isKnown && next.at === t.at + t.typed.length
        ? [{ title: 'Write *', piece: `${t.typed}(`, by: `${t.typed} * (` }]
        : [],
    );
  }
  // 5 ms^-1 may be a speed or a rate
  if (t.text === 'ms' && /^\^/.test(next?.text ?? '') && /-/.test((next?.text ?? '') + (tokens[i + 2]?.text ?? '')))
    throw new SheetFault(
      '"ms" is a millisecond. For metres a second write m/s; for one over milliseconds 1/ms.',
      'ms',
      [
        rewrite(
          `${t.typed}${next.typed}${next.text === '^' ? `-${tokens[i + 3]?.typed ?? ''}` : ''}`,
          power(next, tokens[i + 3]),
        ),
      ],
    );
  return word(t);
}

const power = (raised: LineToken, digit: LineToken | undefined): string => {
  const n = raised.text === '^' ? digit?.text : /\d/.exec(raised.text)?.[0];
  return n === '1' ? 'm/s' : `m/s^${n}`;
};

/** "0.5 turns" where turns is a line: half of that line, or half a turn? */
function checkSoft(number: LineToken, next: LineToken | undefined, names: ReadonlySet<string>): void {
  if (next?.kind !== 'word' || next.text === 'g' || !names.has(next.text)) return;
  const unit = findSpelling(next.text);
  if (!unit) return;
  const piece = `${number.typed} ${next.typed}`;
  throw new SheetFault(
    `${quote(next.typed)} is both a line and a unit: write ${number.typed} * ${next.typed} for the line, ${number.typed} ${unit.name} for the unit.`,
    piece,
    [rewrite(piece, `${number.typed} * ${next.typed}`), rewrite(piece, `${number.typed} ${unit.name}`)],
  );
}

function sideBySide(before: LineToken, t: LineToken): never {
  throw new SheetFault(
    `${quote(before.typed)} and ${quote(t.typed)} are side by side. Write + or * between them.`,
    t.typed,
  );
}

/** Brackets and operators, before the parser sees them. */
function checkOrder(tokens: readonly LineToken[]): void {
  const open: LineToken[] = [];
  tokens.forEach((t, i) => {
    const next = tokens[i + 1];
    if (t.kind === 'sign' && (t.text === '=' || t.text === '+-'))
      throw new SheetFault(`${quote(t.typed)} has no place inside a formula.`, t.typed);
    if (t.text === ',' && t.kind === 'sign' && open.length === 0)
      throw new SheetFault('A comma parts values in the brackets of min and max only.', t.typed);
    if (t.text === '(' && t.kind === 'sign') {
      open.push(t);
      if (next?.text === ')' && next.kind === 'sign') throw new SheetFault('The brackets are empty.', '(');
    }
    if (t.text === ')' && t.kind === 'sign' && !open.pop())
      throw new SheetFault('A bracket is closed that was not opened.', ')');
    if (
      t.text === '%' &&
      t.kind === 'sign' &&
      (tokens[i - 1]?.kind !== 'number' || (next && !isOperator(next) && next.text !== ')'))
    )
      throw new SheetFault('"%" goes behind a number: 12 % is 0.12.', t.typed);
    if (!isOperator(t)) return;
    const before = tokens[i - 1];
    const sign = t.text === '+' || t.text === '-';
    if (!next || (next.kind === 'sign' && next.text === ')'))
      throw new SheetFault(`Something is missing after ${quote(t.typed)}.`, t.typed);
    if (!sign && (!before || (before.kind === 'sign' && before.text === '(')))
      throw new SheetFault(`Something is missing before ${quote(t.typed)}.`, t.typed);
    if (!sign && before && isOperator(before))
      throw new SheetFault(`Something is missing between ${quote(before.typed)} and ${quote(t.typed)}.`, t.typed);
  });
  if (open.length > 0) throw new SheetFault('A bracket is not closed: ) is missing.', '(');
}
