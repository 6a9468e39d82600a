/** Paths of fields as people read them: takeoff.velocityMPerS.up, schedule.keys[3].deg. */
import { jsonText } from '../math/json-text.ts';

const PLAIN = /^[$A-Za-z_][A-Za-z0-9_-]*$/;
const LONGEST = 80;

/** A name that is not plain is quoted, so that it can neither break a line nor pretend to be a path. */
export function joinPath(path: string, key: string | number): string {
  if (typeof key === 'number') return `${path}[${key}]`;
  const short = key.length > LONGEST ? `${key.slice(0, LONGEST)}...` : key;
  if (!PLAIN.test(key)) return `${path}[${jsonText(short, 0)}]`;
  return path ? `${path}.${short}` : short;
}
