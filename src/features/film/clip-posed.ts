/** Frames that were posed with this body: angles of another one, of other joints, say nothing of it. They are there again when it is. */
import type { ClipMeasured, PosedFrame } from '../../../sim/index.ts';
import type { FlightResult } from '../../engine/result.ts';

export function posedOf({ posed }: ClipMeasured, { flight }: FlightResult): readonly PosedFrame[] {
  const isOfBody = ({ angles }: PosedFrame): boolean => angles.length === flight.body.angles.length;
  return posed.every(isOfBody) ? posed : posed.filter(isOfBody);
}
