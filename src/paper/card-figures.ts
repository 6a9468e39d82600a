/** The four figures of a card: to one scale among each other, as large as the room between their neighbours allows. */
import { figureItems } from '../scene/figure.ts';
import type { Pieces } from '../scene/pieces.ts';
import type { StagePose } from '../scene/pose-frames.ts';
import type { Points } from '../scene/scene.ts';
import { sideView, type View } from '../scene/view.ts';
import type { PaperFlight } from './paper-flight.ts';
import { drawn } from './paper-ink.ts';
import { searchView } from './turned-view.ts';

interface FigureRoom {
  /** middles of the figures */
  readonly centres: readonly number[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly floor: number;
}

/** Units per m at most: those of the first drawing of a card. */
const MOST = 146;
const GAP = 8;
/** Of the extent that is measured. */
const PROBE = 100;

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface ViewedPose {
  readonly pose: StagePose;
  readonly view: View;
}

export function* viewPose(flight: PaperFlight, t: number): Pieces<ViewedPose> {
  const pose = flight.pose(t);
  return { pose, view: yield* searchView(flight.staged.body, pose, sideView(flight.staged.v_WScm_W0[0])) };
}

/** Those on the floor are on it, the others are in the middle of the room. */
export function* cardFigures(
  flight: PaperFlight,
  figures: readonly ViewedPose[],
  isOnFloor: readonly boolean[],
  room: FigureRoom,
): Pieces<string> {
  const { body } = flight.staged;
  const extents: Extent[] = [];
  for (const one of figures) {
    extents.push(extentOf(flight, one));
    yield;
  }
  const scale = findScale(extents, room);
  let markup = '';
  for (const [i, { pose, view }] of figures.entries()) {
    const { left, right, top, bottom } = extents[i];
    const k = scale / PROBE;
    const x = room.centres[i] - (k * (left + right)) / 2;
    const y = isOnFloor[i] ? room.floor - k * bottom : (room.top + room.floor - k * (top + bottom)) / 2;
    const place = { view, scale, anchor: pose.p_WScm_W, x, y };
    markup += `<g data-figure="${pose.t.toFixed(4)}">${drawn(figureItems(body, pose.frames, place))}</g>`;
    yield;
  }
  return markup;
}

function findScale(extents: readonly Extent[], { centres, left, right, top, floor }: FigureRoom): number {
  let scale = MOST;
  const halves = extents.map((e) => (e.right - e.left) / 2 / PROBE);
  extents.forEach((e, i) => {
    scale = Math.min(scale, (floor - top) / ((e.bottom - e.top) / PROBE));
    const before = i === 0 ? centres[i] - left : (centres[i] - centres[i - 1] - GAP) / (halves[i] + halves[i - 1]);
    scale = Math.min(scale, i === 0 ? before / halves[i] : before);
    if (i === extents.length - 1) scale = Math.min(scale, (right - centres[i]) / halves[i]);
  });
  return scale;
}

/** About the mass centre, in units at PROBE per m. */
function extentOf({ staged }: PaperFlight, { pose, view }: ViewedPose): Extent {
  const place = { view, scale: PROBE, anchor: pose.p_WScm_W, x: 0, y: 0 };
  const contours = figureItems(staged.body, pose.frames, place).flatMap((item): readonly Points[] =>
    item.kind === 'fill' ? item.contours : [],
  );
  const e = { left: 1e9, right: -1e9, top: 1e9, bottom: -1e9 };
  for (const contour of contours)
    for (let i = 0; i < contour.length; i += 2) {
      e.left = Math.min(e.left, contour[i]);
      e.right = Math.max(e.right, contour[i]);
      e.top = Math.min(e.top, contour[i + 1]);
      e.bottom = Math.max(e.bottom, contour[i + 1]);
    }
  return e;
}
