/** What an input is known by: SHA-256 of its canonical form, which is the same on page and command line and however the file is laid out. */
import { sha256 } from '../math/sha256.ts';
import type { Athlete } from './athlete-schema.ts';
import type { SkillFile } from './skill-schema.ts';

/** JSON with sorted names, no space, shortest numbers (RFC 8785, 2020); its UTF-8 is hashed. */
function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((x) => canonicalJson(x ?? null)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).filter(([, x]) => x !== undefined);
  fields.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([name, x]) => `${JSON.stringify(name)}:${canonicalJson(x)}`).join(',')}}`;
}

/** SHA-256 of any plain JSON in its canonical form, 64 hexadecimal digits. */
export const digestOf = (json: object): string => sha256(new TextEncoder().encode(canonicalJson(json)));

/**
 * SHA-256 of what a skill file makes fly: the file in version 2 with its athlete written in, without its sheets, recordings and link to
 * the schema, which change nothing of it. `athlete`: the one written in, or that its reference leads to.
 */
export function digestOfSkill(file: SkillFile, athlete: Athlete): string {
  const { $schema: _, worksheets: _sheets, recordings: _recordings, ...flown } = file;
  return digestOf({ ...flown, athlete });
}
