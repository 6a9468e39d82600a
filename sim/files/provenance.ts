/**
 * Where an output is from: program, call, input, tolerance, seed. Two runs give the same bytes, so there is no date and no clock in it.
 * One form for each kind of file: an object in JSON, lines that begin with "#" over a CSV, elements in MJCF and SVG. Fields: docs/outputs.md.
 */

import type { Athlete } from './athlete-schema.ts';
import { digestOfSkill } from './canonical.ts';
import type { SkillFile } from './skill-schema.ts';
import { VERSION } from './version.ts';

export interface InputOrigin {
  /** as it was given: an id, a file, a title */
  readonly name: string;
  /** of the canonical form (canonical.ts) */
  readonly sha256: string;
  /** the ready skill that it is, or that it was changed from; null: neither */
  readonly ready: { readonly id: string; readonly changed: boolean } | null;
}

export interface Provenance {
  readonly program: string;
  /** the command without where its outputs go and how its work is shared out, or what else made the output */
  readonly call: string;
  readonly inputs: readonly InputOrigin[];
  /** error a step of the integration may make, relative; of the flight's own, where a study flies coarser it is of that */
  readonly tolerance: number | null;
  /** null: nothing is drawn */
  readonly seed: number | null;
}

interface ReadySkill {
  readonly file: SkillFile;
  readonly athlete: Athlete;
}

/** Where an output is from, with the version of this program. */
export const provenance = (about: Omit<Provenance, 'program'>): Provenance => ({
  program: `Shapeflight ${VERSION}`,
  ...about,
});

/**
 * The origin of a skill. `ready`: the skills that come with the program, by id; a changed one is known by its title, which each has for
 * itself: under another title it is nobody's.
 */
export function originOfSkill(
  name: string,
  file: SkillFile,
  athlete: Athlete,
  ready: Readonly<Record<string, ReadySkill>>,
): InputOrigin {
  const sha256 = digestOfSkill(file, athlete);
  const found = Object.entries(ready).find(([, known]) => known.file.title === file.title);
  if (!found) return { name, sha256, ready: null };
  const [id, known] = found;
  return { name, sha256, ready: { id, changed: digestOfSkill(known.file, known.athlete) !== sha256 } };
}

/** What an input is, against the ready skills. */
const wordReady = ({ ready }: InputOrigin): string =>
  ready ? `${ready.changed ? 'changed from the ready skill' : 'the ready skill'} ${ready.id}` : '';

/** Name and value of each, the same in every form but JSON. */
export function provenancePairs({ program, call, inputs, tolerance, seed }: Provenance): [string, string][] {
  const plain = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');
  return [
    ['program', program],
    ['call', plain(call)],
    ...inputs.map((input): [string, string] => {
      const ready = wordReady(input);
      return ['input', `${plain(input.name)}, sha256 ${input.sha256}${ready && `, ${ready}`}`];
    }),
    ...(tolerance === null ? [] : [['tolerance', String(tolerance)] as [string, string]]),
    ...(seed === null ? [] : [['seed', String(seed)] as [string, string]]),
  ];
}

/** Lines over the line of names of a CSV. A comma or semicolon of a title begins a cell to a table program: no formula follows it. */
export const provenanceCsv = (from: Provenance): string =>
  provenancePairs(from)
    .map(([name, value]) => `# ${name}: ${value.replace(/([,;"]\s*)(?=[=+@＝＋＠－]|-(?![\d.]))/g, "$1'")}\n`)
    .join('');

/** One line of words, for the foot of a page or the comment field of a film. */
export const provenanceLine = (from: Provenance): string =>
  provenancePairs(from)
    .map(([name, value]) => (name === 'program' ? value : `${name} ${value}`))
    .join('; ');

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => ESCAPES[c]);

/** For the inside of an svg element. */
export const provenanceSvg = (from: Provenance): string => `<metadata>${escaped(provenanceLine(from))}</metadata>`;
