/** An estimate sheet as a file: JSON, or plain text whose first line is "# title". docs/estimate.md explains the lines. */

import * as v from 'valibot';
import { FieldError } from '../math/field-error.ts';
import { jsonText } from '../math/json-text.ts';
import { check } from './check-schema.ts';
import { may, say, schemaLink, text } from './schema-parts.ts';
import { checkTame } from './tame-json.ts';

const SHEET_FORMAT = 'shapeflight-sheet';
const SHEET_VERSION = 1;
/** As many as a sheet computes, and as long (sim/estimate/limits.ts; a test holds the two together). */
const SHEET_LINES = 200;
export const SHEET_LINE_LENGTH = 400;

const part = {
  title: say(text(200), 'Name of the sheet.'),
  lesson: may(text(2000), 'What is to be learnt from it.'),
  lines: say(
    v.pipe(
      v.array(text(SHEET_LINE_LENGTH), 'a list of lines'),
      v.maxLength(SHEET_LINES, `a list of at most ${SHEET_LINES} lines`),
    ),
    'Its lines: formulas with units, or text after #.',
  ),
};
/** A sheet without the head of a file, as a skill file may hold it. */
export const sheetPartSchema = v.strictObject(part);
export const sheetSchema = v.strictObject({
  $schema: schemaLink,
  format: say(v.literal(SHEET_FORMAT, `"${SHEET_FORMAT}"`), 'Says what the file is.'),
  version: say(v.literal(SHEET_VERSION, String(SHEET_VERSION)), 'Version of this form.'),
  skill: may(text(100), 'Id of a ready skill that it goes well with.'),
  ...part,
});

export type SheetPart = v.InferOutput<typeof sheetPartSchema>;
export type SheetFile = v.InferOutput<typeof sheetSchema>;

/** The sheet of a skill file as one of its own. */
export const sheetOfPart = ({ title, lesson, lines }: SheetPart): SheetFile => ({
  format: SHEET_FORMAT,
  version: SHEET_VERSION,
  title,
  ...(lesson === undefined ? {} : { lesson }),
  lines,
});

/** A sheet file, checked. Throws a FieldError with path, value and what is allowed. */
export function parseSheet(json: unknown): SheetFile {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const { format } = json as Record<string, unknown>;
  if (format !== SHEET_FORMAT) throw new FieldError('format', format, `"${SHEET_FORMAT}"`);
  return check(sheetSchema, json);
}

/** Plain text: every line a line of the sheet; a first line "# title" is its title. */
export function parseSheetText(plain: string): SheetFile {
  const lines = plain.replace(/^\uFEFF/, '').split(/\r\n|[\n\r]/);
  while (lines.length > 0 && lines[lines.length - 1].trim() === '') lines.pop();
  const title = /^#\s*(\S.*)$/.exec(lines[0] ?? '')?.[1].trim();
  const rest = title === undefined ? lines : lines.slice(1);
  while (rest[0]?.trim() === '') rest.shift();
  return parseSheet({ format: SHEET_FORMAT, version: SHEET_VERSION, title: title ?? 'Sheet', lines: rest });
}

/** A sheet as the text of its file. */
export const formatSheet = (sheet: SheetFile): string => `${jsonText(sheet)}\n`;
