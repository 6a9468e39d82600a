/**
 * The camera that sees a rectangle on the floor, and upright things on it, where they were marked: a pinhole with square pixels, its axis through
 * the middle of the picture, no distortion. Floor frame: e1 along the near edge to the right, e2 from near to far, e3 up; right-handed.
 *
 * Start: of a plane's homography K [r1 r2 t], r1 and r2 are at right angles and as long as each other, which gives the focal length where the
 * rectangle is seen obliquely, and with it the place (Zhang 2000, from memory). Then all of it by least squares, with the covariance
 * s^2 (J^T J)^-1 of marks that are off by s = 1.5 px in each direction (judgement), or by what is left if that is more.
 */
import { calcDifferences, fitSteps } from '../math/least-squares.ts';
import { solveInPlace } from '../math/linear-solve.ts';
import { addScaled, cross, dot, norm, scale, type Triple } from '../math/vec3.ts';
import type { Spot } from './clip.ts';
import { centred, type Homography, type Picture, type PlaneScale } from './plane-scale.ts';

/** Standard deviation of a marked place, px in each direction (judgement). */
export const MARKED_TO = 1.5;

/** In the floor frame, rad and m. */
export interface FloorCamera {
  /** the axis is turned from e2 towards e1 */
  readonly yaw: number;
  /** looks down by */
  readonly tilt: number;
  /** + its right is higher */
  readonly roll: number;
  readonly place: Triple;
  readonly focal: number; // px
}

export interface Axes {
  readonly right: Triple;
  readonly up: Triple;
  readonly forward: Triple;
}

export function axesOf({ yaw, tilt, roll }: FloorCamera): Axes {
  const forward: Triple = [Math.sin(yaw) * Math.cos(tilt), Math.cos(yaw) * Math.cos(tilt), -Math.sin(tilt)];
  const level: Triple = [Math.cos(yaw), -Math.sin(yaw), 0];
  const upright = cross(level, forward);
  const [c, s] = [Math.cos(roll), Math.sin(roll)];
  return {
    right: addScaled(scale(level, c), upright, s),
    up: addScaled(scale(upright, c), level, -s),
    forward,
  };
}

/** px from the picture's middle, y down; undefined behind the camera. */
function see({ right, up, forward }: Axes, { place, focal }: FloorCamera, p: Triple): Spot | undefined {
  const d: Triple = [p[0] - place[0], p[1] - place[1], p[2] - place[2]];
  const depth = dot(forward, d);
  return depth > 1e-6 ? [(focal * dot(right, d)) / depth, (-focal * dot(up, d)) / depth] : undefined;
}

export interface SolvedCamera {
  readonly camera: FloorCamera;
  /** px, root mean square over all coordinates that were marked */
  readonly leftPx: number;
  /** ± of what follows from the camera; `own`: variance that is not the camera's */
  plusMinus(of: (camera: FloorCamera) => number, own?: number): number;
}

const VIEWS = [20, 45, 80].map((deg) => (deg * Math.PI) / 180);
const STEP = 1e-6;
const ROUNDS = 60;
const EXACT = 1e-8;

/** `feet`: floor coordinates of the posts' feet, about. Undefined where nothing fits. */
export function solveCamera(
  H: Homography,
  plane: PlaneScale,
  picture: Picture,
  feet: readonly Spot[],
  view: number | undefined,
): SolvedCamera | undefined {
  const shares = view === undefined ? [...closedFocal(H), ...VIEWS.map(shareOf)] : [shareOf(view)];
  let best: SolvedCamera | undefined;
  for (const share of shares) {
    const solved = refine(poseFrom(H, share * picture.width, picture), plane, picture, feet, view === undefined);
    if (solved && !(solved.leftPx >= (best?.leftPx ?? Number.POSITIVE_INFINITY))) best = solved;
  }
  return best;
}

/** Focal length in widths of the picture. */
const shareOf = (view: number): number => 0.5 / Math.tan(view / 2);

/** From r1 . r2 = 0 and |r1| = |r2|, both linear in the square of the focal length; none where they give none. */
function closedFocal(H: Homography): number[] {
  const p = [H[0] * H[1] + H[3] * H[4], H[0] ** 2 + H[3] ** 2 - H[1] ** 2 - H[4] ** 2];
  const q = [H[6] * H[7], H[6] ** 2 - H[7] ** 2];
  const square = -(p[0] * q[0] + p[1] * q[1]) / (q[0] ** 2 + q[1] ** 2);
  return square > 0.01 && square < 1e4 ? [Math.sqrt(square)] : [];
}

function poseFrom(H: Homography, focal: number, { width }: Picture): FloorCamera {
  const f = focal / width;
  const column = (k: number): Triple => [H[k] / f, H[3 + k] / f, H[6 + k]];
  const [a, b, c] = [column(0), column(1), column(2)];
  const size = (norm(a) + norm(b)) / 2;
  const r1 = scale(a, 1 / norm(a));
  const across = addScaled(b, r1, -dot(b, r1));
  const r2 = scale(across, 1 / norm(across));
  const r3 = cross(r1, r2);
  const t = scale(c, 1 / size);
  const forward: Triple = [r1[2], r2[2], r3[2]];
  const yaw = Math.atan2(forward[0], forward[1]);
  const tilt = -Math.asin(Math.max(-1, Math.min(1, forward[2])));
  const place: Triple = [-dot(t, r1), -dot(t, r2), -dot(t, r3)];
  const level = axesOf({ yaw, tilt, roll: 0, place, focal });
  const right: Triple = [r1[0], r2[0], r3[0]];
  return { yaw, tilt, roll: Math.atan2(dot(right, level.up), dot(right, level.right)), place, focal };
}

function refine(
  start: FloorCamera,
  { corners, widthM, depthM, posts = [] }: PlaneScale,
  picture: Picture,
  feet: readonly Spot[],
  withFocal: boolean,
): SolvedCamera | undefined {
  const marked = [...corners, ...posts.flatMap(({ foot, top }) => [foot, top])].flatMap((spot) =>
    centred(spot, picture).map((v) => v * picture.width),
  );
  const onFloor: Triple[] = [
    [0, 0, 0],
    [widthM, 0, 0],
    [widthM, depthM, 0],
    [0, depthM, 0],
  ];
  const far = Math.hypot(start.place[0] - widthM / 2, start.place[1] - depthM / 2, start.place[2]);
  // unknowns as shares of a box about the start
  const half = [0.6, 0.6, 0.6, 0.7 * far, 0.7 * far, 0.7 * far, ...(withFocal ? [1.2] : [])];
  const box = [...half, ...feet.flatMap(() => [0.5 * far, 0.5 * far])];
  const cameraAt = (x: readonly number[]): FloorCamera => {
    const by = (k: number): number => (2 * x[k] - 1) * box[k];
    return {
      yaw: start.yaw + by(0),
      tilt: start.tilt + by(1),
      roll: start.roll + by(2),
      place: [start.place[0] + by(3), start.place[1] + by(4), start.place[2] + by(5)],
      focal: withFocal ? start.focal * Math.exp(by(6)) : start.focal,
    };
  };
  const residuals = (x: readonly number[]): number[] | undefined => {
    const camera = cameraAt(x);
    const axes = axesOf(camera);
    const o = half.length;
    const points = feet.flatMap(([s1, s2], k): Triple[] => {
      const i = o + 2 * k;
      const foot: Triple = [s1 + (2 * x[i] - 1) * box[i], s2 + (2 * x[i + 1] - 1) * box[i + 1], 0];
      return [foot, [foot[0], foot[1], posts[k].heightM]];
    });
    const out: number[] = [];
    for (const p of [...onFloor, ...points]) {
      const spot = see(axes, camera, p);
      if (!spot) return undefined;
      out.push(spot[0] - marked[out.length], spot[1] - marked[out.length + 1]);
    }
    return out;
  };
  const steps = box.map(() => STEP);
  const fit = runFit(
    box.map(() => 0.5),
    residuals,
    steps,
  );
  if (!fit) return undefined;
  const x = fit.x;
  const J = calcDifferences(x, fit.r, residuals, steps);
  const n = box.length;
  const s2 = Math.max(MARKED_TO ** 2, fit.cost / (fit.r.length - n));
  const normal = J.flatMap((a) => J.map((b) => a.reduce((sum, v, i) => sum + v * b[i], 0)));
  return {
    camera: cameraAt(x),
    leftPx: Math.sqrt(fit.cost / fit.r.length),
    plusMinus: (of, own = 0) => {
      const at = of(cameraAt(x));
      const slope = x.map((v, j) => (of(cameraAt(x.map((y, k) => (k === j ? v + STEP : y)))) - at) / STEP);
      const gain = Float64Array.from(slope);
      if (!solveInPlace(Float64Array.from(normal), gain, n)) return Number.POSITIVE_INFINITY;
      return (
        2 *
        Math.sqrt(
          s2 *
            Math.max(
              0,
              slope.reduce((sum, v, j) => sum + v * gain[j], 0),
            ) +
            own,
        )
      );
    },
  };
}

function runFit(
  start: readonly number[],
  residuals: (x: readonly number[]) => readonly number[] | undefined,
  steps: readonly number[],
): { readonly x: readonly number[]; readonly r: readonly number[]; readonly cost: number } | undefined {
  const fitting = fitSteps(start, residuals, { rounds: ROUNDS, exact: EXACT, steps });
  for (;;) {
    const step = fitting.next();
    if (step.done) return step.value;
  }
}
