/**
 * One quantity in two units, as people say it: 5 ft 3 in, 5'3", 1 m 62, 1 min 30 s. What could mean two things is asked.
 */
import { sameDimension } from './dimension.ts';
import type { Unit } from './expression.ts';
import { quote, rewrite, SheetFault } from './sheet-fault.ts';
import type { LineToken } from './tokens.ts';

/** The unit that a bare number after this one is in. */
const NEXT: Readonly<Record<string, string>> = { ft: 'inch', stone: 'lb', lb: 'oz', min: 's', hour: 'min', m: 'cm' };
const SHOWN: Readonly<Record<string, string>> = { inch: 'in' };

interface Part {
  readonly number: LineToken;
  readonly unit: Unit;
}
export interface Compound {
  readonly parts: readonly Part[];
  /** how many tokens it takes */
  readonly length: number;
}

/** The unit a token is, where no line of the sheet has its name. */
export type FindUnit = (token: LineToken | undefined) => Unit | undefined;

/** A quantity in two or more units from token i on; undefined where there is a number with one unit or none. */
export function readCompound(tokens: readonly LineToken[], i: number, find: FindUnit): Compound | undefined {
  const parts: Part[] = [];
  let at = i;
  while (tokens[at]?.kind === 'number') {
    const number = tokens[at];
    let unit = find(tokens[at + 1]);
    const before = parts.at(-1);
    if (before && !unit) {
      const next = tokens[at + 1];
      if (next && next.kind !== 'sign') break;
      if (next?.text === '^') break;
      unit = nextUnit(before, number, find);
      at -= 1;
    }
    if (!unit || (before && !sameDimension(before.unit.dimension, unit.dimension))) break;
    if (tokens[at + 2]?.text.startsWith('^')) break;
    if (before) checkPart(before, { number, unit }, tokens[i], tokens[at + 1] ?? number);
    parts.push({ number, unit });
    at += 2;
  }
  return parts.length > 1 ? { parts, length: at - i } : undefined;
}

function nextUnit({ number: first, unit }: Part, number: LineToken, find: FindUnit): Unit | undefined {
  const name = NEXT[unit.name];
  if (name === undefined) return undefined;
  if (unit.name === 'm' && !/^\d\d$/.test(number.text)) {
    const typed = `${first.typed} m ${number.typed}`;
    if (!/^\d$/.test(number.text)) return undefined;
    const readings = [`${first.text}.0${number.text} m`, `${first.text}.${number.text} m`];
    throw new SheetFault(
      `${readings[0]} or ${readings[1]}? Write one of them.`,
      typed,
      readings.map((by) => rewrite(typed, by)),
    );
  }
  return find({ kind: 'word', text: name, typed: name, at: number.at });
}

function checkPart(before: Part, part: Part, first: LineToken, last: LineToken): void {
  const ratio = before.unit.factor / part.unit.factor;
  const small = SHOWN[part.unit.name] ?? part.unit.name;
  if (!(ratio > 1) || before.number.text.includes('.')) {
    throw new SheetFault(
      `Two quantities side by side: ${quote(before.number.typed)} and ${quote(part.number.typed)}. Write + or * between them.`,
      part.number.typed,
    );
  }
  const most = Math.round(ratio * 1e6) / 1e6;
  if (Number(part.number.text) >= most)
    throw new SheetFault(
      `After ${before.unit.name} comes a number of ${small} under ${Math.ceil(most)}; here it is ${part.number.typed}.`,
      part.number.typed,
    );
  if (last.at < first.at) throw new SheetFault('Two quantities side by side.', part.number.typed);
}
