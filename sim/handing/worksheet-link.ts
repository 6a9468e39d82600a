/** A worksheet as the fragment of an address, and back: "w1." and letters, as a skill's (link.ts). Handed in, it goes the same way. */
import { parseJson } from '../files/parse-json.ts';
import { fileOfWorksheet, parseWorksheet, type Worksheet, worksheetHead } from '../files/worksheet-file.ts';
import { FieldError } from '../math/field-error.ts';
import { LinkError } from './link-error.ts';
import { packText, unpackText } from './pack.ts';

const FORM = 1;

/** The fragment without its "#". Throws a LinkError for a worksheet that is too long. */
export function writeWorksheetLink(worksheet: Worksheet): string {
  const { format: _, version: _1, ...fields } = fileOfWorksheet(worksheet);
  return packText(`w${FORM}.`, JSON.stringify(fields));
}

/** A text that may be such a link: an address with its fragment, or the fragment alone, also where it was cut or changed on its way. */
export const isWorksheetLink = (text: string): boolean => /(^|#)w\d{1,6}\./.test(text.trim());

/** Throws a LinkError; nothing of what is read is used before all of it is checked. */
export function readWorksheetLink(text: string): Worksheet {
  const from = /(?:^\s*|#)w(\d{1,6})\./.exec(text);
  const version = Number(from?.[1]);
  if (version > FORM) throw new LinkError({ kind: 'newer', version });
  if (!from || version !== FORM) throw new LinkError({ kind: 'none' });
  const packed = unpackText(text, from.index + from[0].length);
  try {
    const fields = parseJson(packed);
    if (typeof fields !== 'object' || fields === null || Array.isArray(fields))
      throw new FieldError('link', fields, 'a JSON object');
    return parseWorksheet({ ...fields, ...worksheetHead });
  } catch (error) {
    throw error instanceof FieldError ? new LinkError({ kind: 'content', reason: error.message }, error) : error;
  }
}
