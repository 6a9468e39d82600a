/** The words that stand beside signed numbers: people read "backward" and "to the left", never a bare sign. */

import type { Body, NamedAngle } from '../body/body.ts';
import { REV } from '../math/angles.ts';
import { spell } from '../math/spell.ts';
import type { Frames } from './frames.ts';

/** Under this many revolutions there is no turn to speak of, and no word. */
const LEAST_TURN = 0.05;
/** Under this tilt, rad, the head leans to neither side. */
export const LEAST_TILT = (0.5 * Math.PI) / 180;

export type SomersaultWord = 'backward' | 'forward' | '';
export type SideWord = 'left' | 'right' | '';

/**
 * Direction of somersault as the athlete has it: the sign of h . Z_W, reversed for one who faces -X at take-off. Without
 * angular momentum about Z it is the sign of what was done.
 */
export function wordSomersault(hz: number, twistAtTakeoff: number, done: number): SomersaultWord {
  if (!(Math.abs(done) >= LEAST_TURN * REV)) return '';
  const sign = turnSign(hz, done) * (Math.cos(twistAtTakeoff) < 0 ? -1 : 1);
  return sign > 0 ? 'backward' : 'forward';
}

/** +1 or -1 about Z_W: of the momentum, or of the turn done where there is none. */
export function turnSign(hz: number, done: number): 1 | -1 {
  const of = Math.abs(hz) > 1e-9 ? hz : done;
  return of < 0 ? -1 : 1;
}

export function wordTwist(done: number): SideWord {
  if (!(Math.abs(done) >= LEAST_TURN * REV)) return '';
  return done > 0 ? 'left' : 'right';
}

/** The side the head leans to, as the world has it. */
export function wordTilt(tilt: number): SideWord {
  if (!(Math.abs(tilt) >= LEAST_TILT)) return '';
  return tilt > 0 ? 'right' : 'left';
}

export interface FrameWords {
  readonly somersault: readonly SomersaultWord[];
  readonly tilt: readonly SideWord[];
  readonly twist: readonly SideWord[];
}

/** Words of every frame, for what is done since the first. */
export function wordFrames(frames: Frames): FrameWords {
  const rows = Array.from({ length: frames.n }, (_, i) => i);
  const { somersault, tilt, twist } = frames;
  const hz = frames.h_Scm_W[2];
  return {
    somersault: rows.map((i) => wordSomersault(hz, twist[0], somersault[i] - somersault[0])),
    tilt: rows.map((i) => wordTilt(tilt[i])),
    twist: rows.map((i) => wordTwist(twist[i] - twist[0])),
  };
}

/** "hipFlexionR" as "right hip flexion". */
export function wordAngle(body: Body, angle: NamedAngle): string {
  const sided = body.angles[angle.mirror] !== angle;
  const side = sided && angle.name.endsWith('L') ? 'left ' : sided && angle.name.endsWith('R') ? 'right ' : '';
  return side + spell(side ? angle.name.slice(0, -1) : angle.name);
}
