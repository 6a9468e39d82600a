/**
 * The equations of a planar chain that hangs by one point on a mass with an outer force (a rail, or nothing): reduced
 * coordinates, no engine. At a given state each joint is either driven (its acceleration is known, or known but for a
 * share of the base link's own) or left with a known torque; what comes out are the accelerations, the torques that the
 * driven joints need, and the force on the point.
 *
 * Newton and Euler for whole and part, moments counted about the point or the joint (Z positive):
 *   (M + m0) b'' + sum m_k a_k = F + M g,   sum_k (c_k - b) x m_k (a_k - g) + I_k alpha_k = 0 about the point b,
 *   the same sum over what hangs on a joint, about the joint, = the torque on it.
 * Accelerations are written as a constant and a column for each unknown turning; the rest is a small linear system.
 */
import type { Chain, ChainPoint } from './chain.ts';

interface Step {
  readonly joint: number;
  readonly from: number;
  readonly to: number;
  /** theta_to = theta_from + sigma q */
  readonly sigma: number;
}

export class Planar {
  readonly chain: Chain;
  readonly base: ChainPoint;
  /** the walk from the base link outward */
  private readonly walk: readonly Step[];
  private readonly steps: readonly Step[]; // by joint
  private readonly entry: Float64Array; // (links x 2) where a link hangs, reference coordinates
  /** links beyond each joint */
  private readonly beyond: readonly (readonly number[])[];

  readonly theta: Float64Array; // (links)
  readonly w: Float64Array; // (links)
  /** mass centres and where each link hangs, relative to the base point, W */
  readonly rx: Float64Array;
  readonly ry: Float64Array;
  private readonly ex: Float64Array;
  private readonly ey: Float64Array;
  /** velocities of the mass centres relative to the base point */
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  private readonly fx: Float64Array;
  private readonly fy: Float64Array;

  // accelerations: a constant (column 0) and one column for each unknown turning; (links x columns)
  private readonly al: Float64Array;
  private readonly ax: Float64Array;
  private readonly ay: Float64Array;
  private readonly bx: Float64Array;
  private readonly by: Float64Array;
  private readonly cols: number;
  private readonly A: Float64Array;
  private readonly z: Float64Array;

  /** after solve: acceleration of the base point, turning of its link, of each joint; torque on each joint; force on the point */
  readonly baseAcc = new Float64Array(2);
  rootAcc = 0;
  readonly qdd: Float64Array; // (joints)
  readonly torque: Float64Array; // (joints), in the sense of the named angle
  readonly force = new Float64Array(2);
  readonly linkAcc: Float64Array; // (links x 3): alpha, and acceleration of the mass centre in W

  constructor(chain: Chain, base: ChainPoint) {
    this.chain = chain;
    this.base = base;
    const n = chain.links.length;
    const nj = chain.joints.length;
    this.walk = walkFrom(chain, base.link);
    this.steps = [...this.walk].sort((a, b) => a.joint - b.joint);
    this.entry = new Float64Array(2 * n);
    this.entry.set(base.at, 2 * base.link);
    for (const s of this.walk) this.entry.set(chain.joints[s.joint].point, 2 * s.to);
    this.beyond = chain.joints.map((_, j) => linksBeyond(this.walk, j));
    const f = (k: number): Float64Array => new Float64Array(k);
    [this.theta, this.w, this.rx, this.ry, this.ex, this.ey] = [f(n), f(n), f(n), f(n), f(n), f(n)];
    [this.ux, this.uy, this.fx, this.fy] = [f(n), f(n), f(n), f(n)];
    this.cols = nj + 2;
    const c = n * this.cols;
    [this.al, this.ax, this.ay, this.bx, this.by] = [f(c), f(c), f(c), f(c), f(c)];
    const dim = nj + 3;
    this.A = f(dim * dim);
    this.z = f(dim);
    this.qdd = f(nj);
    this.torque = f(nj);
    this.linkAcc = f(3 * n);
  }

  /** Angles, turning, places and velocities relative to the base point. `theta`, `w` are those of the base link. */
  place(theta: number, w: number, q: ArrayLike<number>, qd: ArrayLike<number>): void {
    const { chain, theta: T, w: W, entry, ex, ey, fx, fy } = this;
    const r = this.base.link;
    T[r] = theta;
    W[r] = w;
    ex[r] = ey[r] = fx[r] = fy[r] = 0;
    this.centre(r);
    for (const { joint, from, to, sigma } of this.walk) {
      T[to] = T[from] + sigma * q[joint];
      W[to] = W[from] + sigma * qd[joint];
      const [px, py] = chain.joints[joint].point;
      const x = px - entry[2 * from];
      const y = py - entry[2 * from + 1];
      const c = Math.cos(T[from]);
      const s = Math.sin(T[from]);
      const dx = c * x - s * y;
      const dy = s * x + c * y;
      ex[to] = ex[from] + dx;
      ey[to] = ey[from] + dy;
      fx[to] = fx[from] - W[from] * dy;
      fy[to] = fy[from] + W[from] * dx;
      this.centre(to);
    }
  }

  private centre(i: number): void {
    const [cx, cy] = this.chain.links[i].centre;
    const x = cx - this.entry[2 * i];
    const y = cy - this.entry[2 * i + 1];
    const c = Math.cos(this.theta[i]);
    const s = Math.sin(this.theta[i]);
    const dx = c * x - s * y;
    const dy = s * x + c * y;
    this.rx[i] = this.ex[i] + dx;
    this.ry[i] = this.ey[i] + dy;
    this.ux[i] = this.fx[i] - this.w[i] * dy;
    this.uy[i] = this.fy[i] + this.w[i] * dx;
  }

  /**
   * Solves the placed state. `driven[j]`: joint j has the acceleration qdd[j] + share[j] x rootAcc; else the torque
   * torqueIn[j]. `extraMass` moves with the base point and feels the outer force (Fx, Fy) and no gravity; Infinity holds
   * the point still.
   */
  solve(
    gravity: number,
    extraMass: number,
    Fx: number,
    Fy: number,
    driven: ArrayLike<number>,
    qdd: ArrayLike<number>,
    share: ArrayLike<number>,
    torqueIn: ArrayLike<number>,
  ): void {
    const { chain, cols, al, ax, ay, A, z } = this;
    const { links, joints, mass: M } = chain;
    // which column each free joint has; 1 is the base link's own turning
    let unknowns = 1;
    const column = this.column;
    for (let j = 0; j < joints.length; j++) column[j] = driven[j] ? 0 : ++unknowns;
    this.columns(unknowns, driven, qdd, share);

    const isFixed = extraMass === Number.POSITIVE_INFINITY;
    const dim = unknowns + 2;
    A.fill(0, 0, dim * dim);
    // forces
    let [s0x, s0y] = [0, 0];
    for (let k = 0; k < links.length; k++) {
      const m = links[k].mass;
      const o = k * cols;
      s0x += m * ax[o];
      s0y += m * ay[o];
      for (let u = 1; u <= unknowns; u++) {
        A[2 + u - 1] += m * ax[o + u];
        A[dim + 2 + u - 1] += m * ay[o + u];
      }
    }
    if (isFixed) {
      A.fill(0, 0, 2 * dim);
      A[0] = A[dim + 1] = 1;
      z[0] = z[1] = 0;
    } else {
      A[0] = A[dim + 1] = M + extraMass;
      z[0] = Fx - s0x;
      z[1] = Fy - M * gravity - s0y;
    }
    // moments about the base point
    z[2] = -this.momentRow(2 * dim, unknowns, indices(links.length), 0, 0, gravity);
    for (let j = 0; j < joints.length; j++) {
      if (driven[j]) continue;
      const { sigma, to } = this.steps[j];
      const row = 2 + column[j] - 1;
      z[row] =
        sigma * torqueIn[j] - this.momentRow(row * dim, unknowns, this.beyond[j], this.ex[to], this.ey[to], gravity);
    }
    solveInPlace(A, z, dim);

    this.baseAcc[0] = z[0];
    this.baseAcc[1] = z[1];
    this.rootAcc = z[2];
    for (let j = 0; j < joints.length; j++)
      this.qdd[j] = driven[j] ? qdd[j] + share[j] * z[2] : this.steps[j].sigma * z[2 + column[j] - 1];
    // accelerations of the links, force on the point
    let [px, py] = [0, 0];
    for (let k = 0; k < links.length; k++) {
      const o = k * cols;
      let [a, x, y] = [al[o], z[0] + ax[o], z[1] + ay[o]];
      for (let u = 1; u <= unknowns; u++) {
        const v = z[2 + u - 1];
        a += al[o + u] * v;
        x += ax[o + u] * v;
        y += ay[o + u] * v;
      }
      this.linkAcc[3 * k] = a;
      this.linkAcc[3 * k + 1] = x;
      this.linkAcc[3 * k + 2] = y;
      px += links[k].mass * x;
      py += links[k].mass * (y + gravity);
    }
    this.force[0] = px;
    this.force[1] = py;
    for (let j = 0; j < joints.length; j++) {
      const { sigma, to } = this.steps[j];
      let sum = 0;
      for (const k of this.beyond[j])
        sum +=
          links[k].mass *
            ((this.rx[k] - this.ex[to]) * (this.linkAcc[3 * k + 2] + gravity) -
              (this.ry[k] - this.ey[to]) * this.linkAcc[3 * k + 1]) +
          links[k].inertia * this.linkAcc[3 * k];
      this.torque[j] = sigma * sum;
    }
  }
  private readonly column: number[] = [];

  /**
   * Mass times acceleration of the mass centre that the shape alone gives, the base link at rest, from a placed state and
   * joint accelerations: out = sum m_k a_k.
   */
  shapeAccInto(qdd: ArrayLike<number>, out: Float64Array): void {
    const { chain, cols, ax, ay } = this;
    for (let j = 0; j < qdd.length; j++) {
      this.column[j] = 0;
      none[j] = 0;
      all[j] = 1;
    }
    this.columns(0, all, qdd, none);
    out[0] = out[1] = 0;
    for (let k = 0; k < chain.links.length; k++) {
      out[0] += chain.links[k].mass * ax[k * cols];
      out[1] += chain.links[k].mass * ay[k * cols];
    }
  }

  /** Acceleration in W of a point of a link, from a solved state. */
  pointAccInto(point: ChainPoint, out: Float64Array): void {
    const i = point.link;
    const [cx, cy] = this.chain.links[i].centre;
    const c = Math.cos(this.theta[i]);
    const s = Math.sin(this.theta[i]);
    const x = c * (point.at[0] - cx) - s * (point.at[1] - cy);
    const y = s * (point.at[0] - cx) + c * (point.at[1] - cy);
    const a = this.linkAcc[3 * i];
    const w2 = this.w[i] * this.w[i];
    out[0] = this.linkAcc[3 * i + 1] - a * y - w2 * x;
    out[1] = this.linkAcc[3 * i + 2] + a * x - w2 * y;
  }

  /** Fills the columns of turning and acceleration of every link (relative to the base point's acceleration). */
  private columns(unknowns: number, driven: ArrayLike<number>, qdd: ArrayLike<number>, share: ArrayLike<number>): void {
    const { chain, cols, al, bx, by, entry, theta: T, w: W } = this;
    const r = this.base.link;
    for (let u = 0; u <= unknowns; u++) {
      al[r * cols + u] = u === 1 ? 1 : 0;
      bx[r * cols + u] = by[r * cols + u] = 0;
    }
    this.centreColumns(r, unknowns);
    for (const { joint, from, to, sigma } of this.walk) {
      const [px, py] = chain.joints[joint].point;
      const x = px - entry[2 * from];
      const y = py - entry[2 * from + 1];
      const c = Math.cos(T[from]);
      const s = Math.sin(T[from]);
      const dx = c * x - s * y;
      const dy = s * x + c * y;
      const w2 = W[from] * W[from];
      const o = from * cols;
      const p = to * cols;
      for (let u = 0; u <= unknowns; u++) {
        const a = al[o + u];
        al[p + u] = a;
        bx[p + u] = bx[o + u] - a * dy - (u === 0 ? w2 * dx : 0);
        by[p + u] = by[o + u] + a * dx - (u === 0 ? w2 * dy : 0);
      }
      if (driven[joint]) {
        al[p] += sigma * qdd[joint];
        if (unknowns > 0) al[p + 1] += sigma * share[joint];
      } else al[p + this.column[joint]] += 1;
      this.centreColumns(to, unknowns);
    }
  }

  private centreColumns(i: number, unknowns: number): void {
    const { cols, al, ax, ay, bx, by } = this;
    const dx = this.rx[i] - this.ex[i];
    const dy = this.ry[i] - this.ey[i];
    const w2 = this.w[i] * this.w[i];
    const o = i * cols;
    for (let u = 0; u <= unknowns; u++) {
      ax[o + u] = bx[o + u] - al[o + u] * dy - (u === 0 ? w2 * dx : 0);
      ay[o + u] = by[o + u] + al[o + u] * dx - (u === 0 ? w2 * dy : 0);
    }
  }

  /** Adds a moment equation to row `row` of A; returns its constant part. */
  private momentRow(
    row: number,
    unknowns: number,
    links: ArrayLike<number>,
    ox: number,
    oy: number,
    gravity: number,
  ): number {
    const { cols, al, ax, ay, A } = this;
    let constant = 0;
    for (let i = 0; i < links.length; i++) {
      const k = links[i];
      const { mass: m, inertia: I } = this.chain.links[k];
      const x = this.rx[k] - ox;
      const y = this.ry[k] - oy;
      const o = k * cols;
      A[row] -= m * y;
      A[row + 1] += m * x;
      constant += m * (x * (ay[o] + gravity) - y * ax[o]) + I * al[o];
      for (let u = 1; u <= unknowns; u++) A[row + 1 + u] += m * (x * ay[o + u] - y * ax[o + u]) + I * al[o + u];
    }
    return constant;
  }
}

const none: number[] = [];
const all: number[] = [];
const lists: number[][] = [];
/** 0 .. n - 1, made once. */
function indices(n: number): readonly number[] {
  lists[n] ??= Array.from({ length: n }, (_, i) => i);
  return lists[n];
}

function walkFrom(chain: Chain, root: number): Step[] {
  const seen = new Set([root]);
  const out: Step[] = [];
  for (let grown = true; grown; ) {
    grown = false;
    chain.joints.forEach(({ parent, child, sign }, joint) => {
      const isOut = seen.has(parent) && !seen.has(child);
      const isIn = seen.has(child) && !seen.has(parent);
      if (!isOut && !isIn) return;
      out.push(
        isOut ? { joint, from: parent, to: child, sigma: sign } : { joint, from: child, to: parent, sigma: -sign },
      );
      seen.add(parent).add(child);
      grown = true;
    });
  }
  return out;
}

function linksBeyond(walk: readonly Step[], joint: number): number[] {
  const out: number[] = [];
  for (const s of walk) if (s.joint === joint || out.includes(s.from)) out.push(s.to);
  return out;
}

/** Gauss with row exchange; the answer replaces the right side. */
function solveInPlace(A: Float64Array, z: Float64Array, n: number): void {
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(A[r * n + c]) > Math.abs(A[p * n + c])) p = r;
    if (p !== c) {
      for (let k = c; k < n; k++) {
        const t = A[c * n + k];
        A[c * n + k] = A[p * n + k];
        A[p * n + k] = t;
      }
      const t = z[c];
      z[c] = z[p];
      z[p] = t;
    }
    for (let r = c + 1; r < n; r++) {
      const f = A[r * n + c] / A[c * n + c];
      if (f === 0) continue;
      for (let k = c + 1; k < n; k++) A[r * n + k] -= f * A[c * n + k];
      z[r] -= f * z[c];
    }
  }
  for (let c = n - 1; c >= 0; c--) {
    let sum = z[c];
    for (let k = c + 1; k < n; k++) sum -= A[c * n + k] * z[k];
    z[c] = sum / A[c * n + c];
  }
}
