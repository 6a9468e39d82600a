/** What a swing is made from; SI and radians. Swing angles count in the sense of the swing (swing-keys.ts). */

import type { Body } from '../body/body.ts';
import { REV } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import type { PlanarJointName } from './chain.ts';
import { checkRail, type Rail } from './rail.ts';
import type { SwingMoves } from './swing-keys.ts';

export type SwingStart =
  /** still in the handstand on the bar, turned by `nudge` rad/s */
  | { readonly kind: 'handstand'; readonly nudge: number }
  /** still with the mass centre at this swing angle, the support behind: a cast is taken from its highest point */
  | { readonly kind: 'cast'; readonly angle: number }
  | { readonly kind: 'given'; readonly angle: number; readonly rate: number }
  | CaughtStart;

/** As the hands have joined the rail after a flight (docs/decisions/0024-catch.md); plain numbers, in the plane of the swing: the athlete faces +X. */
export interface CaughtStart {
  readonly kind: 'caught';
  /** of the link that grips, about +Z, and its turning */
  readonly angle: number;
  readonly rate: number;
  /** of the rail from its rest place, and its velocity */
  readonly rail: readonly [number, number];
  readonly railRate: readonly [number, number];
  /** of every joint of the chain, by its name */
  readonly joints: Readonly<Record<string, number>>;
  readonly jointRates: Readonly<Record<string, number>>;
  /** the middle of the rail from where it lies in a hand, in the link that grips, m: the gap that the arms keep */
  readonly gap: readonly [number, number];
  /** every other angle of the Body that is not 0, by name: held */
  readonly pose: Readonly<Record<string, number>>;
  /** of both arms in series with the rail, N/m */
  readonly arms: number;
}

export type SwingRelease =
  /** s after the start */
  | { readonly at: 'time'; readonly s: number }
  /** the first time the swing angle gets there, counted on (80 deg in the second giant: 440 deg) */
  | { readonly at: 'angle'; readonly angle: number };

export interface SwingSpec {
  readonly body: Body;
  readonly gravity: number;
  readonly rail: Rail;
  /** 'backward': feet go to where the athlete faces as they pass under the bar; turns as a backward somersault does */
  readonly sense: 'backward' | 'forward';
  readonly start: SwingStart;
  readonly moves: SwingMoves;
  /** left out: the swing hangs on to its end */
  readonly release?: SwingRelease;
  /** s that the release comes later (+) or earlier than `release` says; default 0 */
  readonly late?: number;
  /** s from the start: the end, or the latest release */
  readonly duration: number;
  /** how many times the Body's strength the joints have; Infinity: strength is not checked; default 1 */
  readonly strength?: number;
  /** pose to hold in all other joints */
  readonly held?: readonly number[];
  readonly joints?: readonly PlanarJointName[];
  /** s; default from measured convergence (docs/numerics.md) */
  readonly step?: number;
}

/** What the motion on the bar depends on: not on when it ends. */
export type HangSpec = Omit<SwingSpec, 'release' | 'late' | 'duration'>;

const LONGEST_SWING = 20;
const SHORTEST = 1e-3;
/** m: farther from the knuckles no hand holds a rail */
export const MOST_GAP = 0.1;
/** s that the swing is followed as if the hands had held on: for later releases and a late hand */
export const BEYOND_RELEASE = 0.15;

export function checkSwing(spec: SwingSpec): void {
  checkRail(spec.rail);
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`swing.${field}`, value, `a number from ${low} to ${high} ${unit}`);
  };
  within('durationS', spec.duration, 0.01, LONGEST_SWING, 's');
  within('gravity', spec.gravity, 0, 100, 'm/s^2');
  const strength = spec.strength ?? 1;
  if (!(strength > 0)) throw new FieldError('swing.strength', strength, 'a number above 0');
  if (spec.step !== undefined) within('stepS', spec.step, 1e-5, 2e-3, 's');
  const { start, release } = spec;
  if (start.kind === 'handstand') within('start.nudgeRadPerS', start.nudge, 1e-3, 5, 'rad/s');
  else if (start.kind !== 'caught') within('start.angleRad', start.angle, -2 * REV, 2 * REV, 'rad');
  if (start.kind === 'given') within('start.rateRadPerS', start.rate, -20, 20, 'rad/s');
  if (start.kind === 'caught') {
    within('start.gapM', Math.hypot(...start.gap), 0, MOST_GAP, 'm');
    within('start.rateRadPerS', start.rate, -100, 100, 'rad/s');
  }
  if (release?.at === 'time') within('release.s', release.s, SHORTEST, spec.duration, 's');
  if (release?.at === 'angle') within('release.angleRad', release.angle, -30 * REV, 30 * REV, 'rad');
}

/** s from the start at which the hands let go, from the time at which the release as stated would come. */
export function lateRelease({ late = 0 }: SwingSpec, stated: number): number {
  const s = stated + late;
  if (late !== 0 && !(s >= SHORTEST && s <= LONGEST_SWING))
    throw new FieldError(
      'swing.release.lateS',
      late,
      `a number from ${(SHORTEST - stated).toFixed(3)} to ${(LONGEST_SWING - stated).toFixed(3)} s`,
    );
  return s;
}

export class NoReleaseError extends Error {
  /** the swing angle of the release and the farthest that is reached, rad; the longest that the swing may last, s */
  readonly reach: { readonly angle: number; readonly far: number; readonly duration: number };
  constructor(detail: string, reach: NoReleaseError['reach']) {
    super(`the swing's release: ${detail}`);
    this.name = 'NoReleaseError';
    this.reach = reach;
  }
}
