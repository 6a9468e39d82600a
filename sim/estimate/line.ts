/**
 * One line of a sheet, read. The form is our own and is taken apart here, before any formula reaches the parser of
 * formulas:
 *
 *   name = formula [+- spread] [to unit] [vs formula with {readouts}] [if assumption, free text] [# note]
 *   draw disc for name [with mass] [about lateral] [at apex]
 *   # words
 *
 * The "+-" has to be read here: to the parser alone "0.15 m +- 0.02 m" is a difference.
 */
import { LONGEST_LINE, LONGEST_NAME } from './limits.ts';
import { PLAIN_BODIES, type PlainBodyKind } from './plain-body.ts';
import { quote, SheetFault } from './sheet-fault.ts';
import { type LineToken, tokenize } from './tokens.ts';

export interface QuantityLine {
  readonly kind: 'quantity';
  readonly name: string;
  readonly formula: readonly LineToken[];
  readonly spread?: { readonly tokens: readonly LineToken[]; readonly relative: boolean };
  readonly unit?: readonly LineToken[];
  readonly against?: Against;
  /** known ones, and free text */
  readonly assumptions: readonly string[];
  readonly note: string;
}
/** What the line is set against: a formula of readouts. */
interface Against {
  readonly tokens: readonly LineToken[];
  /** as it is shown: one readout without its braces */
  readonly text: string;
}
export interface DrawLine {
  readonly kind: 'draw';
  readonly body: PlainBodyKind;
  readonly of: string;
  /** a mass of its own */
  readonly mass?: readonly LineToken[];
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

const NAME = /^[\p{L}][\p{L}\p{M}\p{Nd}\p{Nl}_₀-₉]*$/u;
/** Words of the line, and names that every object answers to. */
const TAKEN = new Set(
  'to vs if in mod and or xor not end true false null undefined Infinity NaN pi draw constructor prototype toString valueOf hasOwnProperty isPrototypeOf propertyIsEnumerable toLocaleString'.split(
    ' ',
  ),
);

export function parseLine(given: string): Line {
  if (given.length > LONGEST_LINE)
    throw new SheetFault(`The line has ${given.length} letters; at most ${LONGEST_LINE}.`);
  const text = given.normalize('NFC');
  const hash = text.indexOf('#');
  const note = hash < 0 ? '' : text.slice(hash + 1).trim();
  const typed = (hash < 0 ? text : text.slice(0, hash)).trim();
  if (typed === '') return { kind: 'words', text: note };
  return /^draw\s/.test(typed) ? parseDraw(typed, note) : parseQuantity(typed, note);
}

/** A name a line may give to its quantity. */
export function checkName(name: string): string {
  if (TAKEN.has(name))
    throw new SheetFault(`${quote(name)} is a word with a meaning of its own; choose another name.`, name);
  if (!NAME.test(name) || name.length > LONGEST_NAME)
    throw new SheetFault(
      `${quote(name)} is no name; a name is one word of letters, digits and _, at most ${LONGEST_NAME}.`,
      name,
    );
  return name;
}

/** What a name is, known before the rest of the line is read: so that a line with a fault is still a name. */
export function nameOf(given: string): string | undefined {
  const equals = given.indexOf('=');
  if (equals < 0) return undefined;
  const found = given.slice(0, equals).normalize('NFC').trim();
  return NAME.test(found) && !TAKEN.has(found) ? found : undefined;
}

function parseQuantity(typed: string, note: string): QuantityLine {
  const equals = typed.indexOf('=');
  if (equals < 0) throw new SheetFault('A line is "name = formula"; the = is missing.');
  const name = checkName(typed.slice(0, equals).trim());
  const { tokens, rest } = tokenize(typed.slice(equals + 1));
  const second = tokens.find((t) => t.kind === 'sign' && t.text === '=');
  if (second) throw new SheetFault('One line holds one =.', '=');
  const said = rest === undefined ? undefined : splitIf(rest);
  const tails = splitTails([...tokens, ...(said?.tokens ?? [])]);
  return {
    kind: 'quantity',
    name,
    ...splitSpread(tails.head),
    ...(tails.to ? { unit: tails.to } : {}),
    ...(tails.vs ? { against: readAgainst(tails.vs) } : {}),
    assumptions: said?.assumptions ?? [],
    note,
  };
}

/** After "if" anything may be written; only a "vs" with braces ends it. */
function splitIf(rest: string): { readonly assumptions: string[]; readonly tokens: readonly LineToken[] } {
  const vs = /(?<![\p{L}\p{N}_])vs(?![\p{L}\p{N}_])(?=.*\{)/u.exec(rest);
  const text = vs ? rest.slice(0, vs.index) : rest;
  const assumptions = text
    .split(',')
    .map((part) => part.trim().replace(/\s+/g, ' '))
    .filter((part) => part !== '');
  if (assumptions.length === 0) throw new SheetFault('After "if" comes what the line takes for granted.', 'if');
  return { assumptions, tokens: vs ? tokenize(rest.slice(vs.index)).tokens : [] };
}

function splitTails(tokens: readonly LineToken[]): { head: LineToken[]; to?: LineToken[]; vs?: LineToken[] } {
  const parts: { head: LineToken[]; to?: LineToken[]; vs?: LineToken[] } = { head: [] };
  let now = parts.head;
  for (const t of tokens) {
    if (t.kind !== 'word' || (t.text !== 'to' && t.text !== 'vs')) {
      now.push(t);
      continue;
    }
    if (parts[t.text]) throw new SheetFault(`"${t.text}" is twice in this line.`, t.text);
    now = [];
    parts[t.text] = now;
  }
  for (const word of ['to', 'vs'] as const)
    if (parts[word]?.length === 0) throw new SheetFault(`Something has to follow "${word}".`, word);
  return parts;
}

function splitSpread(head: readonly LineToken[]): Pick<QuantityLine, 'formula' | 'spread'> {
  const isSpread = (t: LineToken): boolean => t.kind === 'sign' && t.text === '+-';
  const at = head.findIndex(isSpread);
  if (at < 0) {
    if (head.length === 0) throw new SheetFault('The formula is missing.');
    return { formula: head };
  }
  const formula = head.slice(0, at);
  const spread = head.slice(at + 1);
  if (spread.some(isSpread)) throw new SheetFault('"+-" is there twice; a line has one uncertainty.', '+-');
  const depth = formula.reduce((d, t) => d + (t.text === '(' ? 1 : t.text === ')' ? -1 : 0), 0);
  if (depth !== 0)
    throw new SheetFault('"+-" says how uncertain a whole line is; give the part in brackets a line of its own.', '+-');
  if (formula.length === 0 || spread.length === 0)
    throw new SheetFault('"+-" goes between a value and its uncertainty.', '+-');
  const relative = spread.at(-1)?.text === '%';
  return { formula, spread: { tokens: relative ? spread.slice(0, -1) : spread, relative } };
}

function readAgainst(tokens: readonly LineToken[]): Against {
  if (!tokens.some((t) => t.kind === 'link'))
    throw new SheetFault('After "vs" comes a readout in braces, as {air time}, or a formula with one.', 'vs');
  const [first] = tokens;
  const text = tokens.length === 1 ? first.text : tokens.map((t) => t.typed).join(' ');
  return { tokens, text };
}

function parseDraw(typed: string, note: string): DrawLine {
  const found = /^draw\s+([a-z ]+?)\s+for\s+(\S+)(?:\s+with\s+(.+?))?(?:\s+about\s+(\S+))?(?:\s+at\s+(.+))?$/.exec(
    typed,
  );
  if (!found)
    throw new SheetFault(
      'A drawing is "draw disc for inertia", with "with 2.7 kg", "about lateral" and "at apex" if wanted.',
    );
  const [, body, of, mass, about = 'lateral', at = 'apex'] = found;
  if (!(PLAIN_BODIES as readonly string[]).includes(body))
    throw new SheetFault(`${quote(body)} is no plain body; there are: ${PLAIN_BODIES.join(', ')}.`, body);
  if (!(AXES as readonly string[]).includes(about))
    throw new SheetFault(`${quote(about)} is no axis; there are: ${AXES.join(', ')}.`, about);
  return {
    kind: 'draw',
    body: body as PlainBodyKind,
    of: checkName(of),
    ...(mass === undefined ? {} : { mass: tokenize(mass).tokens }),
    about: about as Axis,
    at,
    note,
  };
}
