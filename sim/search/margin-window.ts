/**
 * The window of a landing: the results that must come out, each between two bounds. How far off a flight is is the largest
 * of its results' distances from the middle, in half widths: 1 is on the edge.
 */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, wordSpan } from '../math/out-units.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Outcome } from './evaluate.ts';
import { findResult, type Result } from './result.ts';

export interface Bound {
  readonly result: Result;
  readonly low: number;
  readonly high: number;
}
export type Window = readonly Bound[];

/** Half widths that count as done (our judgement): landing and tilt 10 deg, twist 30 deg. */
export const USUAL_WINDOW: readonly (readonly [string, number])[] = [
  ['short', 10 * RAD],
  ['tilt', 10 * RAD],
  ['twists', 1 / 12],
];

/** About the target of the skill; without one, about what the skill does now. */
export function usualWindow(spec: SkillSpec, now: Outcome): Window {
  const { target } = spec;
  return USUAL_WINDOW.map(([name, half]) => {
    const id = name === 'short' && !target ? 'lean' : name;
    const result = findResult(id);
    const middle = !target ? result.get(now) : id === 'twists' ? target.twists : 0;
    return { result, low: middle - half, high: middle + half };
  });
}

export function checkWindow(bounds: Window): void {
  if (bounds.length === 0) throw new FieldError('window', 'nothing', 'at least one result with its bounds');
  for (const { result, low, high } of bounds)
    if (!(low < high && Number.isFinite(low) && Number.isFinite(high)))
      throw new FieldError(
        `window.${result.id}`,
        wordSpan(low, high, OUT_UNITS[result.unit]),
        'two numbers, the lower one first',
      );
}

/** Of one result: -1 and 1 on the edges; infinite where it is not defined. */
function placeIn({ low, high }: Bound, value: number): number {
  const place = (2 * value - low - high) / (high - low);
  return Number.isNaN(place) ? Number.POSITIVE_INFINITY : place;
}

/** The largest distance from the middle and whose it is; up to 1 the flight is in the window. */
export function distanceIn(bounds: Window, values: ArrayLike<number>): { distance: number; worst: number } {
  let distance = -1;
  let worst = 0;
  for (let k = 0; k < bounds.length; k++) {
    const d = Math.abs(placeIn(bounds[k], values[k]));
    if (d > distance) {
      distance = d;
      worst = k;
    }
  }
  return { distance, worst };
}
