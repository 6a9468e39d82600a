/**
 * The rail, table or board that a skill leaves, as solids in the world of its flight, and the nearest that the body comes to it. The rail swings on as
 * it was let go (bent by 5 cm at first in the demo giants). They are the pieces that are drawn (apparatus.ts).
 */
import { type Clearance, calcNearest } from '../measure/clearance.ts';
import type { Solid } from '../measure/clearance-solid.ts';
import { type LaunchedFlight, leftPiece } from './apparatus-ends.ts';

/** Nearest of rail, table or board through the flight; undefined where the skill leaves none. */
export const calcClearance = (flown: LaunchedFlight): Clearance | undefined =>
  calcNearest(flown.flight, solidsOf(flown), flown.flight.met?.kind === 'caught');

export function solidsOf(flown: LaunchedFlight): readonly Solid[] {
  const left = leftPiece(flown);
  if (!left) return [];
  const { piece, by } = left;
  const { rail, barX } = flown.skill.launch;
  if (rail) {
    const { height: y, ...rest } = rail;
    return [{ solid: 'rail', x: barX, y, ...rest, left: by }];
  }
  const isTable = piece.kind === 'table';
  return [
    {
      solid: isTable ? 'table' : 'board',
      x: piece.x,
      // a table is solid to the floor
      y: isTable ? [Number.NEGATIVE_INFINITY, piece.y[1]] : piece.y,
      halfWidth: (piece.z[1] - piece.z[0]) / 2,
      left: by,
    },
  ];
}
