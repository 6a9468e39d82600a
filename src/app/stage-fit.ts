/** How the pictures fit above the floor: one scale for all of them, one floor, the cursor's centre of mass at one level. */
import type { FlightResult } from '../engine/result.ts';
import type { Room } from './steady-room.ts';

/** Room above the highest mass centre for a body, as a share of the stature, and under it for pointed toes. */
const ABOVE = 0.62;
const BESIDE = 0.5;
/** A body 1 m tall is drawn at least this share of the picture's height. */
const LEAST_BODY = 0.18;

/** px: a width that is no bound, where there is no side view */
export const FREE = 9999;

export interface StageFit {
  readonly pxPerM: number;
  /** unrolled flight: bodies keep their size, heights are compressed where they must */
  readonly unrolledPxPerM: number;
  /** side view: x of X = 0 */
  readonly sideX0: number;
  /** +1: travel +X is to the right; -1: -X is */
  readonly direction: 1 | -1;
}

/** `width` is that of the side view. */
export function fitStage(result: FlightResult, { width, height }: Room, mostPxPerM: number): StageFit {
  const { flight, outline } = result;
  const stature = flight.body.stature ?? 1.6;
  const vx = flight.v_WScm_W0[0];
  const direction = vx < -0.2 ? -1 : 1;
  const top = Math.max(outline.height, flight.p_WScm_W0[1]) + ABOVE * stature;
  const low = Math.min(0, flight.surfaceY);
  const along = Math.abs(vx) * flight.duration;
  const byHeight = (height - 14) / (top - low);
  const byWidth = width / (along + 2 * BESIDE * stature);
  const pxPerM = Math.min(byHeight, byWidth, mostPxPerM);
  const spare = width - (along + 2 * BESIDE * stature) * pxPerM;
  const unrolledPxPerM = Math.max(pxPerM, Math.min(byHeight * 2.2, LEAST_BODY * height));
  return {
    pxPerM,
    unrolledPxPerM,
    sideX0: BESIDE * stature * pxPerM + spare / 2,
    direction,
  };
}

/** px of the ruler before the take-off, at most `most`: table, board or rail are there, and the body that hangs from it. */
export function leavingRoom({ apparatus: { pieces, leaves } }: FlightResult, most: number): number {
  const kind = leaves === undefined ? undefined : pieces[leaves].kind;
  return kind === undefined || kind === 'floor' || kind === 'mat' || kind === 'bed' ? 0 : most;
}
