/** Text to JSON. A syntax fault names line and column, a key that an object has twice its path. */
import { FieldError } from '../math/field-error.ts';
import { findJsonFault, findRepeatedKey } from './json-scan.ts';

/** A text as JSON, a byte order mark aside. Throws a FieldError with line and column of where it stops being JSON. */
export function parseJson(text: string): unknown {
  const plain = text.replace(/^\uFEFF/, '');
  let json: unknown;
  try {
    json = JSON.parse(plain);
  } catch {
    const { line, column, expected, found } = findJsonFault(plain);
    throw new FieldError(
      'file',
      `text that is not JSON from line ${line}, column ${column} on`,
      `${expected} there`,
      plain.trim() === '' ? { kind: 'empty' } : { kind: 'syntax', line, column, expected, found },
    );
  }
  const repeated = findRepeatedKey(plain);
  if (repeated) {
    const { path, line } = repeated;
    throw new FieldError(path, `a field that is there already (line ${line})`, 'each field once', {
      kind: 'repeated',
      line,
    });
  }
  return json;
}
