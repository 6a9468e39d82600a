/** Poses for the figure sheet and the scene tests: named angles in degrees -> segment frames. */
import type { Body } from '../../sim/body/body.ts';
import { quatOfMatInto } from '../../sim/math/rot.ts';
import { getModel } from '../../sim/motion/model.ts';
import { calcPose } from '../../sim/motion/pose.ts';
import { calcShapeMotion, makeShapeMotion } from '../../sim/motion/shape-motion.ts';
import type { PoseFrames, StagePose } from '../../src/scene/pose-frames.ts';

export type AnglesDeg = Readonly<Record<string, number>>;

const both = (angles: AnglesDeg): AnglesDeg =>
  Object.fromEntries(Object.entries(angles).flatMap(([n, v]) => [`${n}L`, `${n}R`].map((m) => [m, v])));
const arms = (shoulderPlane: number, shoulderElevation: number, elbowFlexion = 0, shoulderTurn = 0): AnglesDeg =>
  both({ shoulderPlane, shoulderElevation, elbowFlexion, shoulderTurn });
const pointed = both({ anklePlantarFlexion: 55 });

export const sheetShapes: readonly { readonly name: string; readonly angles: AnglesDeg }[] = [
  { name: 'Straight', angles: { ...pointed, ...arms(20, 8) } },
  { name: 'Arms overhead', angles: { ...pointed, ...arms(20, 172) } },
  { name: 'T', angles: { ...pointed, ...arms(0, 90) } },
  {
    name: 'One up, one down',
    angles: { ...pointed, ...arms(15, 168), shoulderElevationL: 35, shoulderPlaneL: 10 },
  },
  { name: 'Wrapped', angles: { ...pointed, ...arms(60, 40, 128, 75), elbowFlexionR: 118 } },
  {
    name: 'Pike',
    angles: {
      ...pointed,
      ...both({ hipFlexion: 118, anklePlantarFlexion: 50 }),
      ...arms(90, 62),
      lumbarFlexion: 18,
      thoracicFlexion: 14,
      neckFlexion: 8,
    },
  },
  {
    name: 'Tuck',
    angles: {
      ...pointed,
      ...both({ hipFlexion: 122, kneeFlexion: 132, anklePlantarFlexion: 40 }),
      ...arms(82, 56, 32, 20),
      lumbarFlexion: 26,
      thoracicFlexion: 18,
      neckFlexion: 6,
    },
  },
  {
    name: 'Landing',
    angles: { ...both({ hipFlexion: 62, kneeFlexion: 62, anklePlantarFlexion: -14 }), ...arms(70, 78), lumbarFlexion: 6 },
  },
];

const motions = new WeakMap<Body, ReturnType<typeof makeShapeMotion>>();

/** Frames of a body with these angles; `R` (9, row by row) is the root's attitude in W, `com` the mass centre. */
export function poseOf(
  body: Body,
  angles: AnglesDeg,
  R: ArrayLike<number> = [1, 0, 0, 0, 1, 0, 0, 0, 1],
  com: readonly [number, number, number] = [0, 0, 0],
): PoseFrames {
  let sm = motions.get(body);
  if (!sm) {
    sm = makeShapeMotion(getModel(body));
    motions.set(body, sm);
  }
  const rad = body.angles.map((a) => ((angles[a.name] ?? 0) * Math.PI) / 180);
  let k = 0;
  for (const segment of body.segments) {
    for (const hinge of segment.hinges) {
      sm.q[k++] = hinge.terms.reduce((sum, term) => sum + term.coef * rad[term.angle], 0);
    }
  }
  calcShapeMotion(sm);
  const quat = new Float64Array(4);
  quatOfMatInto(R, 0, quat, 0);
  return calcPose(sm, quat, com);
}

/** Rz(somersault) Rx(tilt) Ry(twist), deg. */
export function attitude(somersaultDeg: number, tiltDeg: number, twistDeg: number): number[] {
  const [a, b, c] = [somersaultDeg, tiltDeg, twistDeg].map((x) => (x * Math.PI) / 180);
  const [ca, sa, cb, sb, cc, sc] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b), Math.cos(c), Math.sin(c)];
  return [
    ca * cc - sa * sb * sc,
    -sa * cb,
    ca * sc + sa * sb * cc,
    sa * cc + ca * sb * sc,
    ca * cb,
    sa * sc - ca * sb * cc,
    -cb * sc,
    sb,
    cb * cc,
  ];
}

export const mixAngles = (a: AnglesDeg, b: AnglesDeg, s: number): AnglesDeg =>
  Object.fromEntries(
    [...new Set([...Object.keys(a), ...Object.keys(b)])].map((n) => [n, (a[n] ?? 0) * (1 - s) + (b[n] ?? 0) * s]),
  );

export function stagePose(
  body: Body,
  t: number,
  angles: AnglesDeg,
  [somersaultDeg, tiltDeg, twistDeg]: readonly [number, number, number],
  com: readonly [number, number, number],
): StagePose {
  const R_WF = attitude(somersaultDeg, tiltDeg, twistDeg);
  const rad = Math.PI / 180;
  return {
    t,
    frames: poseOf(body, angles, R_WF, com),
    p_WScm_W: com,
    R_WF,
    somersault: somersaultDeg * rad,
    tilt: tiltDeg * rad,
    twist: twistDeg * rad,
  };
}
