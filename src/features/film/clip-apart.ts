/** How A differs from the clip at an instant, from what was posed there, or from the marks about it. */
import type { PosedFrame } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { placeIn } from '../../../sim/math/sorted.ts';
import type { FlightResult } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { posedOf } from './clip-posed.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

const APART = ['somersault', 'twist', 'tilt', 'height'] as const;
type ApartName = (typeof APART)[number];

interface ApartRow {
  readonly name: ApartName;
  readonly said: string;
  /** how it is known, with its ± where that is known */
  readonly how: string;
  /** it is shown and was not seen as such */
  readonly isInferred: boolean;
}

const unknown = (name: ApartName, how: string): ApartRow => ({ name, said: t.notSeen, how, isInferred: false });
/** the last figure that is said, rad and m */
const LEAST = { angle: 1 / DEG, length: 0.01 } as const;
const deg = (rad: number): string => `${formatNumber(Math.abs(rad) * DEG, 0)}°`;

/** Nothing is said to be so where the ± is larger, or where it is under `least`, the last figure that is said. */
const worded = (by: number, error: number, least: number, more: string, less: string): string => {
  if (Math.abs(by) <= Math.max(Number.isNaN(error) ? 0 : error, least / 2)) return t.noDifference;
  return by > 0 ? more : less;
};

/** The direction in which A turns: + or - of an angle. */
const wayOf = (values: ArrayLike<number>, n: number): number => Math.sign((values[n - 1] ?? 0) - (values[0] ?? 0)) || 1;

export function apartRows(desk: ClipDesk, result: FlightResult): ApartRow[] {
  const instant = desk.instant();
  const posed = posedOf(desk.measuring(), result).find(({ frame }) => frame === desk.frame());
  if (!instant) return APART.map((name) => unknown(name, t.noFlight));
  const { is } = instant;
  if (is !== 'in') return APART.map((name) => unknown(name, t.notInAir[is]));
  return posed ? posedRows(posed, result, instant.t) : markedRows(desk, result, instant.t);
}

function at(result: FlightResult, column: Float64Array, s: number, width = 1, k = 0): number {
  const { t: times, n } = result.frames;
  const { i, share } = placeIn(times, s, n);
  const [a, b] = [column[width * i + k], column[width * Math.min(i + 1, n - 1) + k]];
  return a + (b - a) * share;
}

/** In a frame that was posed by hand. */
function posedRows(posed: PosedFrame, result: FlightResult, s: number): ApartRow[] {
  const { frames } = result;
  const turn = (name: 'somersault' | 'twist', how: string, isInferred: boolean): ApartRow => {
    const by = wayOf(frames[name], frames.n) * (at(result, frames[name], s) - posed[name]);
    return { name, said: worded(by, 0, LEAST.angle, t.ahead(deg(by)), t.behind(deg(by))), how, isInferred };
  };
  const tilt = at(result, frames.tilt, s) - posed.tilt;
  const height = at(result, frames.p_WScm_W, s, 3, 1) - posed.p_WScm_W[1];
  return [
    turn('somersault', t.how.posed, false),
    turn('twist', t.how.posedInferred, true),
    {
      name: 'tilt',
      said: worded(tilt, 0, LEAST.angle, t.rightOf(deg(tilt)), t.leftOf(deg(tilt))),
      how: t.how.posedInferred,
      isInferred: true,
    },
    { name: 'height', said: heightWords(height, 0), how: t.how.posed, isInferred: false },
  ];
}

const heightWords = (m: number, error: number): string =>
  worded(m, error, LEAST.length, t.higher(sayShort(m)), t.lower(sayShort(m)));
const sayShort = (m: number): string => say('length', Math.abs(m), 2);

/** From marks of turns beside the instant, and from the air time. */
function markedRows(desk: ClipDesk, result: FlightResult, s: number): ApartRow[] {
  return [
    somersaultRow(desk, result, s),
    unknown('twist', t.oneCamera),
    unknown('tilt', t.oneCamera),
    heightRow(desk, result, s),
  ];
}

function somersaultRow(desk: ClipDesk, result: FlightResult, s: number): ApartRow {
  const times = desk.times();
  const apart = times && desk.room()?.engine.apart(times, s, result).somersault;
  if (!apart) return unknown('somersault', t.noTurn);
  const { value, plusMinus } = apart;
  const isMarked = desk.measuring().marks.some(({ kind, frame }) => kind === 'turn' && frame === desk.frame());
  return {
    name: 'somersault',
    said: worded(value, plusMinus, LEAST.angle, t.ahead(deg(value)), t.behind(deg(value))),
    how: `${isMarked ? t.how.seen : t.how.between}${sayPm(plusMinus, LEAST.angle, deg)}`,
    isInferred: !isMarked,
  };
}

const sayPm = (v: number, least: number, words: (v: number) => string): string =>
  Number.isFinite(v) ? `, ± ${words(Math.max(v, least))}` : '';

/** It follows from the air time: both fall alike. */
function heightRow(desk: ClipDesk, result: FlightResult, s: number): ApartRow {
  const times = desk.times();
  const apart = times && desk.room()?.engine.apart(times, s, result).height;
  if (!apart) return unknown('height', t.noFlight);
  const { value, plusMinus } = apart;
  return {
    name: 'height',
    said: heightWords(value, plusMinus),
    how: `${t.how.airTime}${sayPm(plusMinus, LEAST.length, sayShort)}`,
    isInferred: true,
  };
}
