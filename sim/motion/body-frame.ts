/**
 * The body frame F that carries somersault, tilt and twist: between the upper frame U (head and trunk) and the lower
 * frame L (legs), R_BF = R_BU exp(f phi), phi the rotation vector of R_BU^T R_BL, f = a_L / (a_U + a_L). With h = 0 two
 * hinged bodies then turn so that F is nearly at rest. Definitions: docs/conventions.md, "Frames". A body without
 * frame points has F = B.
 */

import type { Body } from '../body/body.ts';
import { onceFor } from '../math/once-for.ts';
import { applyTInto, matOfVectorInto, mulInto, mulTInto, vectorOfMatInto } from '../math/rot.ts';
import { addScaled, cross, norm, scale, sub, type Triple } from '../math/vec3.ts';
import {
  betweenInto,
  calcHinged,
  centreInto,
  type Group,
  type Line,
  lineInto,
  type Motion,
  makeGroup,
  makeLine,
  makeMotion,
  minusInto,
  pointInto,
} from './frame-line.ts';
import type { ShapeMotion } from './shape-motion.ts';

export interface BodyFrame {
  readonly R_BF: Float64Array; // (9)
  readonly w_BF_B: Float64Array; // (3)
  /** the rotation vector from U to L; hand it on to the next instant so that it stays continuous past half a turn */
  phi: Triple;
}

interface Groups {
  readonly upper: Group;
  readonly legs: Group;
  readonly legL: Group;
  readonly legR: Group;
}

const getGroups = onceFor(
  (body: Body): Groups => ({
    upper: makeGroup(body, (s) => s.group === 'upper'),
    legs: makeGroup(body, (s) => s.group === 'legs'),
    legL: makeGroup(body, (s) => s.group === 'legs' && s.side === 'left'),
    legR: makeGroup(body, (s) => s.group === 'legs' && s.side === 'right'),
  }),
);

// filled again at each call
const hipL = makeMotion();
const hipR = makeMotion();
const hip = makeMotion();
const shoulderL = makeMotion();
const shoulderR = makeMotion();
const trunk = makeMotion();
const legs = makeMotion();
const legL = makeMotion();
const legR = makeMotion();
const up = makeMotion();
const across = makeMotion();
const U = makeLine();
const L = makeLine();
const weightU = new Float64Array(2); // value and rate
const weightL = new Float64Array(2);
const spread = new Float64Array(2);
const R_UL = new Float64Array(9);
const R_UF = new Float64Array(9);

export const makeBodyFrame = (): BodyFrame => ({
  R_BF: new Float64Array(9),
  w_BF_B: new Float64Array(3),
  phi: [0, 0, 0],
});

/** F from a filled ShapeMotion. `phi` of an earlier instant keeps the short rotation continuous; without it phi <= pi. */
export const calcBodyFrame = (sm: ShapeMotion, before?: Triple): BodyFrame =>
  bodyFrameInto(sm, before, makeBodyFrame());

export function bodyFrameInto(sm: ShapeMotion, before: Triple | undefined, out: BodyFrame): BodyFrame {
  const { R_BF, w_BF_B } = out;
  const points = sm.model.body.framePoints;
  if (!points) {
    R_BF.fill(0);
    R_BF[0] = R_BF[4] = R_BF[8] = 1;
    w_BF_B.fill(0);
    out.phi = [0, 0, 0];
    return out;
  }
  const groups = getGroups(sm.model.body);
  pointInto(sm, points.hipL, hipL);
  pointInto(sm, points.hipR, hipR);
  pointInto(sm, points.shoulderL, shoulderL);
  pointInto(sm, points.shoulderR, shoulderR);
  betweenInto(hipL, hipR, hip);
  centreInto(sm, groups.upper, trunk);
  centreInto(sm, groups.legs, legs);
  minusInto(trunk, hip, up);
  minusInto(shoulderR, shoulderL, across);
  lineInto(up, across, U);
  minusInto(hip, legs, up);
  minusInto(hipR, hipL, across);
  lineInto(up, across, L);

  // weights: a_g = J_g + mu d_g^2, with their rates
  const mu = (groups.upper.m * groups.legs.m) / (groups.upper.m + groups.legs.m);
  calcHinged(sm, groups.upper, trunk, hip, U, mu, weightU);
  calcHinged(sm, groups.legs, legs, hip, L, mu, weightL);
  centreInto(sm, groups.legL, legL);
  centreInto(sm, groups.legR, legR);
  minusInto(legL, hipL, legL);
  minusInto(legR, hipR, legR);
  halfSpreadInto(legL, legR, L, spread);
  const [aU, aUd] = [weightU[0], weightU[1]];
  const c = Math.cos(spread[0]);
  const aL = weightL[0] * c * c;
  const aLd = weightL[1] * c * c - weightL[0] * 2 * c * Math.sin(spread[0]) * spread[1];
  const sum = aU + aL;
  const f = aL / sum;
  const fd = (aLd * aU - aUd * aL) / (sum * sum);

  // the short rotation from U to L, and the fraction f of it
  mulTInto(U.R, 0, L.R, 0, R_UL, 0);
  const phi = continued(R_UL, before);
  const w_U: Triple = [L.w[0] - U.w[0], L.w[1] - U.w[1], L.w[2] - U.w[2]];
  applyTInto(U.R, 0, w_U, 0, w_U, 0);
  const phid = vectorRate(phi, w_U);
  const psi = scale(phi, f);
  const psid = addScaled(scale(phi, fd), phid, f);
  matOfVectorInto(psi, R_UF, 0);
  mulInto(U.R, 0, R_UF, 0, R_BF, 0);
  const w_UF_U = spatialRate(psi, psid);
  for (let i = 0; i < 3; i++)
    w_BF_B[i] = U.w[i] + U.R[3 * i] * w_UF_U[0] + U.R[3 * i + 1] * w_UF_U[1] + U.R[3 * i + 2] * w_UF_U[2];
  out.phi = phi;
  return out;
}

/** Half the angle between the legs seen along the lateral line of L, and its rate. */
function halfSpreadInto(left: Motion, right: Motion, line: Line, out: Float64Array): void {
  const difference = seenAngle(left, line) - seenAngle(right, line);
  out[0] = (difference - 2 * Math.PI * Math.round(difference / (2 * Math.PI))) / 2;
  out[1] = (seenRate(left, line) - seenRate(right, line)) / 2;
}

/** A leg's angle about z of L. */
function seenAngle(r: Motion, { R }: Line): number {
  const x = R[0] * r[0] + R[3] * r[1] + R[6] * r[2];
  const y = R[1] * r[0] + R[4] * r[1] + R[7] * r[2];
  return Math.atan2(y, x);
}

function seenRate(r: Motion, { R, w }: Line): number {
  const vx = r[3] - (w[1] * r[2] - w[2] * r[1]);
  const vy = r[4] - (w[2] * r[0] - w[0] * r[2]);
  const vz = r[5] - (w[0] * r[1] - w[1] * r[0]);
  const x = R[0] * r[0] + R[3] * r[1] + R[6] * r[2];
  const y = R[1] * r[0] + R[4] * r[1] + R[7] * r[2];
  const xd = R[0] * vx + R[3] * vy + R[6] * vz;
  const yd = R[1] * vx + R[4] * vy + R[7] * vz;
  return (x * yd - y * xd) / (x * x + y * y);
}

function continued(R: Float64Array, before?: Triple): Triple {
  const phi: Triple = [0, 0, 0];
  vectorOfMatInto(R, 0, phi);
  if (!before) return phi;
  const n = norm(phi);
  if (n < 1e-9) return phi;
  const other = scale(phi, 1 - (2 * Math.PI) / n);
  return norm(sub(other, before)) < norm(sub(phi, before)) ? other : phi;
}

/** Rate of the rotation vector phi whose rotation turns with w (in the axes it starts from): J_l(phi)^-1 w. */
function vectorRate(phi: Triple, w: Triple): Triple {
  const a = norm(phi);
  const k = a < 1e-3 ? 1 / 12 + (a * a) / 720 : 1 / (a * a) - 1 / (2 * a * Math.tan(a / 2));
  const first = cross(phi, w);
  return addScaled(addScaled(w, first, -0.5), cross(phi, first), k);
}

/** Angular velocity of exp(psi) in the axes it starts from: J_l(psi) psi'. */
function spatialRate(psi: Triple, rate: Triple): Triple {
  const a = norm(psi);
  const b = a < 1e-3 ? 0.5 - (a * a) / 24 : (1 - Math.cos(a)) / (a * a);
  const c = a < 1e-3 ? 1 / 6 - (a * a) / 120 : (a - Math.sin(a)) / (a * a * a);
  const first = cross(psi, rate);
  return addScaled(addScaled(rate, first, b), cross(psi, first), c);
}
