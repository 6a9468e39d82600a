/** A recording from the bytes of its file: the form by what it holds first, by the end of its name where that says nothing. */
import { nameOfBytes } from '../files/first-bytes.ts';
import { FieldError } from '../math/field-error.ts';
import { shownName } from './file-place.ts';
import { readBvhSteps } from './read-bvh.ts';
import { readC3dSteps } from './read-c3d.ts';
import { readTableSteps } from './read-table.ts';
import { readTrcSteps } from './read-trc.ts';
import type { Recording, RecordingKind } from './recording.ts';
import { RECORDING_LIMITS } from './recording-limits.ts';
import { type ReadSteps, runSteps } from './steps.ts';
import { findEncoding, TextLines } from './text-lines.ts';

const FORMS = 'a recording: BVH, TRC, C3D, or a table as CSV or TSV';

/** Reads a recording at once. Throws a FieldError that says where in the file what is wrong. */
export const readRecording = (name: string, bytes: Uint8Array): Recording => runSteps(readRecordingSteps(name, bytes));

/** The same with pauses of some milliseconds each, and how far it is. */
export function* readRecordingSteps(name: string, bytes: Uint8Array): ReadSteps<Recording> {
  const file = shownName(name) || 'recording';
  if (bytes.length === 0) throw new FieldError(file, 'an empty file', FORMS);
  if (bytes.length > RECORDING_LIMITS.bytes)
    throw new FieldError(
      file,
      `${Math.ceil(bytes.length / 1e6)} MB`,
      `at most ${RECORDING_LIMITS.bytes / 1e6} MB: cut it to the flight`,
    );
  const notes: string[] = [];
  if (isC3d(name, bytes)) return yield* readC3dSteps(file, bytes, notes);
  const foreign = nameForeign(bytes);
  if (foreign) throw new FieldError(file, foreign, FORMS);
  if (/\.c3d$/i.test(name)) throw new FieldError(`${file} byte 1`, bytes[1], '80, the mark of a C3D file');
  const encoding = yield* findEncoding(bytes);
  const start = new TextDecoder(encoding).decode(bytes.subarray(0, 4096));
  const kind = kindOf(name, start, file);
  if (encoding === 'windows-1252') notes.push('The text is not UTF-8: it is read as Windows-1252 (Western European).');
  const lines = new TextLines(file, bytes, encoding);
  switch (kind) {
    case 'bvh':
      return yield* readBvhSteps(file, lines, notes);
    case 'trc':
      return yield* readTrcSteps(file, lines, notes);
    default:
      return yield* readTableSteps(file, lines, notes);
  }
}

/** The second byte says it. A text with a "P" there has no zero byte; pictures have theirs in other places. */
function isC3d(name: string, bytes: Uint8Array): boolean {
  const head = bytes.subarray(0, 512);
  return head[1] === 0x50 && head[0] > 0 && head[0] < 0x80 && (head.includes(0) || /\.c3d$/i.test(name));
}

function nameForeign(bytes: Uint8Array): string | undefined {
  const head = bytes.subarray(0, 1024);
  const isUtf16 = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  if (isUtf16) return undefined;
  const isPlain = head.every((b) => b >= 32 || (b >= 9 && b <= 13));
  // letters such as "BM" begin a text as well
  const found = nameOfBytes(head);
  return found && (!isPlain || found === 'a PDF') ? found : undefined;
}

/** By the first words; a form that is named but not begun is read as that form, so that its reader says what is missing. */
function kindOf(name: string, start: string, file: string): RecordingKind {
  const text = start.replace(/^\uFEFF/, '').trimStart();
  if (text === '') throw new FieldError(file, 'a file without text', FORMS);
  if (/^hierarchy\b/i.test(text)) return 'bvh';
  if (/^pathfiletype\b/i.test(text)) return 'trc';
  if (/^[{[]/.test(text)) throw new FieldError(file, nameOfJson(text), FORMS);
  if (/^<(\?xml|!doctype|html|svg|[a-z][\w:-]*[\s>])/i.test(text))
    throw new FieldError(file, 'a page or data in XML', FORMS);
  if ([...text.slice(0, 1024)].some((c) => c < ' ' && !/[\t\n\v\f\r]/.test(c)))
    throw new FieldError(file, 'data that are no text', FORMS);
  const end = /\.([a-z0-9]+)$/i.exec(name)?.[1].toLowerCase();
  return end === 'bvh' || end === 'trc' ? end : 'table';
}

const OWN: ReadonlyMap<string, string> = new Map([
  ['shapeflight-skill', 'a skill file: open it as a skill'],
  ['shapeflight-athlete', 'an athlete file: open it as an athlete'],
  ['shapeflight-sheet', 'an estimate sheet'],
  ['shapeflight-worksheet', 'a worksheet'],
  ['shapeflight-recording-map', 'a map of a recording, and not the recording itself'],
]);

function nameOfJson(text: string): string {
  const format = /"format"\s*:\s*"([^"]{1,60})"/.exec(text)?.[1];
  return (format && OWN.get(format)) ?? 'data in JSON';
}
