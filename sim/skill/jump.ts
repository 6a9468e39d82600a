/**
 * A take-off as it is known: by the time in the air, by how high the mass centre rises, or by its speed; and how much it turns, by
 * its angular momentum, by the straight somersaults that this is enough for, or by its turning rate. Read from a flight, never from a formula
 * of the time in the air: where the landing pose or the surface differ from the take-off, g T2 / 8 is not the height. SI, radians; revolutions
 * where counted.
 */
import type { Flight } from '../flight/flight.ts';
import { straightMomentum } from '../flight/takeoff.ts';
import { REV } from '../math/angles.ts';
import type { Frames } from '../measure/frames.ts';
import type { LaunchedSkill } from './launch.ts';

export interface Jump {
  readonly airTime: number;
  /** upward speed of the mass centre at take-off */
  readonly up: number;
  /** how far the mass centre rises above where it is at take-off; undefined without gravity */
  readonly rise?: number;
  /** the mass centre at its highest, over Y = 0 */
  readonly highest: number;
  /** about the somersault axis of the world, + backward */
  readonly momentum: number;
  /** what that is enough for, in straight somersaults; undefined where none can be counted */
  readonly straight?: number;
  /** somersault rate of F at take-off, rev/s; undefined where F's angles are */
  readonly rate?: number;
  /** nothing ends the flight but its stated time: speed and time do not follow from each other */
  readonly isTimed: boolean;
}

/** A take-off as it is known to people: time in the air (s), height (m), speeds (m/s). */
export function readJump(
  { body, end, gravity }: Pick<LaunchedSkill, 'body' | 'end' | 'gravity'>,
  flight: Flight,
  frames: Frames,
): Jump {
  const up = flight.v_WScm_W0[1];
  const y0 = flight.p_WScm_W0[1];
  const rise = gravity > 0 ? Math.max(up, 0) ** 2 / (2 * gravity) : undefined;
  const momentum = flight.h_Scm_W[2];
  const one = oneStraight(() => straightMomentum(body, end, gravity, y0, up));
  const rate = frames.somersaultRate[0] / REV;
  return {
    airTime: flight.duration,
    up,
    ...(rise === undefined ? {} : { rise }),
    highest: rise === undefined ? Math.max(y0, y0 + up * flight.duration) : y0 + rise,
    momentum,
    ...(one === undefined ? {} : { straight: momentum / one }),
    ...(Number.isFinite(rate) ? { rate } : {}),
    isTimed: end.kind === 'duration',
  };
}

/** The angular momentum of one straight somersault; undefined for a body or a flight in which none can be counted. */
export function oneStraight(calc: () => number): number | undefined {
  try {
    return calc();
  } catch (error) {
    if (error instanceof Error && error.name === 'TakeoffError') return undefined;
    throw error;
  }
}
