/**
 * From the front: camera on +X looking back, on the same floor and height scale as the side view. It carries the tilt
 * wedge, only while the body is within 30 deg of upright or upside down (the projection stretches the wedge by up to
 * 15 % there; the number beside it is the true tilt).
 */
import { apparatusItems } from './apparatus-items.ts';
import { figureItems } from './figure.ts';
import { hairline, heightLines } from './heights.ts';
import { centreRadius, levelGuide, massCentreMark } from './marks.ts';
import type { StagePose } from './pose-frames.ts';
import type { DrawItem, Scene } from './scene.ts';
import { type ScaleWindow, type SideSceneInput, scaledPlace, turningSigns } from './side-scene.ts';
import { versionFigures } from './version-ghost.ts';
import { frontView } from './view.ts';

const NEAR_VERTICAL = Math.cos(Math.PI / 6);

/** True while the tilt wedge means what it seems to. */
export function tiltIsSeen(pose: StagePose): boolean {
  return Number.isFinite(pose.tilt) && Math.abs(Math.cos(pose.somersault)) >= NEAR_VERTICAL;
}

export function frontScene(input: SideSceneInput): Scene {
  const { flight, cursor, window: w, others = [] } = input;
  const x0 = w.x0 ?? w.width / 2;
  // the camera keeps the mass centre's sideways drift
  const spot = ([, py, pz]: StagePose['p_WScm_W']) => ({
    x: x0 + frontView.right[2] * pz * w.pxPerM,
    y: w.floorY - py * w.pxPerM,
  });
  const { x, y } = spot(cursor.p_WScm_W);
  const scale = { floorY: w.floorY, scale: w.pxPerM, breakY: Number.POSITIVE_INFINITY, compressed: w.pxPerM };
  const { lines } = heightLines(scale, { labelX: 0, from: 0, to: w.width, size: 12, marks: w.marks });
  const place = { view: frontView, scale: w.pxPerM, anchor: cursor.p_WScm_W, x, y, hit: 'figure' };
  const marks: DrawItem[] = [];
  const text: DrawItem[] = [];
  if (input.guides !== false && tiltIsSeen(cursor)) {
    const { under, over, label } = tiltWedge(cursor, x, y, w);
    marks.push(...under);
    text.push(...over, label);
  }
  if (input.guides !== false) text.push(levelGuide(0, w.width, y));
  text.push(...massCentreMark(x, y, centreRadius(w.pxPerM)));
  if (input.arrows) text.push(...turningSigns(flight, cursor, frontView, x, y, w.pxPerM));
  const apparatus = apparatusItems(flight.apparatus.pieces, {
    view: frontView,
    ...scaledPlace(w),
    at: (u, v) => [x0 + u * w.pxPerM, w.floorY - v * w.pxPerM],
  });
  return {
    width: w.width,
    height: w.height,
    background: 'air',
    layers: [
      { name: 'heights', items: lines, key: JSON.stringify(w) },
      { name: 'ground', items: apparatus.behind, key: `front ${flight.key} ${JSON.stringify(w)}` },
      { name: 'marks', items: [...apparatus.front, ...marks] },
      {
        name: 'figure',
        items: [
          ...versionFigures(others, ({ cursor: c }) => ({
            view: frontView,
            scale: w.pxPerM,
            anchor: c.p_WScm_W,
            ...spot(c.p_WScm_W),
          })),
          ...figureItems(flight.body, cursor.frames, place),
        ],
        sight: place,
      },
      { name: 'text', items: text },
    ],
    notes: [],
  };
}

function tiltWedge(
  pose: StagePose,
  x: number,
  y: number,
  w: ScaleWindow,
): { under: DrawItem[]; over: DrawItem[]; label: DrawItem } {
  const length = 1.1 * w.pxPerM;
  // the long axis of F on the screen: right is -Z, up is Y
  const R = pose.R_WF;
  let ax = -R[7];
  let ay = -R[4];
  const size = Math.hypot(ax, ay) || 1;
  ax /= size;
  ay /= size;
  // the wedge is above the mass centre, also when the body is upside down
  if (ay > 0) {
    ax = -ax;
    ay = -ay;
  }
  const tip: readonly [number, number] = [x + ax * length, y + ay * length];
  const arc: number[] = [x, y];
  const end = Math.atan2(ay, ax);
  for (let i = 0; i <= 8; i++) {
    const a = -Math.PI / 2 + ((end + Math.PI / 2) * i) / 8;
    arc.push(x + length * Math.cos(a), y + length * Math.sin(a));
  }
  const degrees = Math.abs((pose.tilt * 180) / Math.PI);
  const right = ax >= 0;
  return {
    under: [{ kind: 'fill', contours: [Float32Array.from(arc)], fill: 'tilt-tint', data: { wedge: 'tilt' } }],
    over: [
      {
        kind: 'line',
        points: Float32Array.from([x, y - length, x, y + length]),
        stroke: 'tilt',
        width: 1.2,
        dash: [2, 3],
      },
      {
        ...(hairline(x - ax * length, y - ay * length, tip[0], tip[1], 'tilt', 1.6) as DrawItem),
        data: { wedge: 'tilt' },
      },
    ],
    label: {
      kind: 'text',
      x: Math.min(w.width - 34, Math.max(34, tip[0] + (right ? 6 : -6))),
      // under the name of the picture
      y: Math.max(36, tip[1] + 4),
      text: `${degrees.toFixed(1)}°`,
      size: w.labelSize ?? 13,
      weight: 640,
      fill: 'tilt',
      anchor: right ? 'start' : 'end',
      halo: 'air',
    },
  };
}
