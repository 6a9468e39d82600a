/** What a hand does to a limb: what it asks for, and what is shown of it while it is at work and until something else is done. */
import type { HeldBody } from '../../engine/pose.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { SeenAlong } from '../../pictures/stage-input.ts';
import type { ScreenPlace } from './limb-turn.ts';
import type { TooFast } from './pace.ts';

/** What a gesture shows while it runs, and until something else is done. */
export interface Work {
  readonly limb: string;
  readonly end: string;
  /** the other side does the same */
  readonly both: boolean;
  /** the flight and the pose that the gesture found */
  readonly mark: FlightResult;
  readonly t: number;
  readonly camera: HeldBody;
  readonly before: readonly number[];
  readonly lines: readonly string[];
  /** angles at the end of their range */
  readonly stopped: readonly string[];
  /** the end stops short of the place by this, m */
  readonly short: number;
  /** rad: the limb is drawn so until the flight of it is known, a frame or a few later; left out: the flight has it */
  readonly angles?: readonly number[];
  /** faster than the joints can: the limb lags behind the hand */
  readonly tooFast?: TooFast;
}

/** How far the end is to go, px: `share` of the way that the hand has gone. */
export interface LimbWay {
  by(share: number): ScreenPlace;
  readonly pxPerM: number;
  readonly view: SeenAlong;
  /** turns the choice of sides round */
  readonly other: boolean;
}
