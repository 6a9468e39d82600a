/** Why a recording could not be read or studied, for people: where, what was there, what is wanted. */
import { wordFault } from '../../app/say/fault-words.ts';
import { recordingTexts as t } from './recording-words.ts';

const shown = (value: unknown): string => (typeof value === 'string' ? `“${value.slice(0, 80)}”` : String(value));

export function wordRecordingFault(error: unknown, name: string): string {
  if (error instanceof Error && error.name === 'FieldError' && 'field' in error && 'allowed' in error) {
    const { field, allowed, value } = error as Error & { field: unknown; allowed: unknown; value?: unknown };
    const where = String(field);
    // of the file itself its name is said already
    return where === name || where === ''
      ? t.notOne(name, shown(value), String(allowed))
      : t.damaged(where, shown(value), String(allowed));
  }
  return t.failed(name, wordFault(error));
}
