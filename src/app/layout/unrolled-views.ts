/** The unrolled flight as the one picture over the floor, where a layout has no other beside it. */
import { type Accessor, createMemo } from 'solid-js';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { useFlight } from '../page.ts';
import { FREE, fitStage } from '../stage-fit.ts';
import { useFit } from './steady.ts';
import { unrolledPlace } from './unrolled-place.ts';

interface UnrolledRoom {
  readonly axis: Accessor<TimeAxis>;
  readonly width: Accessor<number>;
  readonly height: Accessor<number>;
  /** px that the flight leaves free of the height */
  readonly margin: number;
  /** px a metre at most */
  readonly scale: number;
  readonly place: Pick<ViewPlace, 'ghosts' | 'labelSize'> & { readonly labelX: number };
}

export function useUnrolledViews({ axis, width, height, margin, scale, place }: UnrolledRoom): Accessor<ViewPlace[]> {
  const flight = useFlight();
  const framing = useFit(
    flight.id,
    () => ({ width: FREE, height: height() - margin }),
    (room) => fitStage(flight.result(), room, scale),
  );
  return createMemo(() => [
    unrolledPlace(axis(), framing(), { ...place, width: width(), height: height(), unlabelled: true }),
  ]);
}
