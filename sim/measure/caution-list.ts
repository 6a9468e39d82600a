/** Cautions as they are said: the most serious first, left and right with the same value said once. */
import type { Body } from '../body/body.ts';
import { DEG } from '../math/angles.ts';
import { type Said, wordCaution } from './caution-words.ts';
import type { Caution } from './cautions.ts';

interface ListedCaution extends Said {
  readonly caution: Caution;
  /** said of left and right */
  readonly both: boolean;
}

/** A range is weighed against this, rad; speeds and torques against what is known. */
const RANGE_WEIGHT = 0.5;
/** Less than this beyond a range is rounding to a reader, deg. */
const SAID = 0.5;
/** Sides are said once within these: share of the value, s. */
const ALIKE = { share: 0.02, time: 0.02 };

/** Cautions as they are listed, the weightiest first; angles that pass their range by hardly anything are left out. */
export function listCautions(body: Body, found: readonly Caution[]): ListedCaution[] {
  const serious = found
    .filter((c) => c.kind !== 'range' || Math.abs(c.value - c.limit) * DEG > SAID)
    .map((caution) => ({ caution, weight: weightOf(caution) }))
    .sort((a, b) => b.weight - a.weight)
    .map(({ caution }) => caution);
  const joined = new Set<Caution>();
  return serious.flatMap((caution) => {
    if (joined.has(caution)) return [];
    const twin = serious.find((c) => c !== caution && isTwin(body, caution, c));
    if (twin) joined.add(twin);
    const both = twin !== undefined;
    return [{ caution, both, ...wordCaution(body, caution, both) }];
  });
}

const weightOf = (c: Caution): number =>
  c.kind === 'range' ? Math.abs(c.value - c.limit) / RANGE_WEIGHT : Math.abs(c.value / c.limit) - 1;

const isTwin = (body: Body, a: Caution, b: Caution): boolean =>
  a.kind === b.kind &&
  b.angle === body.angles[a.angle].mirror &&
  Math.abs(a.t - b.t) < ALIKE.time &&
  Math.abs(a.value - b.value) < ALIKE.share * Math.abs(a.value);
