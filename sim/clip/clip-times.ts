/** Times that marks in a clip give: types. */
import type { ClipMark, Measured } from './clip.ts';
import type { MarkFault } from './mark-faults.ts';

export interface MarkedTime {
  readonly mark: ClipMark;
  /** s from take-off */
  readonly at: Measured;
}

export interface TurnTime {
  /** quarter turns that it begins and ends at */
  readonly from: number;
  readonly to: number;
  readonly time: Measured; // s
  readonly rate: Measured; // rad/s, mean
}

export interface ClipTimes {
  /** s of ClipFrames.t at take-off; NaN before it is marked */
  readonly zero: number;
  /** in the order of time; those at fault are not among them */
  readonly marks: readonly MarkedTime[];
  readonly airTime?: Measured; // s
  readonly up?: Measured; // m/s at take-off
  readonly rise?: Measured; // m over where the mass centre was at take-off
  /** between neighbouring marks of turns (take-off is 0; landing is none) */
  readonly turns: readonly TurnTime[];
  /** first to last of them, where there are two or more */
  readonly whole?: TurnTime;
  readonly handOff?: Measured; // s from take-off
  readonly braking?: {
    readonly time: Measured; // s
    readonly from: Measured; // m/s down at touchdown
    readonly mean: Measured; // m/s2 of slowing down
    /** mean force of the floor, body weights: (mean + g) / g */
    readonly weights: Measured;
  };
  /** what is wrong with the marks; the rest is computed without them */
  readonly faults: readonly MarkFault[];
}

export interface TimesGiven {
  readonly gravity: number; // m/s2
  /** m by which the mass centre is lower at touchdown than at take-off */
  readonly drop: Measured;
}
