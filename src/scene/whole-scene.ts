/**
 * A whole skill in pictures: unrolled along its time axis (0 is the release or take-off), and from the side, to scale. The
 * rail is a line that bends, a mat a block that is pressed in, forces are arrows. px, y down.
 */
import type { Body } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import { hairline, heightLines, type LengthMarks } from './heights.ts';
import { massCentreMark, straightArrow } from './marks.ts';
import type { StagePose } from './pose-frames.ts';
import type { DrawItem } from './scene.ts';
import { sideView } from './view.ts';

export interface WholeStage {
  readonly body: Body;
  /** in W of the flight */
  readonly poses: readonly StagePose[];
  readonly touchdown: number;
  readonly surfaceY: number;
  /** direction of travel: sign of screen right along X */
  readonly vx: number;
  /** where the rail is gripped, (n x 3): t, x, y; none without a bar */
  readonly rail?: Float64Array;
  readonly railRest?: readonly [number, number];
  /** depth of the deepest foot, (n x 2): t, m */
  readonly sink?: Float64Array;
}

interface TimeWindow {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly floorY: number;
  readonly x: (t: number) => number;
  readonly marks?: LengthMarks;
}

/** Nearest pose to t, by time. */
export function poseNear(poses: readonly StagePose[], t: number): StagePose {
  let best = poses[0];
  for (const pose of poses) if (Math.abs(pose.t - t) < Math.abs(best.t - t)) best = pose;
  return best;
}

/** Hands, feet and head are beyond the joints that are looked at, m. */
const BEYOND_JOINTS = 0.24;

/** How far a pose reaches from its mass centre to the left and right of the screen, m. */
export function reachOf(stage: WholeStage, { frames, p_WScm_W }: StagePose): { left: number; right: number } {
  const [rx, , rz] = sideView(stage.vx).right;
  let [left, right] = [0, 0];
  const { p_WSo_W } = frames;
  for (let i = 0; i < p_WSo_W.length; i += 3) {
    const u = rx * (p_WSo_W[i] - p_WScm_W[0]) + rz * (p_WSo_W[i + 2] - p_WScm_W[2]);
    left = Math.max(left, -u);
    right = Math.max(right, u);
  }
  return { left: left + BEYOND_JOINTS, right: right + BEYOND_JOINTS };
}

/** Poses that stand apart on the axis by at least `apart` px, the first, the release and the last among them. */
function ghosts(stage: WholeStage, w: TimeWindow, from: number, apart: number): StagePose[] {
  const must = [0, stage.touchdown, stage.poses[stage.poses.length - 1].t];
  const shown: StagePose[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const pose of stage.poses) {
    if (pose.t < from - 1e-9) continue;
    const next = must.find((t) => t > pose.t + 1e-9) ?? Number.POSITIVE_INFINITY;
    const isMust = must.some((t) => Math.abs(t - pose.t) < 1e-6);
    const room = w.x(pose.t) - last;
    if (!isMust && (room < apart || w.x(next) - w.x(pose.t) < 0.6 * apart)) continue;
    shown.push(pose);
    last = w.x(pose.t);
  }
  return shown;
}

export function unrolledStill(stage: WholeStage, w: TimeWindow, from: number): DrawItem[] {
  const view = sideView(stage.vx);
  const y = (m: number): number => w.floorY - m * w.pxPerM;
  const scale = { floorY: w.floorY, scale: w.pxPerM, breakY: Number.POSITIVE_INFINITY, compressed: w.pxPerM };
  const { lines, labels } = heightLines(scale, { labelX: 36, from: 42, to: w.width, size: 12, marks: w.marks });
  const items: DrawItem[] = [...lines, ...labels];
  items.push(...matItems(stage, w, y));
  const path: number[] = [];
  for (const pose of stage.poses) if (pose.t >= from - 1e-9) path.push(w.x(pose.t), y(pose.p_WScm_W[1]));
  items.push({ kind: 'line', points: Float32Array.from(path), stroke: 'ink-3', width: 1 });
  for (const pose of ghosts(stage, w, from, 0.62 * w.pxPerM)) {
    const place = { view, scale: w.pxPerM, anchor: pose.p_WScm_W, x: w.x(pose.t), y: y(pose.p_WScm_W[1]) };
    items.push({ kind: 'group', ghost: true, items: figureItems(stage.body, pose.frames, place) });
  }
  if (stage.rail && stage.railRest) {
    const bent: number[] = [];
    for (let i = 0; i < stage.rail.length; i += 3)
      if (stage.rail[i] >= from && stage.rail[i] <= 1e-9) bent.push(w.x(stage.rail[i]), y(stage.rail[i + 2]));
    const rest = y(stage.railRest[1]);
    items.push({
      kind: 'line',
      points: Float32Array.from([w.x(from), rest, w.x(0), rest]),
      stroke: 'ink-3',
      width: 1,
      dash: [2, 3],
    });
    if (bent.length > 3)
      items.push({ kind: 'line', points: Float32Array.from(bent), stroke: 'ink', width: 2.4, data: { rail: 'bent' } });
  }
  return items;
}

export function unrolledNow(stage: WholeStage, w: TimeWindow, t: number): DrawItem[] {
  const pose = poseNear(stage.poses, t);
  const y = w.floorY - pose.p_WScm_W[1] * w.pxPerM;
  const x = w.x(t);
  const view = sideView(stage.vx);
  return [
    hairline(x, y, x, w.height, 'ink', 1.6),
    ...figureItems(stage.body, pose.frames, { view, scale: w.pxPerM, anchor: pose.p_WScm_W, x, y }),
    ...massCentreMark(x, y, 5),
  ];
}

function matItems(stage: WholeStage, w: TimeWindow, y: (m: number) => number): DrawItem[] {
  const from = w.x(stage.touchdown) - 4;
  const surface = y(stage.surfaceY);
  const points: number[] = [from, surface];
  const { sink } = stage;
  if (sink) for (let i = 0; i < sink.length; i += 2) points.push(w.x(sink[i]), y(stage.surfaceY - sink[i + 1]));
  else points.push(w.width, surface);
  const right = points[points.length - 2];
  const bottom = Math.max(w.floorY, surface + 10);
  points.push(right, bottom, from, bottom);
  return [
    { kind: 'fill', contours: [Float32Array.from(points)], fill: 'moving', data: { surface: 'mat' } },
    hairline(from, surface, right, surface, 'rule-2', 1),
  ];
}

interface SideWindow {
  readonly width: number;
  readonly height: number;
}

/** Scale and origin that hold every pose. */
function fitSide(stage: WholeStage, { width, height }: SideWindow) {
  const view = sideView(stage.vx);
  let [left, right, top] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const { p_WScm_W: p } of stage.poses) {
    const u = view.right[0] * p[0];
    left = Math.min(left, u);
    right = Math.max(right, u);
    top = Math.max(top, p[1]);
  }
  const pxPerM = Math.min((width - 12) / (right - left + 2), (height - 10) / (top + 1.1));
  const x0 = width / 2 - ((left + right) / 2) * pxPerM;
  const floorY = height - 6;
  return { view, pxPerM, at: (p: readonly number[]) => [x0 + view.right[0] * p[0] * pxPerM, floorY - p[1] * pxPerM] };
}

const FORCE_PX = 22;

/** `force`: body weights along X and Y, acting where the body is held or supported; `hand`: where it is held. */
export function sideItems(
  stage: WholeStage,
  w: SideWindow,
  t: number,
  force?: { readonly x: number; readonly y: number; readonly at: readonly [number, number]; readonly label: string },
): DrawItem[] {
  const { view, pxPerM, at } = fitSide(stage, w);
  const floor = at([0, 0, 0])[1];
  const items: DrawItem[] = [hairline(0, floor, w.width, floor, 'rule-2', 1)];
  const surface = at([0, stage.surfaceY, 0])[1];
  const landing = poseNear(stage.poses, stage.touchdown).p_WScm_W;
  const [mx] = at(landing);
  const half = 1.1 * pxPerM;
  if (stage.surfaceY > 0.01)
    items.push({
      kind: 'fill',
      contours: [Float32Array.from([mx - half, surface, mx + half, surface, mx + half, floor, mx - half, floor])],
      fill: 'moving',
    });
  items.push({
    kind: 'line',
    points: Float32Array.from(stage.poses.flatMap((p) => at(p.p_WScm_W))),
    stroke: 'ink-3',
    width: 1,
  });
  const draw = (pose: StagePose): DrawItem[] => {
    const [x, y] = at(pose.p_WScm_W);
    return figureItems(stage.body, pose.frames, { view, scale: pxPerM, anchor: pose.p_WScm_W, x, y });
  };
  const step = Math.max(1, Math.round(stage.poses.length / 16));
  for (let i = 0; i < stage.poses.length; i += step) {
    const pose = stage.poses[i];
    if (Math.abs(pose.t - t) > 0.08) items.push({ kind: 'group', ghost: true, items: draw(pose) });
  }
  items.push(...draw(poseNear(stage.poses, t)));
  if (stage.railRest) {
    const [x, y] = at(stage.railRest);
    items.push({ kind: 'circle', x, y, r: 4, fill: 'air', stroke: 'ink', width: 2, data: { rail: 'rest' } });
  }
  if (force && Math.hypot(force.x, force.y) > 0.05) {
    const [x, y] = at(force.at);
    const [dx, dy] = [view.right[0] * force.x * FORCE_PX, -force.y * FORCE_PX];
    items.push(...straightArrow(x, y, x + dx, y + dy, 'ink', 'force'));
    items.push({
      kind: 'text',
      x: x + dx + 8,
      y: y + dy + 4,
      text: force.label,
      size: 13,
      weight: 650,
      fill: 'ink',
      anchor: 'start',
      halo: 'air',
    });
  }
  return items;
}
