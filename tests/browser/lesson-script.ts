// A lesson as a script: what its steps press, write, draw and quote, in the order they are read. The words are those that the reader shows.
import { readdirSync, readFileSync } from 'node:fs';
import { type Inline, parseMarkdown } from '../../src/features/read/markdown.ts';

export type Act =
  | { readonly kind: 'press'; readonly name: string }
  | { readonly kind: 'key'; readonly key: string }
  | { readonly kind: 'write'; readonly text: string; readonly field?: string }
  | { readonly kind: 'draw'; readonly end: string; readonly to: number }
  | { readonly kind: 'says'; readonly quote: string };

export interface Step {
  /** as the reader counts them */
  readonly number: number;
  readonly acts: readonly Act[];
}

/** the forms of a step, each tried where the one before has ended */
const FORMS = new RegExp(
  [
    String.raw`[Ww]rite "(?<text>[^"]+)"(?: into \*\*(?<field>[^*]+)\*\*)?`,
    String.raw`[Dd]raw the end of \*\*(?<shape>[^*]+)\*\* to (?<to>[\d.]+) s`,
    String.raw`[Pp]ress (?<key>Enter|Escape|Home|End|[A-Z])(?![\w*])`,
    String.raw`\*\*(?<name>[^*]+)\*\*`,
    '"(?<quote>[^"]+)"',
  ].join('|'),
  'g',
);

function actOf(found: Readonly<Record<string, string | undefined>>): Act {
  const { text, field, key, shape, to, name, quote } = found;
  if (text !== undefined) return { kind: 'write', text, ...(field === undefined ? {} : { field }) };
  if (shape !== undefined) return { kind: 'draw', end: `${shape} ends`, to: Number(to) };
  if (key !== undefined) return { kind: 'key', key };
  if (name !== undefined) return { kind: 'press', name };
  return { kind: 'says', quote: quote ?? '' };
}

const written = (line: readonly Inline[]): string =>
  line.map(({ kind, text }) => (kind === 'bold' ? `**${text}**` : text)).join('');

export function parseSteps(markdown: string): Step[] {
  const blocks = parseMarkdown(markdown);
  const lists = blocks.flatMap((block) => (block.kind === 'list' && block.ordered ? [block.items] : []));
  if (lists.length !== 1) throw new Error(`a lesson has one list of steps, not ${lists.length}`);
  // what is quoted there is held against nothing
  const beside = blocks.flatMap((block) => (block.kind === 'paragraph' ? [written(block.line)] : [])).join(' ');
  const quoted = /"[^"]*"/.exec(beside)?.[0];
  if (quoted) throw new Error(`${quoted} is quoted outside the steps`);
  return lists[0].map((line, i) => {
    const step = written(line);
    const rest = step.replaceAll(FORMS, '');
    const [unknown] = /["*]|[Pp]ress (?:[A-Z]\S*|the \w+ arrow)/.exec(rest) ?? [];
    if (unknown) throw new Error(`step ${i + 1} has what is no form of a step: ${unknown}`);
    return { number: i + 1, acts: [...step.matchAll(FORMS)].map((found) => actOf(found.groups ?? {})) };
  });
}

const folder = new URL('../../docs/lessons/', import.meta.url);

/** By the names of their files; the three longer ones have tests of their own. */
export const listLessons = (reader: 'coach' | 'class' | 'lab'): string[] =>
  readdirSync(folder)
    .filter((name) => name.startsWith(`${reader}-`))
    .map((name) => name.slice(0, -'.md'.length));

export const readLesson = (name: string): string => readFileSync(new URL(`${name}.md`, folder), 'utf8');
