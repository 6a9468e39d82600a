/** Where in a file something is, for errors and notes; names of files and points as they can be shown. */
import { FieldError } from '../math/field-error.ts';
import { RECORDING_LIMITS } from './recording-limits.ts';

/** One line of text in the order it is read, cut to what a message has room for. */
export function shownName(text: string, most = 60): string {
  const plain = text
    .slice(0, 4 * most)
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return plain.length > most ? `${plain.slice(0, most - 3)}...` : plain;
}

export const atLine = (file: string, line: number, what = ''): string =>
  `${file} line ${line}${what ? ` ${what}` : ''}`;

/** The name of a point, a joint or a column: no control characters, no spaces around it. */
export function checkName(field: string, text: string): string {
  const plain = text.replace(/[\p{Cc}\u2028\u2029]/gu, ' ').trim();
  if (plain.length > RECORDING_LIMITS.name)
    throw new FieldError(field, plain, `names of at most ${RECORDING_LIMITS.name} characters`);
  return plain;
}

/** Names that are there already get a number behind them; `said` lists them. */
export function makeUnique(names: readonly string[], what: string, notes: string[]): string[] {
  const taken = new Set<string>();
  const repeated = new Set<string>();
  const next = new Map<string, number>();
  const out = names.map((name) => {
    let own = name;
    for (let k = next.get(name) ?? 2; taken.has(own); k++) {
      own = `${name} (${k})`;
      next.set(name, k + 1);
      repeated.add(name);
    }
    taken.add(own);
    return own;
  });
  if (repeated.size > 0)
    notes.push(
      `More than one ${what} is named ${listNames([...repeated])}: the later ones have a number behind the name.`,
    );
  return out;
}

/** Up to five names, and how many there are besides. */
export function listNames(names: readonly string[]): string {
  const shown = names.slice(0, 5).map((name) => `"${shownName(name, 40)}"`);
  return names.length > 5 ? `${shown.join(', ')} and ${names.length - 5} more` : shown.join(', ');
}
