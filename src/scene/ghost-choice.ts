/**
 * Which other instants are drawn as ghosts: those that read best together. Each counts by its face and its trunk, a set by how
 * much its shapes differ on the screen; two whose boxes overlap by more than a share are never shown together, nor one that the
 * figure at the cursor covers.
 */

import type { Vec3 } from '../../sim/index.ts';
import type { StagePose } from './pose-frames.ts';
import type { DrawItem } from './scene.ts';
import type { FigurePlacement, View } from './view.ts';
import { dot } from './view.ts';

/** No ghost is nearer to the cursor than this, s. */
export const CLEAR_OF_CURSOR = 0.1;
/** Two ghosts overlap by this share of the smaller one's box at most; by `UNDER_CURSOR` of it the figure may lie over one. */
export const OVERLAP = 0.12;
const UNDER_CURSOR = 0.3;

/** Cosine to the eye from which a face counts as seen: a little from the side shows it best. */
const FACE = 0.5;
/** What one more ghost is worth, and take-off and landing more than any other; against a reading between -1 and 1. */
const ONE_MORE = 1.5;
const END = 3;
/** m by which the parts of two poses lie apart on the screen, on the whole, where they count as quite different. */
const APART = 0.35;
/** m beyond the joints to the outline of the body: a head, a hand, a foot. */
const BEYOND = 0.15;

/** x0, y0, x1, y1 */
type ScreenBox = readonly [number, number, number, number];

interface GhostChoice extends Pick<FigurePlacement, 'view' | 'scale'> {
  /** most that are shown */
  readonly most: number;
  /** words that no ghost lies under; `ends`: but the first and the last, whose words they are */
  readonly words?: readonly ScreenBox[];
  readonly ends?: true;
  /** how far two may overlap, in place of `OVERLAP` and `UNDER_CURSOR` */
  readonly share?: number;
  /** px of the mass centre */
  at(pose: StagePose): readonly [number, number];
}

/** Of the candidates, ascending in t, the set that is shown with the figure at this pose. */
export function readableGhosts(
  ghosts: readonly StagePose[],
  cursor: StagePose,
  choice: GhostChoice,
): readonly StagePose[] {
  const here = boxOf(cursor, choice);
  // one more is chosen than shown, since the cursor is mostly on one's place
  const clear = chooseGhosts(ghosts, choice, choice.most + 1).filter(
    (pose) =>
      Math.abs(pose.t - cursor.t) >= CLEAR_OF_CURSOR - 1e-9 &&
      shareOf(boxOf(pose, choice), here) <= (choice.share ?? UNDER_CURSOR),
  );
  if (clear.length <= choice.most) return clear;
  // the landing stays, and the take-off where there is room for it
  const isKept = (pose: StagePose): boolean =>
    pose === ghosts[ghosts.length - 1] || (pose === ghosts[0] && choice.most >= 2);
  const away = (pose: StagePose): number => (isKept(pose) ? Number.POSITIVE_INFINITY : Math.abs(pose.t - cursor.t));
  const nearest = clear.reduce((best, pose) => (away(pose) < away(best) ? pose : best));
  return clear.filter((pose) => pose !== nearest);
}

/** What was chosen of the candidates, by where they lie: it stays while the cursor moves. */
const chosen = new WeakMap<readonly StagePose[], Map<string, readonly StagePose[]>>();
const KEPT = 6;

/** The best set of at most so many, whatever the cursor. Of forty candidates all sets would take seconds: those that cannot be best are left out. */
export function chooseGhosts(
  ghosts: readonly StagePose[],
  choice: Omit<GhostChoice, 'most'>,
  most: number,
): readonly StagePose[] {
  const n = ghosts.length;
  const boxes = ghosts.map((pose) => boxOf(pose, choice));
  const key = `${most} ${choice.share} ${choice.ends} ${choice.words} ${choice.view.toward} ${boxes.map((box) => box.map(Math.round)).join(' ')}`;
  const sets = chosen.get(ghosts) ?? new Map<string, readonly StagePose[]>();
  chosen.set(ghosts, sets);
  const known = sets.get(key);
  if (known) return known;
  const spots = ghosts.map((pose) => spotsOf(pose, choice.view));
  const worth = ghosts.map((pose, i) => ONE_MORE + readingOf(pose, choice.view) + (i === 0 || i === n - 1 ? END : 0));
  const apart = ghosts.map((_, i) => ghosts.map((_, j) => Math.min(1, distance(spots[i], spots[j]) / APART)));
  const isUnder = boxes.map(
    (a, i) => !(choice.ends && (i === 0 || i === n - 1)) && (choice.words ?? []).some((b) => shareOf(a, b) > 0),
  );
  const meet = boxes.map((a) => boxes.map((b) => shareOf(a, b) > (choice.share ?? OVERLAP)));
  let best: readonly number[] = [];
  let bestSum = 0;
  /** `differs`: of each from the least different one in the set; undefined where it cannot be beside them */
  const extend = (set: readonly number[], sum: number, differs: readonly (number | undefined)[]): void => {
    if (sum > bestSum) [best, bestSum] = [set, sum];
    const first = (set[set.length - 1] ?? -1) + 1;
    const gains = differs.map((d, i) => (d === undefined ? 0 : worth[i] + d));
    const reach = largestFrom(gains, first, most - set.length);
    for (let i = first; i < n; i++) {
      // in a larger set each differs less: this is the most that can come of it
      if (sum + reach[i] <= bestSum) return;
      if (differs[i] === undefined) continue;
      const next = differs.map((d, j) => (d === undefined || meet[i][j] ? undefined : Math.min(d, apart[i][j])));
      extend([...set, i], sum + gains[i], next);
    }
  };
  const none = isUnder.map((is) => (is ? undefined : 1));
  extend([], 0, none);
  const set = best.map((i) => ghosts[i]);
  if (sets.size > KEPT) sets.clear();
  sets.set(key, set);
  return set;
}

/** For each place from `first` on the sum of the largest `count` of what comes there and after it; what is negative is left out. */
function largestFrom(values: readonly number[], first: number, count: number): Float64Array {
  const sums = new Float64Array(values.length);
  const largest: number[] = [];
  for (let i = values.length - 1; i >= first; i--) {
    let k = largest.length;
    while (k > 0 && largest[k - 1] < values[i]) k--;
    if (values[i] > 0) largest.splice(k, 0, values[i]);
    if (largest.length > count) largest.pop();
    sums[i] = largest.reduce((sum, value) => sum + value, 0);
  }
  return sums;
}

/** How well a pose reads from where it is seen: 1 with the face, under 0 from behind; a trunk seen end on is taken off. */
function readingOf({ R_WF: R }: StagePose, { toward }: View): number {
  const face = R[0] * toward[0] + R[3] * toward[1] + R[6] * toward[2];
  const endOn = Math.abs(R[1] * toward[0] + R[4] * toward[1] + R[7] * toward[2]);
  return 1 - Math.abs(face - FACE) - endOn;
}

/** Joints on the screen from the mass centre, m, y up: x0, y0, x1, y1, ... */
function spotsOf({ frames, p_WScm_W: c }: StagePose, { right, up }: View): Float64Array {
  const p = frames.p_WSo_W;
  const spots = new Float64Array((2 * p.length) / 3);
  for (let k = 0; 3 * k < p.length; k++) {
    const from: Vec3 = [p[3 * k] - c[0], p[3 * k + 1] - c[1], p[3 * k + 2] - c[2]];
    spots[2 * k] = dot(right, from);
    spots[2 * k + 1] = dot(up, from);
  }
  return spots;
}

/** Root mean square over the joints, m. */
function distance(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] - b[i]) ** 2;
  return Math.sqrt((2 * sum) / a.length);
}

function boxOf(pose: StagePose, { view, scale, at }: Omit<GhostChoice, 'most'>): ScreenBox {
  const [x, y] = at(pose);
  const spots = spotsOf(pose, view);
  const xs = spots.filter((_, i) => i % 2 === 0);
  const ys = spots.filter((_, i) => i % 2 === 1);
  return [
    x + scale * (Math.min(...xs) - BEYOND),
    y - scale * (Math.max(...ys) + BEYOND),
    x + scale * (Math.max(...xs) + BEYOND),
    y - scale * (Math.min(...ys) - BEYOND),
  ];
}

/** Boxes of the words among these items, about as broad as the typeface sets them. */
export const wordsIn = (items: readonly DrawItem[]): ScreenBox[] =>
  items.flatMap((item): ScreenBox[] => {
    if (item.kind !== 'text') return [];
    const width = 0.56 * item.size * item.text.length;
    const x0 = item.anchor === 'end' ? item.x - width : item.anchor === 'middle' ? item.x - width / 2 : item.x;
    return [[x0, item.y - item.size, x0 + width, item.y + 0.3 * item.size]];
  });

/** Overlap of two boxes as a share of the smaller. */
export function shareOf(a: ScreenBox, b: ScreenBox): number {
  const wide = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const high = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  if (wide <= 0 || high <= 0) return 0;
  const size = (box: ScreenBox): number => (box[2] - box[0]) * (box[3] - box[1]);
  return (wide * high) / Math.min(size(a), size(b));
}
