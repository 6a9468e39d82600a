/**
 * The window of a landing: the results that must come out, each between two bounds. How far off a flight is is the largest
 * of its results' distances from the middle, in half widths: 1 is on the edge.
 */
import { RAD, turnedTo } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, wordSpan } from '../math/out-units.ts';
import { bandOf, heldWithin } from '../measure/landing-band.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Outcome } from './evaluate.ts';
import { findResult, type Result } from './result.ts';

export interface Bound {
  readonly result: Result;
  readonly low: number;
  readonly high: number;
}
export type Window = readonly Bound[];

/** Half widths that count as done where no landing on the feet is judged (our judgement): landing and tilt 10 deg, twist 30 deg. */
export const USUAL_WINDOW: readonly (readonly [string, number])[] = [
  ['short', 10 * RAD],
  ['tilt', 10 * RAD],
  ['twists', 1 / 12],
];
/** No more than this short or past, so that the somersaults are those wanted: what a verdict calls missed. */
export const SAME_COUNT = 60 * RAD;

/**
 * About the target of the skill; without one, about what the skill does now. A landing on the feet is judged as the verdict judges it: by the
 * band of the landing model in which it is held, with a hop or a small step at most; tilt and twist by what a verdict calls missed. A flight to a rail
 * is judged by the catch that it asks for.
 */
export function usualWindow(spec: SkillSpec, now: Outcome): Window {
  const { target, catch: ask } = spec;
  // distances are counted from the middle, so a gap of nothing is the middle of its bounds
  if (ask) return [boundAbout('catch.gap', ask.gap), boundAbout('catch.closing', ask.closing)];
  const middleOf = (id: string, result: Result): number =>
    !target ? result.get(now) : id === 'twists' ? target.twists : 0;
  const bounds = USUAL_WINDOW.map(([name, half]): Bound => {
    const id = name === 'short' && !target ? 'lean' : name;
    const result = findResult(id);
    const middle = middleOf(id, result);
    return { result, low: middle - half, high: middle + half };
  });
  const held = heldBounds(spec, now);
  if (!held) return bounds;
  const [landing, ...rest] = bounds;
  const middle = middleOf(landing.result.id, landing.result);
  return [held, { ...landing, low: middle - SAME_COUNT, high: middle + SAME_COUNT }, ...rest];
}

const boundAbout = (result: string, half: number): Bound => ({ result: findResult(result), low: -half, high: half });

/** Undefined where no landing on the feet is wanted, or the surface is none that the landing model knows. */
function heldBounds({ end, target }: SkillSpec, now: Outcome): Bound | undefined {
  const band = bandOf(end.surface?.kind);
  const isOnFeet = now.reach() !== undefined;
  if (!band || !isOnFeet || (target && Math.abs(turnedTo(target.landingAngle, 0)) > SAME_COUNT)) return undefined;
  const [low, high] = heldWithin(band);
  return { result: findResult('reach'), low, high };
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
