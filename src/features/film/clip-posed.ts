/** Frames that were posed with this body: angles of another one, of other joints, say nothing of it. They are there again when it is. */
import type { PosedFrame } from '../../../sim/index.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { ClipMeasuring } from './clip-page.ts';

export function posedOf({ posed }: ClipMeasuring, { flight }: FlightResult): readonly PosedFrame[] {
  const isOfBody = ({ angles }: PosedFrame): boolean => angles.length === flight.body.angles.length;
  return posed.every(isOfBody) ? posed : posed.filter(isOfBody);
}
