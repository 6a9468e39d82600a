/** Faults of an athlete's body by the fields of the file it is in: one that is the athlete alone has no "athlete" over them. */
import { FieldError } from '../math/field-error.ts';

/** `json`: of the file; `make`: makes the body of it. */
export function inAthleteFile<T>(json: unknown, make: () => T): T {
  try {
    return make();
  } catch (error) {
    const isBare = typeof json === 'object' && json !== null && !('format' in json);
    if (!isBare || !(error instanceof FieldError)) throw error;
    throw new FieldError(error.field.replace(/^athlete\./, ''), error.value, error.allowed, error.detail);
  }
}
