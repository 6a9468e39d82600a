/**
 * The chain in motion: angle and turning of every link, place and velocity of every link's mass centre; and what follows
 * for the whole: mass centre, momentum, energy. All in W (planar), SI, radians.
 */
import type { Chain, ChainPoint } from './chain.ts';

export interface ChainMotion {
  readonly theta: Float64Array; // (links) counted on
  readonly w: Float64Array; // (links)
  readonly cx: Float64Array; // (links) mass centres
  readonly cy: Float64Array;
  readonly vx: Float64Array;
  readonly vy: Float64Array;
}

export function makeChainMotion(chain: Chain): ChainMotion {
  const f = (): Float64Array => new Float64Array(chain.links.length);
  return { theta: f(), w: f(), cx: f(), cy: f(), vx: f(), vy: f() };
}

/** A place of one link by which the whole chain is placed. */
/** A point in the plane of the contact: where it is and how it moves. */
export interface PlanarPoint {
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
}

interface Placement extends PlanarPoint {
  /** link and point in it (reference coordinates) */
  readonly point: ChainPoint;
  /** angle and turning of that link */
  readonly theta: number;
  readonly w: number;
}

/** Fills the motion of all links from joint angles and rates and the placement of one link. */
export function placeChain(
  chain: Chain,
  q: ArrayLike<number>,
  qd: ArrayLike<number>,
  at: Placement,
  out: ChainMotion,
): void {
  const { theta, w } = out;
  const { links, joints } = chain;
  // angles from link 0 first, then turned so that the placed link is where it was asked to be
  theta[0] = 0;
  w[0] = 0;
  joints.forEach((joint, j) => {
    theta[joint.child] = theta[joint.parent] + joint.sign * q[j];
    w[joint.child] = w[joint.parent] + joint.sign * qd[j];
  });
  const turn = at.theta - theta[at.point.link];
  const spin = at.w - w[at.point.link];
  for (let i = 0; i < links.length; i++) {
    theta[i] += turn;
    w[i] += spin;
  }
  // origins of the link frames relative to that of link 0
  const n = links.length;
  const ox = new Float64Array(n);
  const oy = new Float64Array(n);
  const ux = new Float64Array(n);
  const uy = new Float64Array(n);
  for (const { parent: a, child: b, point } of joints) {
    const x = point[0];
    const y = point[1];
    const ca = Math.cos(theta[a]);
    const sa = Math.sin(theta[a]);
    const cb = Math.cos(theta[b]);
    const sb = Math.sin(theta[b]);
    // the joint from either link's origin
    const ax = ca * x - sa * y;
    const ay = sa * x + ca * y;
    const bx = cb * x - sb * y;
    const by = sb * x + cb * y;
    ox[b] = ox[a] + ax - bx;
    oy[b] = oy[a] + ay - by;
    ux[b] = ux[a] - w[a] * ay + w[b] * by;
    uy[b] = uy[a] + w[a] * ax - w[b] * bx;
  }
  const k = at.point.link;
  const [px, py] = at.point.at;
  const c = Math.cos(theta[k]);
  const s = Math.sin(theta[k]);
  const dx = at.x - (ox[k] + c * px - s * py);
  const dy = at.y - (oy[k] + s * px + c * py);
  const ex = at.vx - (ux[k] - w[k] * (s * px + c * py));
  const ey = at.vy - (uy[k] + w[k] * (c * px - s * py));
  for (let i = 0; i < links.length; i++) {
    const x = links[i].centre[0];
    const y = links[i].centre[1];
    const ci = Math.cos(theta[i]);
    const si = Math.sin(theta[i]);
    out.cx[i] = ox[i] + dx + ci * x - si * y;
    out.cy[i] = oy[i] + dy + si * x + ci * y;
    out.vx[i] = ux[i] + ex - w[i] * (si * x + ci * y);
    out.vy[i] = uy[i] + ey + w[i] * (ci * x - si * y);
  }
}

/** Place and velocity of a point of a link: out = [x, y, vx, vy]. */
export function pointInto(chain: Chain, m: ChainMotion, point: ChainPoint, out: Float64Array): void {
  const i = point.link;
  const x = point.at[0] - chain.links[i].centre[0];
  const y = point.at[1] - chain.links[i].centre[1];
  const c = Math.cos(m.theta[i]);
  const s = Math.sin(m.theta[i]);
  const rx = c * x - s * y;
  const ry = s * x + c * y;
  out[0] = m.cx[i] + rx;
  out[1] = m.cy[i] + ry;
  out[2] = m.vx[i] - m.w[i] * ry;
  out[3] = m.vy[i] + m.w[i] * rx;
}

/** The chain's joint angles and rates, in the sense of the named angles. */
export function jointsInto(chain: Chain, m: ChainMotion, q: Float64Array, qd: Float64Array): void {
  chain.joints.forEach(({ sign, parent, child }, j) => {
    q[j] = sign * (m.theta[child] - m.theta[parent]);
    qd[j] = sign * (m.w[child] - m.w[parent]);
  });
}

/** The whole: mass centre and its velocity, angular momentum about it (Z), kinetic energy, and height energy over Y = 0. */
export interface ChainTotals {
  x: number;
  y: number;
  vx: number;
  vy: number;
  /** about the mass centre, kg m^2/s */
  h: number;
  kinetic: number;
  /** m g Y of the mass centre */
  potential: number;
}

export const makeChainTotals = (): ChainTotals => ({ x: 0, y: 0, vx: 0, vy: 0, h: 0, kinetic: 0, potential: 0 });

export function totalsInto(chain: Chain, m: ChainMotion, gravity: number, out: ChainTotals): void {
  const { links, mass } = chain;
  let [x, y, vx, vy, kinetic] = [0, 0, 0, 0, 0];
  for (let i = 0; i < links.length; i++) {
    const mi = links[i].mass;
    x += mi * m.cx[i];
    y += mi * m.cy[i];
    vx += mi * m.vx[i];
    vy += mi * m.vy[i];
    kinetic += 0.5 * (mi * (m.vx[i] * m.vx[i] + m.vy[i] * m.vy[i]) + links[i].inertia * m.w[i] * m.w[i]);
  }
  x /= mass;
  y /= mass;
  vx /= mass;
  vy /= mass;
  let h = 0;
  for (let i = 0; i < links.length; i++)
    h += links[i].inertia * m.w[i] + links[i].mass * ((m.cx[i] - x) * (m.vy[i] - vy) - (m.cy[i] - y) * (m.vx[i] - vx));
  out.x = x;
  out.y = y;
  out.vx = vx;
  out.vy = vy;
  out.h = h;
  out.kinetic = kinetic;
  out.potential = mass * gravity * y;
}
