/** Where the unrolled flight is drawn: at the left edge of the air, on the ruler's axis. */
import type { ViewPlace } from '../../pictures/stage-input.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import type { StageFit } from '../stage-fit.ts';

type Unrolled = Pick<ViewPlace, 'width' | 'height' | 'ghosts'> &
  Partial<Pick<ViewPlace, 'labelSize' | 'unlabelled' | 'calm' | 'plumb'>> & { readonly labelX: number };

export const unrolledPlace = (axis: TimeAxis, framing: StageFit, place: Unrolled): ViewPlace => ({
  ...place,
  kind: 'unrolled',
  x: 0,
  y: 0,
  floorY: place.height,
  pxPerS: axis.pxPerS,
  pxPerM: framing.unrolledPxPerM,
  x0: axis.x0,
});
