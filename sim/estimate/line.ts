/**
 * One line of a sheet, read. The form is our own and is taken apart here, before any formula reaches the parser of
 * formulas:
 *
 *   name = formula [+- spread] [to unit] [vs {readout}] [if assumption, assumption] [# note]
 *   draw disc for name [about lateral] [at apex]
 *   # words
 *
 * The "+-" has to be read here: to the parser alone "0.15 m +- 0.02 m" is a difference.
 */
import { ASSUMPTIONS, type Assumption, isAssumption } from './assumption.ts';
import { LONGEST_LINE, LONGEST_NAME } from './limits.ts';
import { PLAIN_BODIES, type PlainBodyKind } from './plain-body.ts';
import { quote, SheetFault } from './sheet-fault.ts';

export interface QuantityLine {
  readonly kind: 'quantity';
  readonly name: string;
  /** texts for the parser; links stand in them as LINK followed by their index in `links` */
  readonly formula: string;
  readonly spread?: { readonly text: string; readonly relative: boolean };
  readonly unit?: string;
  readonly against?: string;
  readonly assumptions: readonly Assumption[];
  readonly links: readonly string[];
  readonly note: string;
}
export interface DrawLine {
  readonly kind: 'draw';
  readonly body: PlainBodyKind;
  readonly of: string;
  readonly about: Axis;
  readonly at: string;
  readonly note: string;
}
interface WordsLine {
  readonly kind: 'words';
  readonly text: string;
}
type Line = QuantityLine | DrawLine | WordsLine;
export type Axis = 'lateral' | 'front-back' | 'long';
const AXES: readonly Axis[] = ['lateral', 'front-back', 'long'];

/** The place of a link in the text of a formula; nobody can type it there. */
export const LINK = '\u2113';
const NAME = /^[A-Za-z\u0391-\u03a9\u03b1-\u03c9][A-Za-z0-9_\u0391-\u03a9\u03b1-\u03c9]*$/;
/** Words of the line, of the parser, and names that every object answers to. */
const TAKEN = new Set(
  'to vs if in mod and or xor not end true false null undefined Infinity NaN pi draw constructor prototype toString valueOf hasOwnProperty isPrototypeOf propertyIsEnumerable toLocaleString'.split(
    ' ',
  ),
);
const TYPED: readonly (readonly [RegExp, string])[] = [
  [/[\u00d7\u00b7\u22c5\u2217]/g, '*'],
  [/\u00f7/g, '/'],
  [/[\u2212\u2013]/g, '-'],
  [/\u00b1/g, '+-'],
  [/\u00b2/g, '^2'],
  [/\u00b3/g, '^3'],
  [/\u03c0/g, 'pi'],
  [/\u00b0/g, ' deg'],
  [/\u00a0|\u202f|\u2009|\t/g, ' '],
];
const ALLOWED = /^[A-Za-z0-9_\u0391-\u03a9\u03b1-\u03c9 .,+\-*/^()%=\u2113]*$/;

export function parseLine(text: string): Line {
  if (text.length > LONGEST_LINE) throw new SheetFault(`the line has ${text.length} letters; at most ${LONGEST_LINE}`);
  const hash = text.indexOf('#');
  const note = hash < 0 ? '' : text.slice(hash + 1).trim();
  const typed = (hash < 0 ? text : text.slice(0, hash)).trim();
  if (typed === '') return { kind: 'words', text: note };
  if (/^draw\s/.test(typed)) return parseDraw(typed, note);
  return parseQuantity(typed, note);
}

/** A name a line may give to its quantity. */
export function checkName(name: string): string {
  if (!NAME.test(name) || TAKEN.has(name) || name.length > LONGEST_NAME)
    throw new SheetFault(
      TAKEN.has(name)
        ? `${quote(name)} is a word with a meaning of its own; choose another name`
        : `${quote(name)} is no name; a name is one word of letters, digits and _, at most ${LONGEST_NAME}`,
    );
  return name;
}

function parseQuantity(typed: string, note: string): QuantityLine {
  const links: string[] = [];
  if (typed.includes(LINK)) throw new SheetFault(`${quote(LINK)} has no meaning here`);
  const plain = typed.replace(/\{([^{}]*)\}/g, (_, inner: string) => {
    links.push(inner.trim().replace(/\s+/g, ' '));
    return ` ${LINK}${links.length - 1} `;
  });
  const form = TYPED.reduce((t, [from, into]) => t.replace(from, into), plain);
  const odd = [...form].find((c) => !ALLOWED.test(c));
  if (odd !== undefined) throw new SheetFault(`${quote(odd)} has no meaning here`);
  const equals = form.indexOf('=');
  if (equals < 0) throw new SheetFault('a line is "name = formula"; the = is missing');
  if (form.indexOf('=', equals + 1) >= 0) throw new SheetFault('one line holds one =');
  const name = checkName(form.slice(0, equals).trim());
  const { head, tails } = splitTails(form.slice(equals + 1));
  const { formula, spread } = splitSpread(head);
  const against = tails.vs === undefined ? undefined : onlyLink(tails.vs, links);
  return {
    kind: 'quantity',
    name,
    formula,
    ...(spread ? { spread } : {}),
    ...(tails.to === undefined ? {} : { unit: tails.to }),
    ...(against === undefined ? {} : { against }),
    assumptions: tails.if === undefined ? [] : parseAssumptions(tails.if),
    links,
    note,
  };
}

type Tails = Partial<Record<'to' | 'vs' | 'if', string>>;

function splitTails(text: string): { head: string; tails: Tails } {
  const [head, ...rest] = text.split(/\b(to|vs|if)\b/);
  const tails: Tails = {};
  for (let i = 0; i < rest.length; i += 2) {
    const word = rest[i] as keyof Tails;
    if (tails[word] !== undefined) throw new SheetFault(`"${word}" is twice in this line`);
    tails[word] = rest[i + 1].trim();
    if (tails[word] === '') throw new SheetFault(`something has to follow "${word}"`);
  }
  return { head: head.trim(), tails };
}

function splitSpread(head: string): Pick<QuantityLine, 'formula' | 'spread'> {
  const at = head.indexOf('+-');
  if (at < 0) {
    if (head === '') throw new SheetFault('the formula is missing');
    return { formula: head };
  }
  if (head.indexOf('+-', at + 2) >= 0) throw new SheetFault('"+-" is there twice; a line has one uncertainty');
  const before = head.slice(0, at);
  const depth = [...before].reduce((d, c) => d + (c === '(' ? 1 : c === ')' ? -1 : 0), 0);
  if (depth !== 0)
    throw new SheetFault('"+-" says how uncertain a whole line is; give the part in brackets a line of its own');
  const spread = head.slice(at + 2).trim();
  const formula = before.trim();
  if (formula === '' || spread === '') throw new SheetFault('"+-" goes between a value and its uncertainty');
  const relative = spread.endsWith('%');
  return { formula, spread: { text: relative ? spread.slice(0, -1).trim() : spread, relative } };
}

function onlyLink(text: string, links: readonly string[]): string {
  const found = new RegExp(`^${LINK}(\\d+)$`).exec(text);
  if (!found) throw new SheetFault(`after "vs" comes a readout in braces, as {air time}; here it is ${quote(text)}`);
  return links[Number(found[1])];
}

function parseAssumptions(text: string): Assumption[] {
  return text.split(',').map((part) => {
    const word = part.trim().replace(/\s+/g, ' ');
    if (!isAssumption(word))
      throw new SheetFault(`${quote(word)} is no assumption known here; there are: ${ASSUMPTIONS.join(', ')}`);
    return word;
  });
}

function parseDraw(typed: string, note: string): DrawLine {
  const found = /^draw\s+([a-z ]+?)\s+for\s+(\S+)(?:\s+about\s+(\S+))?(?:\s+at\s+(.+))?$/.exec(typed);
  if (!found)
    throw new SheetFault('a drawing is "draw disc for inertia", with "about lateral" and "at apex" if wanted');
  const [, body, of, about = 'lateral', at = 'apex'] = found;
  if (!(PLAIN_BODIES as readonly string[]).includes(body))
    throw new SheetFault(`${quote(body)} is no plain body; there are: ${PLAIN_BODIES.join(', ')}`);
  if (!(AXES as readonly string[]).includes(about))
    throw new SheetFault(`${quote(about)} is no axis; there are: ${AXES.join(', ')}`);
  return { kind: 'draw', body: body as PlainBodyKind, of: checkName(of), about: about as Axis, at, note };
}
