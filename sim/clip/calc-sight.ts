/**
 * How W is seen in a clip: from a length, in parallel, or from a rectangle on the floor and what stands on it. X of W lies along the near edge of
 * the rectangle, or along the level of the picture, to the right or left as the flight goes; Y up. The feet at take-off are where they are in W.
 */
import { CAMERA_RANGES } from '../filming/camera.ts';
import { FieldError } from '../math/field-error.ts';
import { dot, norm, sub, type Triple } from '../math/vec3.ts';
import type { ClipScale, ClipSight, ClipStand, Measured, Spot } from './clip.ts';
import { type Axes, axesOf, type FloorCamera, MARKED_TO, type SolvedCamera, solveCamera } from './clip-camera.ts';
import {
  apart,
  calcHomography,
  centred,
  checkMetres,
  checkPlane,
  checkSpot,
  LEAST_LENGTH,
  type Picture,
  type PlaneScale,
  saySpot,
  toFloor,
  widthsPerMetre,
} from './plane-scale.ts';

interface SightGiven {
  readonly picture: Picture; // px
  readonly scale: ClipScale;
  readonly stand: ClipStand;
  /** rad across, typed */
  readonly view?: number;
  /** m in W: where what is at `stand.feet` is at take-off */
  readonly p_WFeet_W: Triple;
  /** m in W: the floor that the rectangle lies on */
  readonly floorY: number;
  /** 1: the flight goes along +X, or nowhere; -1: along -X */
  readonly way: 1 | -1;
}

const LENGTH = [0.05, 50] as const;
const RAD = Math.PI / 180;
/** A field of view that is known to worse than this share is none. */
const KNOWN = 0.25;
/** Farther than this from the camera no feet are marked, m. */
const FARTHEST = 200;
const UNKNOWN: Measured = { value: Number.NaN, plusMinus: Number.NaN };

/** Throws a FieldError in words where no camera sees such points. */
export function calcClipSight(given: SightGiven): ClipSight {
  const { picture, scale, stand, view } = given;
  const [least, most] = CAMERA_RANGES.view;
  if (view !== undefined && !(view >= least - 1e-9 && view <= most + 1e-9))
    throw new FieldError('view', Number((view / RAD).toFixed(2)), '5 to 150 deg');
  checkSpot('stand.feet', stand.feet, picture);
  if (scale.kind === 'length') return inParallel(given, lengthScale(scale, picture));
  checkPlane(scale, picture);
  return calcPlaneSight(given, scale);
}

/** Both ends of the length are marked. */
function lengthScale({ from, to, lengthM }: Extract<ClipScale, { kind: 'length' }>, picture: Picture): Measured {
  checkMetres('scale.lengthM', lengthM, LENGTH);
  checkSpot('scale.from', from, picture);
  checkSpot('scale.to', to, picture);
  const px = apart(from, to);
  if (px < LEAST_LENGTH)
    throw new FieldError('scale.to', saySpot(to), `at least ${LEAST_LENGTH} px from the other end`);
  return { value: px / lengthM, plusMinus: (2 * Math.SQRT2 * MARKED_TO) / lengthM };
}

/** The camera is taken as level and square on: nothing says how it is turned. */
function inParallel({ stand, way, p_WFeet_W }: SightGiven, pxPerM: Measured): ClipSight {
  const side = stand.goesRight ? way : -way;
  return {
    sight: {
      kind: 'parallel',
      parallel: {
        right: [side, 0, 0],
        up: [0, 1, 0],
        toward: [0, 0, side],
        pxPerM: pxPerM.value,
        anchor: [...p_WFeet_W],
        at: stand.feet,
      },
    },
    view: { how: 'parallel', rad: UNKNOWN },
    tilt: UNKNOWN,
    roll: UNKNOWN,
    offSquare: UNKNOWN,
    away: UNKNOWN,
    pxPerM,
    leftPx: Number.NaN,
  };
}

function calcPlaneSight(given: SightGiven, scale: PlaneScale): ClipSight {
  const { picture, stand, view } = given;
  const H = calcHomography(scale, picture);
  const onFloor = (field: string, spot: Spot): Spot => {
    const at = toFloor(H, centred(spot, picture));
    if (!at) throw new FieldError(field, saySpot(spot), 'a place on the floor, below its horizon');
    return at;
  };
  const posts = (scale.posts ?? []).map(({ foot }, k) => onFloor(`scale.posts[${k}].foot`, foot));
  const solved = solveCamera(H, scale, picture, posts, view);
  if (solved && view !== undefined) return inPerspective(given, solved, 'given');
  if (solved && isViewKnown(solved, picture)) return inPerspective(given, solved, 'solved');
  const feet = onFloor('stand.feet', stand.feet);
  return inParallel(given, {
    value: picture.width * widthsPerMetre(H, feet),
    plusMinus: scaleError(scale, picture, stand.feet),
  });
}

const viewOf = ({ focal }: FloorCamera, { width }: Picture): number => 2 * Math.atan(width / 2 / focal);

function isViewKnown({ camera, plusMinus }: SolvedCamera, picture: Picture): boolean {
  const rad = viewOf(camera, picture);
  const [least, most] = CAMERA_RANGES.view;
  return rad >= least && rad <= most && plusMinus((c) => viewOf(c, picture)) <= KNOWN * rad;
}

/** ± of the scale at the feet, by moving each marked coordinate. */
function scaleError(scale: PlaneScale, picture: Picture, feet: Spot): number {
  const at = (corners: PlaneScale['corners'], spot: Spot): number => {
    const H = calcHomography({ ...scale, corners }, picture);
    const floor = toFloor(H, centred(spot, picture));
    return floor ? picture.width * widthsPerMetre(H, floor) : Number.NaN;
  };
  const moved = (spot: Spot, k: number): Spot => [spot[0] + (k === 0 ? 1 : 0), spot[1] + (k === 1 ? 1 : 0)];
  const none = at(scale.corners, feet);
  let squares = 0;
  for (const k of [0, 1]) {
    squares += (at(scale.corners, moved(feet, k)) - none) ** 2;
    for (const j of [0, 1, 2, 3]) {
      const [a, b, c, d] = scale.corners.map((corner, i) => (i === j ? moved(corner, k) : corner));
      squares += (at([a, b, c, d], feet) - none) ** 2;
    }
  }
  return 2 * MARKED_TO * Math.sqrt(squares);
}

/** Where the line of sight through px meets a level of the floor frame, m over it; undefined where it never does. */
function meetLevel(camera: FloorCamera, { width, height }: Picture, spot: Spot, level: number): Triple | undefined {
  const { right, up, forward } = axesOf(camera);
  const [x, y] = [(spot[0] - width / 2) / camera.focal, (height / 2 - spot[1]) / camera.focal];
  const ray: Triple = [0, 1, 2].map((k) => forward[k] + x * right[k] + y * up[k]) as Triple;
  const far = (level - camera.place[2]) / ray[2];
  if (!(far > 0)) return undefined;
  return [camera.place[0] + far * ray[0], camera.place[1] + far * ray[1], level];
}

function inPerspective(given: SightGiven, solved: SolvedCamera, how: 'given' | 'solved'): ClipSight {
  const { picture, stand, p_WFeet_W, floorY, way } = given;
  const { camera, leftPx } = solved;
  const level = p_WFeet_W[1] - floorY;
  const feet = meetLevel(camera, picture, stand.feet, level);
  if (!feet || norm(sub(feet, camera.place)) > FARTHEST)
    throw new FieldError('stand.feet', saySpot(stand.feet), `a place under the horizon, at most ${FARTHEST} m away`);
  const side = stand.goesRight ? way : -way;
  // e1 is +-X, up is Y, and e2 = Y x e1
  const turn = (v: Triple): Triple => [side * v[0], v[2], -side * v[1]];
  const axes = axesOf(camera);
  const from = turn(sub(camera.place, feet));
  const p_WC_W: Triple = [p_WFeet_W[0] + from[0], p_WFeet_W[1] + from[1], p_WFeet_W[2] + from[2]];
  const forward = turn(axes.forward);
  const distance = dot(axes.forward, sub(feet, camera.place));
  const ofFeet = (value: (c: FloorCamera, at: Triple, a: Axes) => number): Measured => {
    const at = (c: FloorCamera, spot: Spot): number => value(c, meetLevel(c, picture, spot, level) ?? feet, axesOf(c));
    const none = at(camera, stand.feet);
    const own = [at(camera, [stand.feet[0] + 1, stand.feet[1]]), at(camera, [stand.feet[0], stand.feet[1] + 1])];
    const variance = own.reduce((sum, v) => sum + ((v - none) * MARKED_TO) ** 2, 0);
    return { value: none, plusMinus: solved.plusMinus((c) => at(c, stand.feet), variance) };
  };
  const ofCamera = (value: (c: FloorCamera) => number): Measured => ({
    value: value(camera),
    plusMinus: solved.plusMinus(value),
  });
  return {
    sight: {
      kind: 'perspective',
      sightline: {
        p_WC_W,
        right: turn(axes.right),
        up: turn(axes.up),
        forward,
        focal: camera.focal,
        width: picture.width,
        height: picture.height,
        distance,
        p_WA_W: [0, 1, 2].map((k) => p_WC_W[k] + distance * forward[k]) as Triple,
      },
    },
    view: {
      how,
      rad:
        how === 'solved'
          ? ofCamera((c) => viewOf(c, picture))
          : { value: viewOf(camera, picture), plusMinus: Number.NaN },
    },
    tilt: ofCamera((c) => c.tilt),
    roll: ofCamera((c) => c.roll),
    offSquare: ofFeet((c, at) => side * way * Math.atan2(at[0] - c.place[0], at[1] - c.place[1])),
    away: ofFeet((c, at) => Math.hypot(at[0] - c.place[0], at[1] - c.place[1])),
    pxPerM: ofFeet((c, at, a) => c.focal / dot(a.forward, sub(at, c.place))),
    leftPx,
  };
}
