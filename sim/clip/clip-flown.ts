/** What a flight has of all that the marks of a clip give, and how far it is from them: the flight less the clip. */
import type { Flight } from '../flight/flight.ts';
import type { Frames } from '../measure/frames.ts';
import type { Measured } from './clip.ts';
import type { ClipTimes, MarkedTime } from './clip-times.ts';
import { type FlownTurns, readFlownTurns } from './flown-turns.ts';

/** NaN: it never gets there, or somersault is not defined then. */
export interface FlownTimes {
  readonly airTime: number; // s
  readonly up: number; // m/s
  readonly rise: number; // m
  /** rad/s in the mean, of the same turns as those of the clip */
  readonly turns: readonly number[];
  readonly whole?: number;
}

/** What a flight has of the times of a clip: of the same turns. */
export function calcFlownTimes({ duration, v_WScm_W0, gravity }: Flight, frames: Frames, clip: ClipTimes): FlownTimes {
  const turns = readFlownTurns(frames);
  const up = v_WScm_W0[1];
  const rate = ({ from, to }: { readonly from: number; readonly to: number }): number =>
    ((to - from) * QUARTER) / (timeAt(turns, to) - timeAt(turns, from));
  return {
    airTime: duration,
    up,
    rise: gravity > 0 ? Math.max(0, up) ** 2 / (2 * gravity) : Number.NaN,
    turns: clip.turns.map(rate),
    ...(clip.whole && { whole: rate(clip.whole) }),
  };
}

const QUARTER = Math.PI / 2;
const timeAt = (turns: FlownTurns, quarters: number): number => (quarters === 0 ? 0 : turns.timeOf(quarters));

/** What is left out was not seen. */
export interface ClipApart {
  /** rad: + the flight has turned farther */
  readonly somersault?: Measured;
  /** m: + its mass centre has risen higher over that of its take-off; of the clip it follows from the air time */
  readonly height?: Measured;
}

/**
 * Nineteen of twenty are nearer to a straight line between marks of a quarter turn, in its middle: measured on the ready skills
 * (tests/clip/apart.test.ts), rad; twice as far, of two quarters.
 */
export const BENT = { quarter: (8 * Math.PI) / 180, half: (16 * Math.PI) / 180 } as const;

/** At s from take-off. Somersault is known between two marks of turns that are at most two quarters apart, and at a mark. */
export function calcClipApart({ marks, up }: ClipTimes, flight: Flight, frames: Frames, t: number): ClipApart {
  const seen = seenTurn(marks, t);
  const flown = readFlownTurns(frames).at(t);
  const isInAir = t >= 0 && t <= flight.duration;
  const faster = up && flight.v_WScm_W0[1] - up.value;
  return {
    ...(seen && !Number.isNaN(flown) && { somersault: { value: flown - seen.value, plusMinus: seen.plusMinus } }),
    ...(up && faster !== undefined && isInAir && { height: { value: faster * t, plusMinus: up.plusMinus * t } }),
  };
}

/** rad of somersault that the marks show, on a straight line between two of them. */
function seenTurn(marks: readonly MarkedTime[], t: number): Measured | undefined {
  const turns = marks.filter(({ mark }) => mark.kind === 'turn');
  const k = turns.findLastIndex(({ at }) => at.value <= t + 1e-9);
  const [a, b] = [turns[k], turns[k + 1]];
  if (!a) return undefined;
  const turned = (one: MarkedTime): number => (one.mark.quarters ?? 0) * QUARTER;
  if (!b) {
    const before = turns[k - 1];
    if (Math.abs(t - a.at.value) > 1e-9 || !before) return undefined;
    const rate = (turned(a) - turned(before)) / (a.at.value - before.at.value);
    return { value: turned(a), plusMinus: rate * a.at.plusMinus };
  }
  const quarters = (b.mark.quarters ?? 0) - (a.mark.quarters ?? 0);
  if (quarters > 2) return undefined;
  const share = (t - a.at.value) / (b.at.value - a.at.value);
  const rate = (turned(b) - turned(a)) / (b.at.value - a.at.value);
  const bent = 4 * share * (1 - share) * (quarters === 1 ? BENT.quarter : BENT.half);
  const late = (1 - share) * a.at.plusMinus + share * b.at.plusMinus;
  return { value: turned(a) + share * (turned(b) - turned(a)), plusMinus: Math.hypot(rate * late, bent) };
}
