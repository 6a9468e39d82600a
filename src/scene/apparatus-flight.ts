/** Apparatus of one flight along time: what it leaves at the first pose, what it meets at the last. */
import { type ApparatusAlongTime, apparatusAlongTime, type TimeSpanWindow, type Touch } from './apparatus-time.ts';
import { pathAt } from './flight-path.ts';
import type { StageFlight } from './pose-frames.ts';
import { sideView } from './view.ts';

export function flightApparatus(
  flight: StageFlight,
  w: Omit<TimeSpanWindow, 'view' | 'from' | 'to'>,
): ApparatusAlongTime {
  const { path, duration } = flight;
  const { pieces, leaves, lands } = flight.apparatus;
  const touches = [
    [leaves, 0],
    [lands, duration],
  ].flatMap(([piece, t]): Touch[] =>
    piece === undefined || t === undefined ? [] : [{ piece, from: t, to: t, pose: { t, p_WScm_W: pathAt(path, t) } }],
  );
  return apparatusAlongTime(pieces, touches, {
    ...w,
    view: sideView(flight.v_WScm_W0[0]),
    from: 0,
    to: duration,
  });
}
