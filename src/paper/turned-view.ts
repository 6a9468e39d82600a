/**
 * The side view turned about the vertical until most of the limbs is seen, with the face or the spine: of a pose one side of which hides the
 * other nobody can copy the arms. Found by trying: each view is painted on a coarse grid, nearer parts over farther ones, and what is left is counted.
 */
import type { Body } from '../../sim/index.ts';
import { getLook } from '../scene/athlete-look.ts';
import { figureItems } from '../scene/figure.ts';
import type { Pieces } from '../scene/pieces.ts';
import type { StagePose } from '../scene/pose-frames.ts';
import { facing } from '../scene/posed-look.ts';
import type { DrawItem, Points } from '../scene/scene.ts';
import type { View } from '../scene/view.ts';

const RAD = Math.PI / 180;
/** Turned by no more than this the flight still goes the way it goes; less than LEAST looks like a mistake. Our judgement. */
const MOST_DEG = 56;
const STEP_DEG = 4;
const IN_A_PIECE = 6;
/** px per m, and cells along each side, of the grid */
const SCALE = 26;
const CELLS = 72;
/** An arm counts as much as a leg that is twice as broad. */
const WEIGHTS: Readonly<Record<string, number>> = { armL: 2, armR: 2, legL: 1, legR: 1 };
/** Where neither neckline nor spine is drawn, the trunk does not say which side of it is seen. */
const FLAT = { under: 0.2, worth: 0.8 } as const;

/** About the world's vertical: screen up stays up. */
function turnView(view: View, rad: number): View {
  const [c, s] = [Math.cos(rad), Math.sin(rad)];
  const turn = ([x, y, z]: View['right']): View['right'] => [c * x + s * z, y, -s * x + c * z];
  return { right: turn(view.right), up: view.up, toward: turn(view.toward) };
}

export function* searchView(body: Body, pose: StagePose, side: View): Pieces<View> {
  let best = side;
  let most = Number.NEGATIVE_INFINITY;
  let tried = 0;
  for (let deg = -MOST_DEG; deg <= MOST_DEG; deg += STEP_DEG) {
    if (tried++ % IN_A_PIECE === 0) yield;
    const view = turnView(side, deg * RAD);
    const score = scoreView(body, pose, view);
    if (score > most) {
      most = score;
      best = view;
    }
  }
  return best;
}

function scoreView(body: Body, pose: StagePose, view: View): number {
  const place = { view, scale: SCALE, anchor: pose.p_WScm_W, x: CELLS / 2, y: CELLS / 2, hit: 'seen' };
  const seen = countSeen(figureItems(body, pose.frames, { ...place, rough: true }));
  let sum = 0;
  // of each limb the root of what is seen: a second arm is worth more than the rest of the first
  for (const [chain, weight] of Object.entries(WEIGHTS)) sum += weight * Math.sqrt(seen.get(chain) ?? 0);
  const { chest } = getLook(body);
  const isFlat = chest >= 0 && Math.abs(facing(pose.frames, chest, 0, view)) < FLAT.under;
  return isFlat ? sum * FLAT.worth : sum;
}

/** Cells of each chain that no later item covers. */
function countSeen(items: readonly DrawItem[]): Map<string, number> {
  const owners = new Int8Array(CELLS * CELLS);
  const names: string[] = [];
  for (const item of items) {
    if (item.kind !== 'fill') continue;
    const chain = String(item.data?.chain ?? '');
    let owner = names.indexOf(chain) + 1;
    if (owner === 0) owner = names.push(chain);
    for (const contour of item.contours) paint(owners, contour, owner);
  }
  const counts = new Map<string, number>();
  for (const owner of owners) if (owner > 0) counts.set(names[owner - 1], (counts.get(names[owner - 1]) ?? 0) + 1);
  return counts;
}

/** A convex contour: each row has one span. */
function paint(owners: Int8Array, contour: Points, owner: number): void {
  const n = contour.length / 2;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < contour.length; i += 2) {
    low = Math.min(low, contour[i]);
    high = Math.max(high, contour[i]);
  }
  for (let row = Math.max(0, Math.ceil(low - 0.5)); row <= Math.min(CELLS - 1, Math.floor(high - 0.5)); row++) {
    const y = row + 0.5;
    let from = Number.POSITIVE_INFINITY;
    let to = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      const [y0, y1] = [contour[2 * i + 1], contour[2 * j + 1]];
      if (y0 <= y === y1 <= y) continue;
      const x = contour[2 * i] + ((y - y0) / (y1 - y0)) * (contour[2 * j] - contour[2 * i]);
      from = Math.min(from, x);
      to = Math.max(to, x);
    }
    const last = Math.min(CELLS - 1, Math.floor(to - 0.5));
    for (let x = Math.max(0, Math.ceil(from - 0.5)); x <= last; x++) owners[row * CELLS + x] = owner;
  }
}
