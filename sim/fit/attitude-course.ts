/** Somersault, tilt and twist of F along rows, counted continuously, of a motion that was measured or computed: the same for both. */

import type { Body } from '../body/body.ts';
import { RAD, turnedTo } from '../math/angles.ts';
import { attitudeOfMat, matOfQuatInto, mulInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import type { AttitudeCourse } from './recording-study.ts';

/** Beyond this tilt the three angles lose their meaning (docs/conventions.md). */
const TILT_LIMIT = 80 * RAD;

/** R_WF (n x 9) from the root's attitude and the angles. */
export function bodyFramesOf(body: Body, quat_WB: Float64Array, angles: Float64Array): Float64Array {
  const n = quat_WB.length / 4;
  const na = body.angles.length;
  const sm = makeShapeMotion(getModel(body));
  const out = new Float64Array(9 * n);
  const R_WB = new Float64Array(9);
  let phi: Triple | undefined;
  for (let i = 0; i < n; i++) {
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    calcShapeMotion(sm);
    const frame = calcBodyFrame(sm, phi);
    phi = frame.phi;
    matOfQuatInto(quat_WB, 4 * i, R_WB, 0);
    mulInto(R_WB, 0, frame.R_BF, 0, out, 9 * i);
  }
  return out;
}

/** NaN from the first row on that is tilted beyond the limit. Between rows less than half a turn. */
export function courseOf(R_WF: Float64Array): AttitudeCourse {
  const n = R_WF.length / 9;
  const somersault = new Float64Array(n);
  const tilt = new Float64Array(n);
  const twist = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const [s, k, w] = attitudeOfMat(R_WF, 9 * i);
    // at the pace of the last two rows
    const ahead = (x: Float64Array): number => (i > 1 ? 2 * x[i - 1] - x[i - 2] : x[i - 1]);
    somersault[i] = i === 0 ? s : turnedTo(s, ahead(somersault));
    twist[i] = i === 0 ? w : turnedTo(w, ahead(twist));
    tilt[i] = k;
    if (Math.abs(k) > TILT_LIMIT || Number.isNaN(k)) {
      for (const x of [somersault, tilt, twist]) x.fill(Number.NaN, i);
      break;
    }
  }
  return { somersault, tilt, twist };
}
