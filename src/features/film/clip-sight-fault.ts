/** Why no camera is found for what was marked, in the names that the page has for it. Errors of sim are known by their names. */
import { wordFault } from '../../app/say/fault-words.ts';
import { clipTexts as t } from './clip-words.ts';

interface Said extends Error {
  readonly field: string;
  readonly value: unknown;
  readonly allowed: string;
}
const isOfField = (error: unknown): error is Said => error instanceof Error && error.name === 'FieldError';

const NAMES: Readonly<Record<string, string>> = {
  'scale.corners': t.set.plane,
  'scale.from': t.crosses.from,
  'scale.to': t.crosses.to,
  'scale.lengthM': t.length,
  'scale.widthM': t.width,
  'scale.depthM': t.depth,
  'stand.feet': t.crosses.feet,
  foot: t.crosses.foot,
  top: t.crosses.top,
  heightM: t.height,
  view: t.viewField,
};

function nameOf(field: string): string | undefined {
  const corner = /^scale\.corners\[(\d)\]$/.exec(field)?.[1];
  if (corner !== undefined) return t.crosses.corners[Number(corner)];
  return NAMES[field] ?? NAMES[/^scale\.posts\[\d+\]\.(\w+)$/.exec(field)?.[1] ?? ''];
}

export function wordSightFault(error: unknown): string {
  const name = isOfField(error) ? nameOf(error.field) : undefined;
  return name !== undefined && isOfField(error)
    ? t.noCameraFor(name, String(error.value), error.allowed)
    : wordFault(error);
}
