/** Checks JSON against a schema; the first fault comes out as a FieldError with path, value and what is allowed. `page`: where its fields are explained. */
import * as v from 'valibot';
import { FieldError } from '../math/field-error.ts';
import { joinPath } from './field-path.ts';

export function check<S extends v.GenericSchema>(
  schema: S,
  json: unknown,
  page = 'docs/skill-file.md',
): v.InferOutput<S> {
  const result = v.safeParse(schema, json, { abortEarly: true });
  if (!result.success) throw missingOf(schema, json, result.issues[0], page) ?? faultOf(result.issues[0], '', page);
  checkLists(json, result.output, '');
  return result.output;
}

type Issue = v.BaseIssue<unknown>;

/** Of the package, where a schema says nothing itself: of a record. */
const OWN_WORDS = /^Invalid /;

/** A field that is missing: what it would have to be is what its place says of a null in it. */
function missingOf(schema: v.GenericSchema, json: unknown, issue: Issue, page: string): FieldError | undefined {
  const fault = faultOf(issue, '', page);
  if (fault.value !== undefined) return undefined;
  const filled: unknown = structuredClone(json);
  let at: unknown = filled;
  const keys = keysOf(issue);
  keys.forEach((key, i) => {
    if (typeof at !== 'object' || at === null) return;
    const holder = at as Record<string, unknown>;
    if (i === keys.length - 1) holder[String(key)] = null;
    else at = holder[String(key)];
  });
  const again = v.safeParse(schema, filled, { abortEarly: true });
  if (again.success) return undefined;
  const { field, allowed } = faultOf(again.issues[0], '', page);
  return field === fault.field ? new FieldError(field, undefined, allowed) : undefined;
}

/** The way to the fault that is said, through the alternatives that were meant. */
function keysOf(issue: Issue): unknown[] {
  const keys = (issue.path ?? []).map(({ key }) => key);
  const closer = closest(issue);
  return closer ? [...keys, ...keysOf(closer)] : keys;
}

function faultOf(issue: Issue, before: string, page: string): FieldError {
  const list = listOf(issue, before);
  if (list) return list;
  const field = pathOf(issue, before);
  const closer = closest(issue);
  if (closer) return faultOf(closer, field, page);
  if (isUnknown(issue))
    return new FieldError(field, 'this unknown field', `only the fields of ${page}`, { kind: 'unknown' });
  const isMissing = issue.received === 'undefined';
  // a missing one is said by what its place needs
  const object = isMissing ? 'a value' : 'an object';
  const allowed = issue.type === 'strict_object' || OWN_WORDS.test(issue.message) ? object : issue.message;
  return new FieldError(field, isMissing ? undefined : issue.input, allowed);
}

/** A list has fields of its own to JavaScript, as "keys": one in the place of an object is the fault, not what it has for them. */
function listOf({ path }: Issue, before: string): FieldError | undefined {
  let field = before;
  for (const { key, input } of path ?? []) {
    if (Array.isArray(input) && typeof key !== 'number') return new FieldError(field, input, 'an object');
    field = joinPath(field, typeof key === 'number' ? key : String(key));
  }
  return undefined;
}

/** Of a union, the fault of the alternative that was meant; undefined where that is not clear. */
function closest(issue: Issue): Issue | undefined {
  const inner = (issue.issues ?? []) as readonly Issue[];
  const best = Math.max(-1, ...inner.map(nearness));
  const nearest = inner.filter((i) => nearness(i) === best);
  return best > 0 && nearest.length === 1 ? nearest[0] : undefined;
}

/** How far an alternative came: not at all, its own field is missing, a field too many, a fault inside. */
function nearness(issue: Issue): number {
  const depth = issue.path?.length ?? 0;
  if (depth === 0) return closest(issue) ? 2 : -1;
  if (depth === 1 && issue.received === 'undefined') return 0;
  if (depth === 1 && isUnknown(issue)) return 1;
  return 1 + depth;
}

const isUnknown = (issue: Issue): boolean => issue.type === 'strict_object' && issue.expected === 'never';

function pathOf(issue: Issue, before: string): string {
  return (issue.path ?? []).reduce(
    (path, { key }) => joinPath(path, typeof key === 'number' ? key : String(key)),
    before,
  );
}

/** A list is an object to JavaScript; here it is one only where a list is asked for. */
function checkLists(input: unknown, output: unknown, path: string): void {
  if (typeof input !== 'object' || input === null || typeof output !== 'object' || output === null) return;
  if (Array.isArray(input) !== Array.isArray(output)) throw new FieldError(path, input, 'an object');
  if (Array.isArray(input) && Array.isArray(output))
    for (let i = 0; i < input.length; i++) {
      if (typeof input[i] === 'object') checkLists(input[i], output[i], joinPath(path, i));
    }
  else
    for (const [key, inner] of Object.entries(input))
      checkLists(inner, (output as Record<string, unknown>)[key], joinPath(path, key));
}
