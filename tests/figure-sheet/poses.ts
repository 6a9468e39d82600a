/** Poses for the figure sheet and the scene tests: named angles in degrees -> segment frames. */

import presets from '../../presets/shapes.json' with { type: 'json' };
import type { Body } from '../../sim/body/body.ts';
import { makeHuman } from '../../sim/body/human.ts';
import { matOfAttitude, quatOfMatInto } from '../../sim/math/rot.ts';
import { getModel } from '../../sim/motion/model.ts';
import { calcPose } from '../../sim/motion/pose.ts';
import { calcShapeMotion, makeShapeMotion } from '../../sim/motion/shape-motion.ts';
import type { PoseFrames, StagePose } from '../../src/scene/pose-frames.ts';

export type AnglesDeg = Readonly<Record<string, number>>;

/** The demo athlete of the sheet. */
export const sheetBody: Body = makeHuman({ name: 'Sheet', sex: 'female', mass: 54, stature: 1.62 });

/** A ready-made shape with both sides written out. */
export function shapeAngles(id: keyof typeof presets): AnglesDeg {
  const out: Record<string, number> = {};
  const known = new Set(sheetBody.angles.map((angle) => angle.name));
  const given: Record<string, number> = { ...presets[id].angles };
  for (const [name, value] of Object.entries(given)) {
    if (known.has(name)) out[name] = value;
    else for (const side of ['L', 'R']) out[name + side] ??= given[name + side] ?? value;
  }
  return out;
}

export const sheetShapes: readonly { readonly name: string; readonly angles: AnglesDeg }[] = (
  [
    ['Straight', 'straight'],
    ['Arms overhead', 'armsOverhead'],
    ['T', 'tShape'],
    ['One up, one down', 'oneUpOneDown'],
    ['Wrapped', 'wrapped'],
    ['Pike', 'pike'],
    ['Tuck', 'tuck'],
    ['Landing', 'landing'],
  ] as const
).map(([name, id]) => ({ name, angles: shapeAngles(id) }));

export const moreShapes = (Object.keys(presets) as (keyof typeof presets)[]).map((id) => ({
  name: id as string,
  angles: shapeAngles(id),
}));

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
export const attitude = (...deg: [somersault: number, tilt: number, twist: number]): Float64Array => {
  const [somersault, tilt, twist] = deg.map((x) => (x * Math.PI) / 180);
  return matOfAttitude(somersault, tilt, twist);
};

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
