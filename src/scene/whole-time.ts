/** A whole skill unrolled along its time axis, to scale in height. What is touched is a line that bends or a block that is pressed in. px, y down. */
import { apparatusAlongTime, type Touch } from './apparatus-time.ts';
import { figureItems } from './figure.ts';
import { chooseGhosts, wordsIn } from './ghost-choice.ts';
import { hairline, heightLines, type LengthMarks } from './heights.ts';
import { massCentreMark } from './marks.ts';
import type { DrawItem } from './scene.ts';
import { ghostPoses, poseNear, type WholeStage } from './whole-stage.ts';

interface TimeWindow {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly floorY: number;
  readonly x: (t: number) => number;
  readonly from: number;
  readonly marks?: LengthMarks;
}

/** Between two figures, as a share of a metre. */
const APART = 0.75;
/** Other poses at most: of a bar three of the swing, three of the flight and the landing have room. */
const MOST = 8;
/** px at the left that only labels are in */
const LEFT = 42;

export function unrolledStill(stage: WholeStage, w: TimeWindow): DrawItem[] {
  const y = (m: number): number => w.floorY - m * w.pxPerM;
  const scale = { floorY: w.floorY, scale: w.pxPerM, breakY: Number.POSITIVE_INFINITY, compressed: w.pxPerM };
  const { lines, labels } = heightLines(scale, { labelX: 36, from: 42, to: w.width, size: 12, marks: w.marks });
  const items: DrawItem[] = [...lines, ...labels];
  const { behind, front } = apparatus(stage, w, y);
  items.push(...behind);
  const path: number[] = [];
  for (const pose of stage.poses) if (pose.t >= w.from - 1e-9) path.push(w.x(pose.t), y(pose.p_WScm_W[1]));
  items.push({ kind: 'line', points: Float32Array.from(path), stroke: 'ink-3', width: 1 });
  const apart = (APART * w.pxPerM) / Math.max(1, w.x(1) - w.x(0));
  const shown = chooseGhosts(
    ghostPoses(stage, w.from, apart),
    { view: stage.view, scale: w.pxPerM, at: (pose) => [w.x(pose.t), y(pose.p_WScm_W[1])], words: wordsIn(labels) },
    MOST,
  );
  for (const pose of shown) {
    const place = { view: stage.view, scale: w.pxPerM, anchor: pose.p_WScm_W, x: w.x(pose.t), y: y(pose.p_WScm_W[1]) };
    items.push({ kind: 'group', ghost: true, items: figureItems(stage.body, pose.frames, place) });
  }
  items.push(...front);
  return items;
}

export function unrolledNow(stage: WholeStage, w: TimeWindow, t: number): DrawItem[] {
  const pose = poseNear(stage.poses, t);
  const y = w.floorY - pose.p_WScm_W[1] * w.pxPerM;
  const x = w.x(t);
  return [
    hairline(x, y, x, w.height, 'ink', 1.6),
    ...figureItems(stage.body, pose.frames, { view: stage.view, scale: w.pxPerM, anchor: pose.p_WScm_W, x, y }),
    ...massCentreMark(x, y, 5),
  ];
}

function apparatus(stage: WholeStage, w: TimeWindow, y: (m: number) => number) {
  const touches = stage.touches.map(({ piece, from, to, t, up }): Touch => {
    const pose = poseNear(stage.poses, (from + to) / 2);
    return { piece, from, to, pose, ...(t.length > 1 ? { course: { t, up } } : {}) };
  });
  return apparatusAlongTime(stage.pieces, touches, {
    view: stage.view,
    width: w.width,
    height: w.height,
    pxPerM: w.pxPerM,
    left: LEFT,
    from: w.from,
    to: stage.poses[stage.poses.length - 1].t,
    x: w.x,
    y,
  });
}
