/**
 * Refuses JSON made to do harm before anything else looks at it: nested without end, or with field names that every
 * JavaScript object answers to. Walks with its own stack.
 */
import { FieldError } from '../math/field-error.ts';
import { joinPath } from './field-path.ts';

/** Deepest nesting of a file; a real one stays under 12. */
const DEEPEST = 40;

interface Place {
  readonly value: object;
  readonly path: string;
  readonly depth: number;
}

export function checkTame(json: unknown): void {
  const left: Place[] = [];
  const see = (value: unknown, path: string, depth: number): void => {
    if (typeof value === 'object' && value !== null) left.push({ value, path, depth });
  };
  see(json, '', 1);
  for (let at = left.pop(); at; at = left.pop()) {
    if (at.depth > DEEPEST)
      throw new FieldError('file', 'more levels', `at most ${DEEPEST} levels`, { kind: 'tooDeep', most: DEEPEST });
    const { value, path, depth } = at;
    if (Array.isArray(value)) {
      for (let i = 0; i < value.length; i++)
        if (typeof value[i] === 'object') see(value[i], joinPath(path, i), depth + 1);
      continue;
    }
    for (const [key, inner] of Object.entries(value)) {
      if (key in Object.prototype || key === 'prototype')
        throw new FieldError(joinPath(path, key), key, 'another field name', { kind: 'name' });
      see(inner, joinPath(path, key), depth + 1);
    }
  }
}
