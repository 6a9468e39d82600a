/** Where a moving picture is looked at from, and how large: all of the flight stays in it, or the camera goes with the athlete. */
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { ScaleWindow } from './side-scene.ts';
import { dot, frontView, sideView, topView, type View } from './view.ts';

export type MovingView = 'side' | 'front' | 'top' | 'close';

/** Least and most along the screen's right and up, m from W's origin. */
interface Reach {
  readonly u: readonly [number, number];
  readonly v: readonly [number, number];
}

/** Of a body about its joints and ends, m. */
const ROUND = 0.16;
/** Seen from above nothing shows how wide the place is: at least so much of it, m. */
const LEAST_ACROSS = 1.6;
/** A body that turns about the middle of the picture, arms overhead, in statures. */
const CLOSE = 1.5;
const STATURE = 1.6;

export const movingView = (kind: MovingView, vx: number): View =>
  kind === 'front' ? frontView : kind === 'top' ? topView(vx) : sideView(vx);

/** Of all poses, with the ends of hands, feet and head. */
function reachOf(flight: StageFlight, poses: readonly StagePose[], view: View): Reach {
  const { contacts } = flight.body;
  let [u0, u1, v0, v1] = [Infinity, -Infinity, Infinity, -Infinity];
  const take = (x: number, y: number, z: number): void => {
    const u = dot([x, y, z], view.right);
    const v = dot([x, y, z], view.up);
    [u0, u1, v0, v1] = [Math.min(u0, u), Math.max(u1, u), Math.min(v0, v), Math.max(v1, v)];
  };
  for (const { frames } of poses) {
    const { R_WS: R, p_WSo_W: o } = frames;
    for (let k = 0; k + 2 < o.length; k += 3) take(o[k], o[k + 1], o[k + 2]);
    for (const { segment: s, p_BoC_B: p } of contacts) {
      const at = (row: number): number => {
        const m = 9 * s + 3 * row;
        return o[3 * s + row] + R[m] * p[0] + R[m + 1] * p[1] + R[m + 2] * p[2];
      };
      take(at(0), at(1), at(2));
    }
  }
  return { u: [u0 - ROUND, u1 + ROUND], v: [v0 - ROUND, v1 + ROUND] };
}

/** The window of side, front or top: the flight in the middle, the floor at the lower edge where it is the lowest. */
export function fitMoving(
  flight: StageFlight,
  poses: readonly StagePose[],
  kind: Exclude<MovingView, 'close'>,
  room: { readonly width: number; readonly height: number; readonly labels: number; readonly head: number },
): ScaleWindow {
  const { u, v } = reachOf(flight, poses, movingView(kind, flight.v_WScm_W0[0]));
  const isTop = kind === 'top';
  const low = isTop ? v[0] : Math.min(0, flight.surfaceY);
  const across = Math.max(u[1] - u[0], isTop ? LEAST_ACROSS : 0);
  const up = Math.max(v[1] - low, isTop ? LEAST_ACROSS : 0);
  const width = room.width - 2 * room.labels;
  const height = room.height - room.head;
  const pxPerM = Math.min(width / across, height / up);
  const middleU = (u[0] + u[1]) / 2;
  const x0 = room.width / 2 - middleU * pxPerM;
  const floorY = isTop
    ? room.head + height / 2 + ((v[0] + v[1]) / 2) * pxPerM
    : // the lowest rests on the lower edge; what has no floor under it too
      room.height + low * pxPerM;
  return { width: room.width, height: room.height, pxPerM, x0, floorY, ghosts: 0 };
}

/** px per m of the picture that goes with the athlete. */
export const closeScale = (flight: StageFlight, width: number, height: number): number =>
  Math.min(width, height) / (CLOSE * (flight.body.stature ?? STATURE));
