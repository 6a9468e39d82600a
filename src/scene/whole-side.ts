/** A whole skill from the side, to scale: what is touched in its place, the way of the mass centre, the pose at the cursor, forces as arrows. px, y down. */
import { type ApparatusPicture, apparatusItems } from './apparatus-items.ts';
import type { PieceState } from './apparatus-place.ts';
import { figureItems } from './figure.ts';
import { FORCE_PX, forceArrowItems } from './force-arrows.ts';
import { chooseGhosts } from './ghost-choice.ts';
import { massCentreMark } from './marks.ts';
import { nearBodyItems, nearMarkItems } from './near-mark.ts';
import type { StagePose } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';
import { ghostPoses, poseNear, touchAt, type WholeStage } from './whole-stage.ts';

interface SideWindow {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly floorY: number;
  /** px of X = 0 */
  readonly x0: number;
}

export interface SideForce {
  /** body weights along X and up */
  readonly x: number;
  readonly y: number;
  /** where it acts, m */
  readonly at: readonly [number, number];
  readonly size: string;
  readonly words: string;
}

/** A way of the mass centre that is not flown, with its words. */
export interface OtherPath {
  /** (n x 2): X, Y, m */
  readonly points: ArrayLike<number>;
  readonly dash: readonly [number, number];
  readonly name: string;
  readonly outcome: string;
  readonly isStop: boolean;
}

interface SideExtra {
  readonly force?: SideForce;
  readonly ownWeight: string;
  readonly others: readonly OtherPath[];
  /** what comes near a rail, table or board */
  readonly near?: { readonly x: number; readonly y: number; readonly t: number; readonly lines: readonly string[] };
}

/** Poses apart, s: fewer of them in a side view, where they lie over each other. */
const APART = 0.26;
/** Other poses at most: to scale they crowd. */
const MOST = 4;
/** Nothing else is drawn so near to the pose at the cursor, s. */
const BESIDE = 0.06;

/** Along the screen: from the left-most to the right-most that must be seen, m. */
export function sideExtent(stage: WholeStage): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const take = (u: number, reach: number): void => {
    low = Math.min(low, u - reach);
    high = Math.max(high, u + reach);
  };
  for (const { p_WScm_W: p } of stage.poses) take(dot(p, stage.view.right), 0.75);
  return [low, high];
}

const pxOf =
  ({ view }: WholeStage, w: SideWindow) =>
  (x: number, y: number, z = 0): [number, number] => [
    w.x0 + dot([x, y, z], view.right) * w.pxPerM,
    w.floorY - y * w.pxPerM,
  ];

function placeOf(stage: WholeStage, w: SideWindow, { p_WScm_W }: StagePose): FigurePlace {
  const [x, y] = pxOf(stage, w)(...p_WScm_W);
  return { view: stage.view, scale: w.pxPerM, anchor: p_WScm_W, x, y };
}

const apparatusAt = (stage: WholeStage, w: SideWindow, t: number): ApparatusPicture =>
  apparatusItems(
    stage.pieces,
    {
      view: stage.view,
      pxPerM: w.pxPerM,
      width: w.width,
      height: w.height,
      at: (u, v) => [w.x0 + u * w.pxPerM, w.floorY - v * w.pxPerM],
    },
    statesAt(stage, t),
  );

/** Behind the athlete, as it is at t. */
export const sideBehind = (stage: WholeStage, w: SideWindow, t: number): readonly DrawItem[] =>
  apparatusAt(stage, w, t).behind;

/** What does not move with the cursor: the way of the mass centre and other poses. */
export function sideStill(stage: WholeStage, w: SideWindow): DrawItem[] {
  const at = pxOf(stage, w);
  return [
    {
      kind: 'line',
      points: Float32Array.from(stage.poses.flatMap(({ p_WScm_W: [x, y, z] }) => at(x, y, z))),
      stroke: 'ink-3',
      width: 1,
    },
    ...chooseGhosts(
      ghostPoses(stage, stage.poses[0].t, APART),
      { view: stage.view, scale: w.pxPerM, at: ({ p_WScm_W }) => at(...p_WScm_W) },
      MOST,
    ).map(
      (pose): DrawItem => ({
        kind: 'group',
        ghost: true,
        items: figureItems(stage.body, pose.frames, placeOf(stage, w, pose)),
      }),
    ),
  ];
}

/** The pose at the cursor, what is nearest, other ways, the rail, and forces. */
export function sideItems(stage: WholeStage, w: SideWindow, t: number, extra: SideExtra): DrawItem[] {
  const { view } = stage;
  const at = pxOf(stage, w);
  const now = poseNear(stage.poses, t);
  const items: DrawItem[] = [];
  for (const other of extra.others) items.push(...otherItems(other, at, w));
  if (extra.near && Math.abs(extra.near.t - t) > BESIDE) {
    const nearest = poseNear(stage.poses, extra.near.t);
    items.push(...nearBodyItems(stage.body, nearest.frames, placeOf(stage, w, nearest)));
  }
  items.push(...figureItems(stage.body, now.frames, placeOf(stage, w, now)));
  const [cx, cy] = at(...now.p_WScm_W);
  items.push(...massCentreMark(cx, cy, 4.5));
  items.push(...apparatusAt(stage, w, t).front);
  if (extra.near) items.push(...nearItems(extra.near, at, w));
  const { force } = extra;
  if (force) {
    const place = { view, pxPerBodyWeight: FORCE_PX.bench, width: w.width };
    const [x, y] = at(...force.at);
    items.push(
      ...forceArrowItems(
        { x, y, force: [force.x, force.y, 0], size: force.size, words: force.words, name: 'contact' },
        place,
      ),
      ...forceArrowItems({ x: cx, y: cy, force: [0, -1, 0], size: '1', words: extra.ownWeight, name: 'weight' }, place),
    );
  }
  return items;
}

/** A rail bends, bed and mat are pressed where the feet are. */
function statesAt(stage: WholeStage, t: number): (PieceState | undefined)[] {
  const now = touchAt(stage, t);
  return stage.pieces.map((piece, i) => {
    if (now?.touch.piece !== i) return undefined;
    if (piece.kind === 'rail') return { bent: [now.along, now.up] };
    const [x, , z] = poseNear(stage.poses, t).p_WScm_W;
    return { pressed: { x, z, depth: Math.max(0, -now.up) } };
  });
}

function otherItems(
  { points, dash, name, outcome, isStop }: OtherPath,
  at: (x: number, y: number) => [number, number],
  w: SideWindow,
): DrawItem[] {
  const px: number[] = [];
  for (let i = 0; i < points.length; i += 2) px.push(...at(points[i], points[i + 1]));
  const n = px.length;
  // words of an early way are beyond its end, of a late one before it
  const isRight = dash[0] > 2 === px[n - 2] > px[0];
  const x = isRight ? px[n - 2] + 8 : px[n - 2] - 8;
  const y = Math.min(w.floorY - 26, px[n - 1] - 8);
  const text = (line: string, dy: number, weight: number, fill: 'ink' | 'ink-2' | 'stop'): DrawItem => ({
    kind: 'text',
    x,
    y: y + dy,
    text: line,
    size: 12.5,
    weight,
    fill,
    anchor: isRight ? 'start' : 'end',
    halo: 'air',
  });
  return [
    { kind: 'line', points: Float32Array.from(px), stroke: 'ink', width: 1.8, dash },
    text(name, 0, 620, 'ink'),
    text(outcome, 16, isStop ? 650 : 480, isStop ? 'stop' : 'ink-2'),
  ];
}

function nearItems(
  { x, y, lines }: NonNullable<SideExtra['near']>,
  at: (x: number, y: number) => [number, number],
  w: SideWindow,
): DrawItem[] {
  const [px, py] = at(x, y);
  const isLeft = px > w.width * 0.4;
  const words = {
    x: isLeft ? px - 34 : px + 34,
    y: Math.max(48, py - 74),
    anchor: isLeft ? ('end' as const) : ('start' as const),
  };
  return nearMarkItems({ x: px, y: py, lines, words });
}
