/**
 * Whether joints are asked for more than is known of them: speed over the fastest known, torque over the known strength. A hand
 * may ask for up to `MOST` times that; where the skill asks for more already, for as much as it did.
 */
import type { FlightCaution, JointCaution } from '../../engine/result.ts';

/** Times the known speed or strength: from here on the flight is warned of as well (docs/decisions/0021-strength.md). */
export const MOST = 1.3;
/** Below this a figure is the same, of a flight that is flown coarser while a hand drags. */
const SAME = 0.005;

export interface TooFast {
  /** of the angle that is asked for most */
  readonly angle: string;
  readonly t: number;
  /** times what is known */
  readonly times: number;
}

type Judged = readonly FlightCaution[];

const isOfPace = (c: FlightCaution): c is JointCaution => c.kind === 'speed' || c.kind === 'torque';

/** Joints of this flight that are faster than known and than they were before, each where it is worst; the worst first. */
export function findTooFast(now: Judged, before: Judged): TooFast[] {
  const asked = (angle: string): number =>
    Math.max(MOST, ...before.filter((c) => isOfPace(c) && c.angle === angle).map((c) => timesOf(c as JointCaution)));
  return now
    .filter(isOfPace)
    .map((c) => ({ angle: c.angle, t: c.t, times: timesOf(c) }))
    .filter(({ angle, times }) => times > asked(angle) + SAME)
    .sort((a, b) => b.times - a.times);
}

const timesOf = (c: JointCaution): number => Math.abs(c.value / c.limit);

/** How a limb is brought after a hand: whether a share of the way is too much. */
interface Following {
  isTooMuch(share: number): boolean;
  /** a share that was not too much on a way like this one; 0: none is known */
  readonly guess: number;
}

/** Places of the way that are looked at from the hand backward, and halvings between two of them: to a 128th of the way. */
const PLACES = 8;
const HALVINGS = 4;
/** Times that a hand on its way is followed by half. */
const MOST_HALVED = 7;

/**
 * The largest share of the way to the hand that is not too much: what is too much a part of the way may be none nearer to the hand. It depends on nothing
 * but the way: the hand rests there. Asks once a step.
 */
export function* nearestSteps(isTooMuch: Following['isTooMuch']): Generator<undefined, number> {
  let low = 1;
  for (; low > 0; low -= 1 / PLACES) {
    const isTooFast = isTooMuch(low);
    if (low === 1 && !isTooFast) return 1;
    yield;
    if (!isTooFast) break;
  }
  let high = low + 1 / PLACES;
  for (let i = HALVINGS; i > 0; i--) {
    const share = (low + high) / 2;
    if (isTooMuch(share)) high = share;
    else low = share;
    if (i > 1) yield;
  }
  return low;
}

/** A share that is not too much while the hand is on its way: the guess, where that is none, or the first half that is. */
export function* onTheWaySteps({ isTooMuch, guess }: Following): Generator<undefined, number> {
  if (!isTooMuch(1)) return 1;
  yield;
  let share = guess > 0 ? Math.min(guess, 0.99) : 0.5;
  for (let i = MOST_HALVED; i > 0; i--) {
    if (!isTooMuch(share)) return share;
    share /= 2;
    yield;
  }
  return 0;
}
