/** A whole skill as it is drawn: poses of all its phases in the frame of its first flight, and how what is touched gives way. m, s */
import type { Body, Piece } from '../../sim/index.ts';
import { placeIn } from '../../sim/math/sorted.ts';
import type { StagePose } from './pose-frames.ts';
import { sideView, type View } from './view.ts';

interface StagePhase {
  readonly kind: 'swing' | 'contact' | 'flight' | 'landing';
  readonly from: number;
  readonly to: number;
}

/** Hands or feet on a piece of the apparatus, and how it gives way meanwhile: from rest along X and up, ascending in t. s, m */
export interface StageTouch {
  readonly piece: number;
  readonly from: number;
  readonly to: number;
  readonly t: readonly number[];
  readonly along: readonly number[];
  readonly up: readonly number[];
}

export interface WholeStage {
  readonly body: Body;
  readonly poses: readonly StagePose[];
  readonly phases: readonly StagePhase[];
  readonly view: View;
  readonly pieces: readonly Piece[];
  readonly touches: readonly StageTouch[];
}

/** The touch that lasts at t, and how far its piece has given way. */
export function touchAt(
  { touches }: WholeStage,
  t: number,
): { touch: StageTouch; along: number; up: number } | undefined {
  const touch = touches.find((one) => t >= one.from - 1e-9 && t <= one.to + 1e-9 && one.t.length > 0);
  if (!touch) return undefined;
  const { i, share } = placeIn(touch.t, t);
  const k = share < 0.5 ? i : i + 1;
  return { touch, along: touch.along[k], up: touch.up[k] };
}

export const viewOf = (vx: number): View => sideView(vx);

/** Nearest pose to t, by time. */
export function poseNear(poses: readonly StagePose[], t: number): StagePose {
  let [low, high] = [0, poses.length - 1];
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (poses[mid].t <= t) low = mid;
    else high = mid;
  }
  return Math.abs(poses[low].t - t) <= Math.abs(poses[high].t - t) ? poses[low] : poses[high];
}

/** Hands, feet and head are beyond the joints that are looked at, m. */
const BEYOND_JOINTS = 0.24;

/** How far a pose reaches from its mass centre to the left and right of the screen, m. */
export function reachOf({ view }: WholeStage, { frames, p_WScm_W }: StagePose): { left: number; right: number } {
  const [rx, , rz] = view.right;
  let [left, right] = [0, 0];
  const { p_WSo_W } = frames;
  for (let i = 0; i < p_WSo_W.length; i += 3) {
    const u = rx * (p_WSo_W[i] - p_WScm_W[0]) + rz * (p_WSo_W[i + 2] - p_WScm_W[2]);
    left = Math.max(left, -u);
    right = Math.max(right, u);
  }
  return { left: left + BEYOND_JOINTS, right: right + BEYOND_JOINTS };
}

/** At most so many other poses a phase. */
const GHOSTS: Readonly<Record<StagePhase['kind'], readonly number[]>> = {
  swing: [0, 0.34, 0.67],
  contact: [0.5],
  flight: [0.18, 0.5, 0.82],
  landing: [0, 0.3, 1],
};

/** Poses that are drawn besides the one at the cursor: apart by at least `apart` s. */
export function ghostPoses({ poses, phases }: WholeStage, from: number, apart: number): StagePose[] {
  const shown: StagePose[] = [];
  for (const phase of phases) {
    const [a, b] = [Math.max(phase.from, from), phase.to];
    if (b <= a) continue;
    const fits = Math.max(1, Math.floor((b - a) / apart));
    const shares = GHOSTS[phase.kind];
    const wanted = fits >= shares.length ? shares : fits === 1 ? [shares[Math.floor(shares.length / 2)]] : [0.25, 0.75];
    for (const share of wanted) shown.push(poseNear(poses, a + share * (b - a)));
  }
  return shown;
}
