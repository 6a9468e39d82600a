// What a code is refused with.
import { expect } from 'vitest';
import { FieldError } from '../../sim/index.ts';

export function refusalOf(parse: () => unknown): FieldError {
  let caught: unknown;
  try {
    parse();
  } catch (error) {
    caught = error;
  }
  expect(caught).toBeInstanceOf(FieldError);
  return caught as FieldError;
}
