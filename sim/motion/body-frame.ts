/**
 * The body frame F that carries somersault, tilt and twist: between the upper frame U (head and trunk) and the lower
 * frame L (legs), R_BF = R_BU exp(f phi), phi the rotation vector of R_BU^T R_BL, f = a_L / (a_U + a_L). With h = 0 two
 * hinged bodies then turn so that F nearly stands still. Definitions: docs/conventions.md, "Frames". A body without
 * frame points has F = B.
 */
import type { Body, Vec3 } from '../body/body.ts';
import { matOfVectorInto, mulInto, mulTInto, vectorOfMatInto } from '../math/rot.ts';
import { add, addScaled, cross, dot, norm, scale, sub, type Triple, tripleAt } from '../math/vec3.ts';
import type { ShapeMotion } from './shape-motion.ts';

export interface BodyFrame {
  readonly R_BF: Float64Array; // (9)
  readonly w_BF_B: Float64Array; // (3)
  /** the rotation vector from U to L; hand it on to the next instant so that it stays continuous past half a turn */
  phi: Triple;
}

interface Line {
  /** unit axes and their rates: x, y, z of a frame built from y and a line made normal to it */
  readonly R: Float64Array; // (9), columns x, y, z in B
  readonly w: Triple;
  readonly z: Triple;
  readonly zd: Triple;
}

interface Parts {
  readonly upper: readonly number[];
  readonly legs: readonly number[];
  readonly legL: readonly number[];
  readonly legR: readonly number[];
}

const partsOf = new WeakMap<Body, Parts>();

function getParts(body: Body): Parts {
  const known = partsOf.get(body);
  if (known) return known;
  const pick = (test: (i: number) => boolean): number[] => body.segments.map((_, i) => i).filter(test);
  const at = (i: number) => body.segments[i];
  const made = {
    upper: pick((i) => at(i).group === 'upper'),
    legs: pick((i) => at(i).group === 'legs'),
    legL: pick((i) => at(i).group === 'legs' && at(i).side === 'left'),
    legR: pick((i) => at(i).group === 'legs' && at(i).side === 'right'),
  };
  partsOf.set(body, made);
  return made;
}

/** F from a filled ShapeMotion. `phi` of an earlier instant keeps the short rotation continuous; without it phi <= pi. */
export function calcBodyFrame(sm: ShapeMotion, before?: Triple): BodyFrame {
  const R_BF = new Float64Array(9);
  const w_BF_B = new Float64Array(3);
  const points = sm.model.body.framePoints;
  if (!points) {
    R_BF[0] = R_BF[4] = R_BF[8] = 1;
    return { R_BF, w_BF_B, phi: [0, 0, 0] };
  }
  const parts = getParts(sm.model.body);
  const hipL = pointMotion(sm, points.hipL);
  const hipR = pointMotion(sm, points.hipR);
  const shoulderL = pointMotion(sm, points.shoulderL);
  const shoulderR = pointMotion(sm, points.shoulderR);
  const hip: Motion = { p: scale(add(hipL.p, hipR.p), 0.5), v: scale(add(hipL.v, hipR.v), 0.5) };

  const trunk = groupCentre(sm, parts.upper);
  const legs = groupCentre(sm, parts.legs);
  const U = lineFrame(minus(trunk, hip), minus(shoulderR, shoulderL));
  const L = lineFrame(minus(hip, legs), minus(hipR, hipL));

  // weights: a_g = J_g + mu d_g^2, with their rates
  const mu = (trunk.m * legs.m) / (trunk.m + legs.m);
  const aU = hinged(sm, parts.upper, trunk, hip, U, mu);
  const whole = hinged(sm, parts.legs, legs, hip, L, mu);
  const spread = halfSpread(minus(groupCentre(sm, parts.legL), hipL), minus(groupCentre(sm, parts.legR), hipR), L);
  const c = Math.cos(spread.value);
  const aL = {
    value: whole.value * c * c,
    rate: whole.rate * c * c - whole.value * 2 * c * Math.sin(spread.value) * spread.rate,
  };
  const sum = aU.value + aL.value;
  const f = aL.value / sum;
  const fd = (aL.rate * aU.value - aU.rate * aL.value) / (sum * sum);

  // the short rotation from U to L, and the fraction f of it
  const R_UL = new Float64Array(9);
  mulTInto(U.R, 0, L.R, 0, R_UL, 0);
  const phi = continued(R_UL, before);
  const w_UL_U = inFrame(U.R, sub(L.w, U.w));
  const phid = vectorRate(phi, w_UL_U);
  const psi = scale(phi, f);
  const psid = addScaled(scale(phi, fd), phid, f);
  const R_UF = new Float64Array(9);
  matOfVectorInto(psi, R_UF, 0);
  mulInto(U.R, 0, R_UF, 0, R_BF, 0);
  const w_UF_U = spatialRate(psi, psid);
  for (let i = 0; i < 3; i++)
    w_BF_B[i] = U.w[i] + U.R[3 * i] * w_UF_U[0] + U.R[3 * i + 1] * w_UF_U[1] + U.R[3 * i + 2] * w_UF_U[2];
  return { R_BF, w_BF_B, phi };
}

interface Motion {
  readonly p: Triple;
  readonly v: Triple;
}
const minus = (a: Motion, b: Motion): Motion => ({ p: sub(a.p, b.p), v: sub(a.v, b.v) });

function pointMotion(sm: ShapeMotion, at: readonly [number, Vec3]): Motion {
  const [i, r] = at;
  const o = 9 * i;
  const R = sm.R_BS;
  const d: Triple = [
    R[o] * r[0] + R[o + 1] * r[1] + R[o + 2] * r[2],
    R[o + 3] * r[0] + R[o + 4] * r[1] + R[o + 5] * r[2],
    R[o + 6] * r[0] + R[o + 7] * r[1] + R[o + 8] * r[2],
  ];
  return {
    p: add(tripleAt(sm.p_BoSo_B, 3 * i), d),
    v: add(tripleAt(sm.v_BSo_B, 3 * i), cross(tripleAt(sm.w_BS_B, 3 * i), d)),
  };
}

function groupCentre(sm: ShapeMotion, group: readonly number[]): Motion & { m: number } {
  let p: Triple = [0, 0, 0];
  let v: Triple = [0, 0, 0];
  let m = 0;
  for (const i of group) {
    const k = sm.model.m[i];
    p = addScaled(p, tripleAt(sm.p_BoSc_B, 3 * i), k);
    v = addScaled(v, tripleAt(sm.v_BSc_B, 3 * i), k);
    m += k;
  }
  return { p: scale(p, 1 / m), v: scale(v, 1 / m), m };
}

/** y along `up`, z along `line` made normal to it, x = y x z; with the frame's angular velocity. */
function lineFrame(up: Motion, line: Motion): Line {
  const [y, yd] = unit(up.p, up.v);
  const s = dot(line.p, y);
  const z0 = addScaled(line.p, y, -s);
  const z0d = addScaled(addScaled(line.v, y, -(dot(line.v, y) + dot(line.p, yd))), yd, -s);
  const [z, zd] = unit(z0, z0d);
  const x = cross(y, z);
  const xd = add(cross(yd, z), cross(y, zd));
  const w = scale(add(add(cross(x, xd), cross(y, yd)), cross(z, zd)), 0.5);
  return { R: Float64Array.of(x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]), w, z, zd };
}

function unit(a: Triple, ad: Triple): [Triple, Triple] {
  const n = norm(a);
  const e = scale(a, 1 / n);
  return [e, scale(addScaled(ad, e, -dot(e, ad)), 1 / n)];
}

/** J_g + mu d_g^2 about the lateral axis z of the group's frame, and its rate. */
function hinged(
  sm: ShapeMotion,
  group: readonly number[],
  centre: Motion,
  hip: Motion,
  line: Line,
  mu: number,
): { value: number; rate: number } {
  const { z, zd } = line;
  const J = sm.I_SSc_B;
  const d = minus(centre, hip);
  let value = mu * dot(d.p, d.p);
  let rate = 2 * mu * dot(d.p, d.v);
  for (const i of group) {
    const s = 6 * i;
    const m = sm.model.m[i];
    const r = sub(tripleAt(sm.p_BoSc_B, 3 * i), centre.p);
    const rd = sub(tripleAt(sm.v_BSc_B, 3 * i), centre.v);
    const Jz: Triple = [
      J[s] * z[0] + J[s + 3] * z[1] + J[s + 4] * z[2],
      J[s + 3] * z[0] + J[s + 1] * z[1] + J[s + 5] * z[2],
      J[s + 4] * z[0] + J[s + 5] * z[1] + J[s + 2] * z[2],
    ];
    const along = dot(z, r);
    value += dot(z, Jz) + m * (dot(r, r) - along * along);
    const relative = sub(zd, cross(tripleAt(sm.w_BS_B, 3 * i), z));
    rate += 2 * dot(relative, Jz) + 2 * m * (dot(r, rd) - along * (dot(zd, r) + dot(z, rd)));
  }
  return { value, rate };
}

/** Half the angle between the legs seen along the lateral line of L, and its rate. */
function halfSpread(left: Motion, right: Motion, L: Line): { value: number; rate: number } {
  const seen = (leg: Motion): { angle: number; rate: number } => {
    const r = inFrame(L.R, leg.p);
    const v = inFrame(L.R, sub(leg.v, cross(L.w, leg.p)));
    return { angle: Math.atan2(r[1], r[0]), rate: (r[0] * v[1] - r[1] * v[0]) / (r[0] * r[0] + r[1] * r[1]) };
  };
  const a = seen(left);
  const b = seen(right);
  let difference = a.angle - b.angle;
  difference -= 2 * Math.PI * Math.round(difference / (2 * Math.PI));
  return { value: difference / 2, rate: (a.rate - b.rate) / 2 };
}

/** Components of a (given in B) along the axes of R. */
function inFrame(R: Float64Array, a: Triple): Triple {
  return [
    R[0] * a[0] + R[3] * a[1] + R[6] * a[2],
    R[1] * a[0] + R[4] * a[1] + R[7] * a[2],
    R[2] * a[0] + R[5] * a[1] + R[8] * a[2],
  ];
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
