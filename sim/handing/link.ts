/**
 * A skill as the fragment of an address, and back: "1." and letters (letters.ts) of the skill file as JSON, deflated against the
 * dictionary of this form. Nothing of it needs a server. docs/hand-on.md gives it for other programs.
 */
import { checkSkillFile } from '../files/check-skill.ts';
import { parseJson } from '../files/parse-json.ts';
import { SKILL_FORMAT, type SkillFile } from '../files/skill-schema.ts';
import { FieldError } from '../math/field-error.ts';
import { type Handed, type Kept, listChanges, nameless, noteOf, usualMass } from './kept-back.ts';
import { LinkError } from './link-error.ts';
import { packText, unpackText } from './pack.ts';

const FORM = 1;
const KEPT: readonly Kept[] = ['name', 'age', 'mass'];

/** The fragment without its "#". Throws a LinkError for a skill that is too long. */
export function writeSkillLink({ file, kept }: Handed): string {
  return packText(`${FORM}.`, JSON.stringify(withoutKept(file, kept)));
}

interface Payload {
  readonly kept?: readonly Kept[];
  readonly skill: object;
}

function withoutKept(file: SkillFile, kept: readonly Kept[]): Payload {
  const { format: _, note, athlete, ...skill } = file;
  const bare: Record<string, unknown> = { ...athlete };
  if (kept.includes('name')) delete bare.name;
  if (kept.includes('mass')) delete bare.massKg;
  const said = noteOf(undefined, listChanges(kept, file));
  const own = note === undefined || said === undefined ? note : note.slice(0, -said.length).trim();
  return {
    ...(kept.length > 0 ? { kept } : {}),
    skill: { ...skill, ...(own ? { note: own } : {}), athlete: bare },
  };
}

/** A text that may be a link: an address with such a fragment, or the fragment alone. */
export const isSkillLink = (text: string): boolean => /(^|#)\d{1,6}\.[\w-]{30,}/.test(text.trim());

/** An address with its fragment, or that alone. Throws a LinkError; nothing of what is read is used before all of it is checked. */
export function readSkillLink(text: string): Handed {
  const from = /(?:^\s*|#)(\d{1,6})\./.exec(text);
  if (!from) throw new LinkError({ kind: 'none' });
  const version = Number(from[1]);
  if (version > FORM) throw new LinkError({ kind: 'newer', version });
  if (version !== FORM) throw new LinkError({ kind: 'none' });
  return readPayload(unpackText(text, from.index + from[0].length));
}

const content = (reason: string, cause?: Error): LinkError => new LinkError({ kind: 'content', reason }, cause);

function readPayload(text: string): Handed {
  try {
    const { kept = [], skill, ...rest } = objectOf(parseJson(text), 'link');
    const [unknown] = Object.keys(rest);
    if (unknown !== undefined) throw new FieldError(unknown, rest[unknown], 'kept, skill', { kind: 'unknown' });
    if (!isKept(kept)) throw new FieldError('kept', kept, 'a list of name, age, mass, each at most once');
    const { athlete, note, ...own } = objectOf(skill, 'skill');
    const bare = objectOf(athlete, 'athlete');
    // a version 1 file has its phases elsewhere; what is said of them is for the present form
    const file = checkSkillFile({
      format: SKILL_FORMAT,
      ...own,
      ...(note === undefined ? {} : { note }),
      athlete: { ...bare, ...madeUp(bare, kept) },
    });
    const changes = listChanges(kept, file);
    const said = noteOf(file.note, changes);
    return { file: said === undefined ? file : { ...file, note: said }, kept, changes };
  } catch (error) {
    throw error instanceof FieldError ? content(error.message, error) : error;
  }
}

/** What was kept back, in the words and numbers that take its place. */
function madeUp(bare: Record<string, unknown>, kept: readonly Kept[]): Record<string, unknown> {
  const { kind, statureM } = bare;
  const stature = typeof statureM === 'number' ? statureM : 0;
  return {
    ...(kept.includes('name')
      ? { name: nameless(kind === 'tree' ? { kind } : { kind: 'human', statureM: stature }) }
      : {}),
    ...(kept.includes('mass') ? { massKg: usualMass(stature) } : {}),
  };
}

const isKept = (value: unknown): value is readonly Kept[] =>
  Array.isArray(value) && new Set(value).size === value.length && value.every((one) => KEPT.includes(one as Kept));

function objectOf(value: unknown, field: string): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new FieldError(field, value, 'a JSON object');
  return value as Record<string, unknown>;
}
