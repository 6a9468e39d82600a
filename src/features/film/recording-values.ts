/** Numbers of a study as the page says them. */
import type { ModelTest, RecordingStudy } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { placeIn } from '../../../sim/math/sorted.ts';
import { BEST_PUBLISHED } from '../../../sim/words/recording-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, units } from '../../ui/units.ts';
import { recordingTexts as t } from './recording-words.ts';

export const AXES = ['somersault', 'tilt', 'twist'] as const;
export type ErrorName = (typeof AXES)[number];
export const HUES = { somersault: 'som', tilt: 'tilt', twist: 'twist' } as const;

/** rad: largest between a simulation and film, of nine twisting somersaults */
export const BEST: Readonly<Record<ErrorName, number>> = {
  somersault: BEST_PUBLISHED.somersaultRev * 2 * Math.PI,
  tilt: BEST_PUBLISHED.tiltDeg / DEG,
  twist: BEST_PUBLISHED.twistRev * 2 * Math.PI,
};

/** Tilt in degrees, somersault and twist as the page counts turns. */
export const sayAxis = (axis: ErrorName, rad: number): string =>
  axis === 'tilt' ? say('angle', rad * DEG, 1) : say('turns', rad / (2 * Math.PI), 3);
/** In a sentence revolutions go without saying. */
export const sayApart = (axis: ErrorName, rad: number): string =>
  axis === 'tilt' || units().turning === 'degrees' ? sayAxis(axis, rad) : sayNumber('turns', rad / (2 * Math.PI), 3);
/** At a row that says its unit. */
export const tickBest = (axis: ErrorName): string =>
  axis === 'tilt' ? formatNumber(BEST.tilt * DEG, 0) : sayNumber('turns', BEST[axis] / (2 * Math.PI), 2);
export const sayBest = (axis: ErrorName): string =>
  axis === 'tilt' ? say('angle', BEST.tilt * DEG, 0) : say('turns', BEST[axis] / (2 * Math.PI), 2);

export const apartOf = ({ computed, measured }: ModelTest, axis: ErrorName): Float64Array =>
  computed[axis].map((v, i) => v - measured[axis][i]);

/** One scale for the three, by what is best published of each: a look compares them. */
export const apartScale = ({ worst }: ModelTest): number =>
  1.25 * AXES.reduce((most, axis, i) => Math.max(most, Math.abs(worst[i]) / BEST[axis]), 1);

/** Of a series over the rows of the span, at a time. */
export function valueAt(t: ArrayLike<number>, values: ArrayLike<number>, at: number): number {
  if (t.length < 2) return Number.NaN;
  const { i, share } = placeIn(t, at);
  return values[i] + (values[i + 1] - values[i]) * share;
}

/** One angle of all rows, deg. */
export const angleOf = ({ angleNames, t }: RecordingStudy, all: Float64Array, k: number): Float64Array =>
  Float64Array.from(t, (_, i) => all[angleNames.length * i + k] * DEG);

export const mm = (m: number, decimals = 1): string => formatNumber(1000 * m, decimals);

/** What a number is known to: never nothing, and where it is not known that is said. */
export function sayPlusMinus(v: number, decimals: number): string {
  if (!Number.isFinite(v)) return t.notKnown;
  const least = 10 ** -decimals;
  return v < least / 2 ? t.under(formatNumber(least, decimals)) : t.plusMinus(formatNumber(v, decimals));
}
