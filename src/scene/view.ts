/**
 * Where the stage is seen from: an orthographic camera as three unit vectors in W. Screen right, screen up and the
 * direction towards the eye; right x up = toward. Which side is which: docs/conventions.md, "Views".
 */
import type { Vec3 } from '../../sim/index.ts';

export interface View {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
}

/** How one body is seen in a picture: enough to find its places on the screen, and the way back. */
export interface FigurePlacement {
  readonly view: View;
  /** px per m */
  readonly scale: number;
  /** the point of W that is drawn at x, y */
  readonly anchor: Vec3;
  readonly x: number;
  readonly y: number;
}

/** Below this speed along, m/s, the side view keeps +X to the right. */
const STILL = 0.2;

const runsBackward = (vx: number): boolean => vx < 0 && Math.abs(vx) >= STILL;

/** Screen right is the direction of travel: +X is seen from world right, -X from world left. */
export function sideView(vx: number): View {
  return runsBackward(vx)
    ? { right: [-1, 0, 0], up: [0, 1, 0], toward: [0, 0, -1] }
    : { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] };
}

/** The camera is on +X and looks along -X. */
export const frontView: View = { right: [0, 0, -1], up: [0, 1, 0], toward: [1, 0, 0] };

/** From behind: the camera is on -X and looks along X. */
export const backView: View = { right: [0, 0, 1], up: [0, 1, 0], toward: [-1, 0, 0] };

/** From above, same screen right as the side view. */
export function topView(vx: number): View {
  return runsBackward(vx)
    ? { right: [-1, 0, 0], up: [0, 0, 1], toward: [0, 1, 0] }
    : { right: [1, 0, 0], up: [0, 0, -1], toward: [0, 1, 0] };
}

/** Carried along with a frame (9, row by row): the athlete seems held upright. azimuth 0: from the front; 90 deg: the
 * athlete's left side is towards the eye. roll: the picture turned counterclockwise, as a tilt to the right is from the front. */
export function heldView(R: ArrayLike<number>, azimuth = 0, roll = 0): View {
  const c = Math.cos(azimuth);
  const s = Math.sin(azimuth);
  const turn = (x: number, y: number, z: number): Vec3 => [
    R[0] * x + R[1] * y + R[2] * z,
    R[3] * x + R[4] * y + R[5] * z,
    R[6] * x + R[7] * y + R[8] * z,
  ];
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)];
  return { right: turn(-s * cr, -sr, -c * cr), up: turn(-s * sr, cr, -c * sr), toward: turn(c, 0, -s) };
}

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
