/** The end that a limb is led by: by its upper half it turns as a whole, by its lower half elbow or knee follow. */

import { pieceAt } from '../../app/limb-under.ts';
import type { HeldLimb, HeldPicture, LimbName } from '../../pictures/stage-input.ts';
import type { Grab } from './limb-turn.ts';

function endOf(limb: LimbName, isUpper: boolean): string {
  if (limb === 'head') return limb;
  const [upper, lower] = limb.startsWith('arm') ? ['elbow', 'hand'] : ['knee', 'foot'];
  return (isUpper ? upper : lower) + limb.slice(-1);
}

/** The limb that an end belongs to. */
export const limbOf = (end: string): LimbName =>
  end === 'head' ? end : (`${/^(hand|elbow)/.test(end) ? 'arm' : 'leg'}${end.slice(-1)}` as LimbName);

interface LimbGrab extends Grab {
  /** the end that is led */
  readonly id: string;
}

/** A limb taken hold of at a place, px of the picture that it is seen in. */
export function grabLimb(limb: HeldLimb, spots: HeldPicture['spots'], x: number, y: number, isUpper = false): LimbGrab {
  const { line, reach } = limb;
  const upper = isUpper || pieceAt(line, x, y) === 0;
  const id = endOf(limb.id, upper);
  const spot = spots.find((one) => one.id === id);
  const end = spot ? ([spot.x, spot.y] as const) : ([x, y] as const);
  // hand and foot are led by a place on them
  const beyond = line.length > 2 ? Math.hypot(end[0] - line[2][0], end[1] - line[2][1]) : 0;
  return { id, pivot: line[0], at: [x, y], end, reach: upper ? (reach[1] ?? 0) : reach[2] + beyond };
}
