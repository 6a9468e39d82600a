/**
 * The difference between two plain JSON documents, as a list of changed places. Undo is made of these: small, readable,
 * reversible, and safe to store.
 */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Step = string | number;
/** One changed place; a missing `before` or `after` means the place did not exist. */
interface Change {
  readonly path: readonly Step[];
  readonly before?: Json;
  readonly after?: Json;
}
export type Difference = readonly Change[];

type Branch = Record<Step, Json>;
const isBranch = (v: Json | undefined): v is Branch & Json => typeof v === 'object' && v !== null;

/** Changes that turn `a` into `b`. Lists of different length are replaced whole. */
export function calcDifference(a: Json, b: Json, path: readonly Step[] = []): Change[] {
  if (a === b) return [];
  const comparable =
    isBranch(a) &&
    isBranch(b) &&
    Array.isArray(a) === Array.isArray(b) &&
    (!Array.isArray(a) || a.length === (b as Json[]).length);
  if (!comparable) return [{ path, before: a, after: b }];
  const changes: Change[] = [];
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const at = [...path, Array.isArray(a) ? Number(key) : key];
    // own places only: a key may be called valueOf
    const x = Object.hasOwn(a, key) ? (a as Branch)[key] : undefined;
    const y = Object.hasOwn(b, key) ? (b as Branch)[key] : undefined;
    if (x === undefined) changes.push({ path: at, after: y });
    else if (y === undefined) changes.push({ path: at, before: x });
    else changes.push(...calcDifference(x, y, at));
  }
  return changes;
}

/** A new document with the changes made ('after') or taken back ('before'). */
export function applyDifference<T>(doc: T, changes: Difference, to: 'before' | 'after'): T {
  let out = doc as Json;
  for (const change of changes) out = setPlace(out, change.path, change[to]);
  return out as T;
}

function setPlace(node: Json, path: readonly Step[], value: Json | undefined): Json {
  if (path.length === 0) return value as Json;
  const [head, ...rest] = path;
  // lists of different length are replaced whole; a place far behind the end would make one of that length
  if (Array.isArray(node) && !(Number(head) < node.length))
    throw new RangeError(`there is no place ${head} in the list`);
  const copy = (Array.isArray(node) ? [...node] : { ...(node as Branch) }) as Branch;
  const next = rest.length > 0 ? setPlace(copy[head], rest, value) : value;
  if (next === undefined) delete copy[head];
  // defined, not assigned: a key may be called __proto__
  else Object.defineProperty(copy, head, { value: next, enumerable: true, configurable: true, writable: true });
  return copy as Json;
}
