/** What was recorded, along its time: measured poses over their parabola, filled; the computed one at the cursor as a dashed contour over it. px, y down. */
import type { Body } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import { contourItems } from './figure-outline.ts';
import { chooseGhosts, wordsIn } from './ghost-choice.ts';
import { hairline, heightLines, type LengthMarks } from './heights.ts';
import { massCentreMark } from './marks.ts';
import type { StagePose } from './pose-frames.ts';
import type { Dash, DrawItem } from './scene.ts';
import type { View } from './view.ts';
import { poseNear } from './whole-stage.ts';

export interface RecordedStage {
  readonly body: Body;
  readonly measured: readonly StagePose[];
  readonly computed: readonly StagePose[];
  /** heights of the mass centre on its parabola, m, at `t` */
  readonly path: { readonly t: ArrayLike<number>; readonly y: ArrayLike<number> };
  readonly view: View;
  /** m of what is drawn as the floor */
  readonly base: number;
}

export interface RecordedWindow {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly x: (t: number) => number;
  /** px at the left that only labels are in */
  readonly left: number;
  readonly marks?: LengthMarks;
}

const DASH: Dash = [4.5, 3];
/** Between two figures, as a share of a metre; and of others at most. */
const APART = 0.8;
const MOST = 9;

export function recordedStill(stage: RecordedStage, w: RecordedWindow): DrawItem[] {
  const y = (m: number): number => w.height - (m - stage.base) * w.pxPerM;
  const scale = { floorY: y(0), scale: w.pxPerM, breakY: Number.POSITIVE_INFINITY, compressed: w.pxPerM };
  const { lines, labels } = heightLines(scale, {
    labelX: w.left - 8,
    from: w.left,
    to: w.width,
    size: 12,
    ...(w.marks ? { marks: w.marks } : {}),
  });
  const items: DrawItem[] = [...lines, ...labels];
  const path: number[] = [];
  for (let i = 0; i < stage.path.t.length; i++) path.push(w.x(stage.path.t[i]), y(stage.path.y[i]));
  items.push({ kind: 'line', points: Float32Array.from(path), stroke: 'ink-3', width: 1 });
  const { measured } = stage;
  if (measured.length === 0) return items;
  const [from, to] = [measured[0].t, measured[measured.length - 1].t];
  const n = Math.max(2, Math.min(MOST, Math.floor((w.x(to) - w.x(from)) / (APART * w.pxPerM)) + 1));
  const spread = Array.from({ length: n }, (_, k) => poseNear(measured, from + ((to - from) * k) / (n - 1)));
  const at = (pose: StagePose): readonly [number, number] => [w.x(pose.t), y(pose.p_WScm_W[1])];
  const shown = chooseGhosts(spread, { view: stage.view, scale: w.pxPerM, at, words: wordsIn(labels) }, MOST);
  for (const pose of shown)
    items.push({
      kind: 'group',
      ghost: true,
      items: figureItems(stage.body, pose.frames, placeOf(stage, w, pose, at)),
    });
  return items;
}

export function recordedNow(stage: RecordedStage, w: RecordedWindow, t: number): DrawItem[] {
  if (stage.measured.length === 0) return [];
  const y = (m: number): number => w.height - (m - stage.base) * w.pxPerM;
  const pose = poseNear(stage.measured, t);
  const x = w.x(t);
  const cm = y(pose.p_WScm_W[1]);
  const items = [
    hairline(x, cm, x, w.height, 'ink', 1.6),
    ...figureItems(stage.body, pose.frames, { ...placeOf(stage, w, pose, () => [x, cm]) }),
  ];
  if (stage.computed.length > 0) {
    const other = poseNear(stage.computed, t);
    const place = placeOf(stage, w, other, () => [x, y(other.p_WScm_W[1])]);
    items.push(...contourItems(stage.body, other.frames, place, DASH));
  }
  return [...items, ...massCentreMark(x, cm, 5)];
}

function placeOf(
  { view }: RecordedStage,
  { pxPerM }: RecordedWindow,
  pose: StagePose,
  at: (pose: StagePose) => readonly [number, number],
) {
  const [x, y] = at(pose);
  return { view, scale: pxPerM, anchor: pose.p_WScm_W, x, y };
}
