/**
 * A camera as it is set up for a flight, and how it sees points of W: a pinhole without distortion, square pixels, held level. It stands `away`
 * from the middle of the room that the flight takes, on the side from which the flight goes to the right (docs/conventions.md, "Views"),
 * `offSquare` nearer to where the flight begins. Picture: px from the upper left corner, y down. SI, radians.
 */
import { FieldError } from '../math/field-error.ts';
import { cross, dot, norm, scale, sub, type Triple } from '../math/vec3.ts';

export interface FilmCamera {
  /** m along the floor, from the middle of the room for body and hands */
  readonly away: number;
  /** m over the floor or water */
  readonly up: number;
  /** rad from square on; + nearer to where the flight begins, pi / 2 in line with it */
  readonly offSquare: number;
  /** m over the floor that it looks at, over the middle of the room; left out: half way up the room */
  readonly aim?: number;
  /** rad across the picture */
  readonly view: number;
  readonly framesHz: number;
  /** s that a line of the picture takes light */
  readonly shutter: number;
  /** s from reading the first line to reading the last; 0: all at once */
  readonly lines: number;
  /** px */
  readonly width: number;
  readonly height: number;
}

/** Usual for a telephone on a tripod (judgement): square on, from where a somersault and its hands fit. */
export const USUAL_CAMERA: FilmCamera = {
  away: 8.5,
  up: 1.4,
  offSquare: 0,
  view: (42 * Math.PI) / 180,
  framesHz: 120,
  shutter: 1 / 1000,
  lines: 0.008,
  width: 1920,
  height: 1080,
};

/** Where shutter and reading would take longer than a frame, they take all of it. */
export const fitToFrame = (camera: FilmCamera): FilmCamera => ({
  ...camera,
  shutter: Math.min(camera.shutter, 1 / camera.framesHz),
  lines: Math.min(camera.lines, 1 / camera.framesHz),
});

const RAD = Math.PI / 180;

/** Least and most of each, SI; shutter and lines end at the time of a frame. */
export const CAMERA_RANGES = {
  away: [1, 100],
  up: [0.1, 20],
  offSquare: [-90 * RAD, 90 * RAD],
  aim: [0, 20],
  view: [5 * RAD, 150 * RAD],
  framesHz: [10, 2000],
  shutter: [1e-5, 0.1],
  lines: [0, 0.1],
  width: [160, 8192],
  height: [160, 8192],
} as const satisfies Record<keyof FilmCamera, readonly [number, number]>;

const SAID: Readonly<Record<keyof FilmCamera, string>> = {
  away: '1 to 100 m',
  up: '0.1 to 20 m',
  offSquare: '-90 to 90 deg',
  aim: '0 to 20 m',
  view: '5 to 150 deg',
  framesHz: '10 to 2000 a second',
  shutter: '1/100000 s to 1/10 s',
  lines: '0 to 0.1 s',
  width: '160 to 8192 px, a whole number',
  height: '160 to 8192 px, a whole number',
};

/** Rounding of a degree or of 1 / Hz is not out of range. */
const SLACK = 1 + 1e-9;

/** Throws a FieldError that names field, value and range. */
export function checkCamera(camera: FilmCamera): FilmCamera {
  for (const name of Object.keys(CAMERA_RANGES) as (keyof FilmCamera)[]) {
    const value = camera[name];
    if (value === undefined && name === 'aim') continue;
    const [least, most] = CAMERA_RANGES[name];
    const isIn = value !== undefined && value >= least - 1e-12 && value <= most + 1e-12;
    const isWhole = (name !== 'width' && name !== 'height') || Number.isInteger(value);
    const isAngle = name === 'offSquare' || name === 'view';
    if (!isIn || !isWhole)
      throw new FieldError(name, isAngle && value !== undefined ? Number((value / RAD).toFixed(3)) : value, SAID[name]);
  }
  for (const name of ['shutter', 'lines'] as const)
    if (camera[name] * camera.framesHz > SLACK)
      throw new FieldError(
        name,
        camera[name],
        `at most the time of a frame, ${Number((1 / camera.framesHz).toPrecision(3))} s at ${camera.framesHz} frames a second`,
      );
  return camera;
}

/** Where a camera stands and looks, for projecting. */
export interface Sightline {
  readonly p_WC_W: Triple;
  /** unit vectors in W: right and up in the picture, and away from the camera along its axis */
  readonly right: Triple;
  readonly up: Triple;
  readonly forward: Triple;
  /** px */
  readonly focal: number;
  readonly width: number;
  readonly height: number;
  /** m from the camera to the point that it looks at, and that point */
  readonly distance: number;
  readonly p_WA_W: Triple;
}

/** Middle and half height of what is filmed, and which way the flight goes. */
export interface Stand {
  /** middle of the room, m in W */
  readonly middle: Triple;
  /** the height 0 of `up` and `aim` */
  readonly floorY: number;
  /** 1: the flight goes along +X, or nowhere; -1: along -X */
  readonly way: 1 | -1;
}

/** Puts a camera in its place before what is filmed. */
export function standCamera(camera: FilmCamera, { middle, floorY, way }: Stand): Sightline {
  const { away, offSquare } = camera;
  const p_WC_W: Triple = [
    middle[0] - way * away * Math.sin(offSquare),
    floorY + camera.up,
    middle[2] + way * away * Math.cos(offSquare),
  ];
  const p_WA_W: Triple = [middle[0], camera.aim === undefined ? middle[1] : floorY + camera.aim, middle[2]];
  const line = sub(p_WA_W, p_WC_W);
  const distance = norm(line);
  const forward = scale(line, 1 / distance);
  const side = cross(forward, [0, 1, 0]);
  const right = scale(side, 1 / norm(side));
  return {
    p_WC_W,
    right,
    up: cross(right, forward),
    forward,
    focal: camera.width / 2 / Math.tan(camera.view / 2),
    width: camera.width,
    height: camera.height,
    distance,
    p_WA_W,
  };
}

/** px of a point of W; its depth in m along the axis. Behind the camera, where depth is not positive, px mean nothing. */
export function projectInto(s: Sightline, p: ArrayLike<number>, o: number, out: Float64Array, at: number): number {
  const x = p[o] - s.p_WC_W[0];
  const y = p[o + 1] - s.p_WC_W[1];
  const z = p[o + 2] - s.p_WC_W[2];
  const depth = s.forward[0] * x + s.forward[1] * y + s.forward[2] * z;
  const k = s.focal / depth;
  out[at] = s.width / 2 + k * (s.right[0] * x + s.right[1] * y + s.right[2] * z);
  out[at + 1] = s.height / 2 - k * (s.up[0] * x + s.up[1] * y + s.up[2] * z);
  return depth;
}

/** px/s of a point that moves at v. */
export function pixelSpeed(s: Sightline, p: Triple, v: Triple): Triple {
  const d = sub(p, s.p_WC_W);
  const depth = dot(s.forward, d);
  const deeper = dot(s.forward, v);
  const along = (axis: Triple): number => (s.focal * (dot(axis, v) * depth - dot(axis, d) * deeper)) / depth ** 2;
  const [x, y] = [along(s.right), -along(s.up)];
  return [x, y, Math.hypot(x, y)];
}
