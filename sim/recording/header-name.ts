/** A header taken apart: words, side, unit; whatever its spelling ("kneeFlexionL", "knee_flexion_l", "Left knee flexion [deg]"). */
import type { RecordedColumn } from './recording.ts';

interface HeaderName {
  /** words in small letters, without side and unit */
  readonly words: readonly string[];
  readonly side: 'L' | 'R' | '';
  /** as stated in brackets or as the last word; small letters */
  readonly unit: string | undefined;
}

const SIDES: Readonly<Record<string, 'L' | 'R'>> = { l: 'L', lt: 'L', left: 'L', r: 'R', rt: 'R', right: 'R' };
const UNITS = /^(?:rad|radians?|deg|degrees?|°|m|cm|mm)$/;
/** Before a name it says only that a joint angle follows. */
const PREFIXES = /^(?:q|angle|ang|joint)$/;
const FILLERS = /^(?:of|the|angle|joint)$/;

/** Words apart by signs, spaces and capitals. */
function wordsOf(name: string): string[] {
  return name
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replace(/([A-Z])([A-Z][a-z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}°]+/u)
    .filter((word) => word !== '');
}

export function headerOf({ name, unit }: Pick<RecordedColumn, 'name' | 'unit'>): HeaderName {
  let words = wordsOf(name);
  let said = unit?.toLowerCase();
  const last = words.at(-1);
  // "rad_s" is a rate: "s" stays, and nothing is named so
  if (said === undefined && last !== undefined && words.length > 1 && UNITS.test(last)) {
    said = last;
    words = words.slice(0, -1);
  }
  if (words.length > 1 && PREFIXES.test(words[0])) words = words.slice(1);
  words = words.filter((word) => !FILLERS.test(word));
  const at = words.findIndex((word) => Object.hasOwn(SIDES, word));
  const side = at < 0 ? '' : SIDES[words[at]];
  return { words: at < 0 ? words : words.filter((_, k) => k !== at), side, unit: said };
}

/** How a name is looked up: words run together and its side, so that "plantarflexion" and "plantar flexion" are one. */
export const keyOf = (words: readonly string[], side: string): string => `${words.join('')}|${side}`;

/** The keys under which a header may be known: as it is, its words in another order, its side run together with it. */
export function keysOf({ words, side }: HeaderName): string[] {
  const joined = words.join('');
  const keys = [keyOf(words, side), sortedKey(words, side)];
  if (side === '' && /^[lr]./.test(joined)) keys.push(`${joined.slice(1)}|${joined[0].toUpperCase()}`);
  if (side === '' && /.[lr]$/.test(joined)) keys.push(`${joined.slice(0, -1)}|${joined.slice(-1).toUpperCase()}`);
  return keys;
}

export const sortedKey = (words: readonly string[], side: string): string => `~${[...words].sort().join('')}|${side}`;
