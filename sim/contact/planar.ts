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
import { solveInPlace } from '../math/linear-solve.ts';
import type { Chain, ChainPoint } from './chain.ts';
import { PlacedChain, type Step } from './placed-chain.ts';

export class Planar extends PlacedChain {
  private readonly steps: readonly Step[]; // by joint
  /** links beyond each joint */
  private readonly beyond: readonly Int32Array[];
  private readonly every: Int32Array;
  private readonly inertia: Float64Array;

  // accelerations: a constant (column 0) and one column for each unknown turning; (links x cols)
  private readonly al: Float64Array;
  private readonly ax: Float64Array;
  private readonly ay: Float64Array;
  private readonly bx: Float64Array;
  private readonly by: Float64Array;
  private readonly cols: number;
  private readonly A: Float64Array;
  private readonly z: Float64Array;
  private readonly column: Int32Array; // of each joint's unknown, 0: driven
  private readonly none: Float64Array;

  /** after solve: acceleration of the base point, turning of its link, of each joint; torque on each joint; force on the point */
  readonly baseAcc = new Float64Array(2);
  rootAcc = 0;
  readonly qdd: Float64Array; // (joints)
  readonly torque: Float64Array; // (joints), in the sense of the named angle
  readonly force = new Float64Array(2);
  readonly linkAcc: Float64Array; // (links x 3): alpha, and acceleration of the mass centre in W

  constructor(chain: Chain, base: ChainPoint) {
    super(chain, base);
    const n = chain.links.length;
    const nj = chain.joints.length;
    this.steps = [...this.walk].sort((a, b) => a.joint - b.joint);
    this.beyond = chain.joints.map((_, j) => Int32Array.from(linksBeyond(this.walk, j)));
    this.every = Int32Array.from(chain.links, (_, i) => i);
    this.inertia = Float64Array.from(chain.links, (l) => l.inertia);
    const f = (k: number): Float64Array => new Float64Array(k);
    this.cols = nj + 2;
    const c = n * this.cols;
    [this.al, this.ax, this.ay, this.bx, this.by] = [f(c), f(c), f(c), f(c), f(c)];
    const dim = nj + 3;
    this.A = f(dim * dim);
    this.z = f(dim);
    this.column = new Int32Array(nj);
    [this.qdd, this.torque, this.none] = [f(nj), f(nj), f(nj)];
    this.linkAcc = f(3 * n);
  }

  /**
   * Solves the placed state. `driven[j]`: joint j has the acceleration qdd[j] + share[j] x rootAcc; else the torque
   * torqueIn[j]. `extraMass` moves with the base point and feels the outer force (Fx, Fy) and no gravity; of an infinite
   * one (Fx, Fy) is the point's acceleration. `moment` turns the base link, about the point.
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
    moment = 0,
  ): void {
    const { cols, al, ax, ay, A, z, m, column, linkAcc } = this;
    const n = m.length;
    const nj = column.length;
    const M = this.chain.mass;
    // which column each free joint has; 1 is the base link's own turning
    let unknowns = 1;
    for (let j = 0; j < nj; j++) column[j] = driven[j] ? 0 : ++unknowns;
    this.columns(unknowns, qdd, share);

    const dim = unknowns + 2;
    A.fill(0, 0, dim * dim);
    if (extraMass === Number.POSITIVE_INFINITY) {
      A[0] = A[dim + 1] = 1;
      z[0] = Fx;
      z[1] = Fy;
    } else {
      let sx = 0;
      let sy = 0;
      for (let k = 0; k < n; k++) {
        const o = k * cols;
        sx += m[k] * ax[o];
        sy += m[k] * ay[o];
        for (let u = 1; u <= unknowns; u++) {
          A[1 + u] += m[k] * ax[o + u];
          A[dim + 1 + u] += m[k] * ay[o + u];
        }
      }
      A[0] = A[dim + 1] = M + extraMass;
      z[0] = Fx - sx;
      z[1] = Fy - M * gravity - sy;
    }
    z[2] = moment - this.momentRow(2 * dim, unknowns, this.every, 0, 0, gravity);
    for (let j = 0; j < nj; j++) {
      if (column[j] === 0) continue;
      const { sigma, to } = this.steps[j];
      const row = 1 + column[j];
      z[row] =
        sigma * torqueIn[j] - this.momentRow(row * dim, unknowns, this.beyond[j], this.ex[to], this.ey[to], gravity);
    }
    solveInPlace(A, z, dim);

    this.baseAcc[0] = z[0];
    this.baseAcc[1] = z[1];
    this.rootAcc = z[2];
    for (let j = 0; j < nj; j++)
      this.qdd[j] = column[j] === 0 ? qdd[j] + share[j] * z[2] : this.steps[j].sigma * z[1 + column[j]];
    // accelerations of the links, force on the point
    let px = 0;
    let py = 0;
    for (let k = 0; k < n; k++) {
      const o = k * cols;
      let a = al[o];
      let x = z[0] + ax[o];
      let y = z[1] + ay[o];
      for (let u = 1; u <= unknowns; u++) {
        const v = z[1 + u];
        a += al[o + u] * v;
        x += ax[o + u] * v;
        y += ay[o + u] * v;
      }
      linkAcc[3 * k] = a;
      linkAcc[3 * k + 1] = x;
      linkAcc[3 * k + 2] = y;
      px += m[k] * x;
      py += m[k] * (y + gravity);
    }
    this.force[0] = px;
    this.force[1] = py;
    for (let j = 0; j < nj; j++) {
      const { sigma, to } = this.steps[j];
      const links = this.beyond[j];
      let sum = 0;
      for (let i = 0; i < links.length; i++) {
        const k = links[i];
        sum +=
          m[k] *
            ((this.rx[k] - this.ex[to]) * (linkAcc[3 * k + 2] + gravity) -
              (this.ry[k] - this.ey[to]) * linkAcc[3 * k + 1]) +
          this.inertia[k] * linkAcc[3 * k];
      }
      this.torque[j] = sigma * sum;
    }
  }

  /**
   * Mass times acceleration of the mass centre that the shape alone gives, the base link at rest, from a placed state and
   * joint accelerations: out = sum m_k a_k.
   */
  shapeAccInto(qdd: ArrayLike<number>, out: Float64Array): void {
    this.column.fill(0);
    this.columns(0, qdd, this.none);
    out[0] = out[1] = 0;
    for (let k = 0; k < this.m.length; k++) {
      out[0] += this.m[k] * this.ax[k * this.cols];
      out[1] += this.m[k] * this.ay[k * this.cols];
    }
  }

  /** Acceleration in W of a point of a link, from a solved state. */
  pointAccInto(point: ChainPoint, out: Float64Array): void {
    const i = point.link;
    const [cx, cy] = this.chain.links[i].centre;
    const c = this.cos[i];
    const s = this.sin[i];
    const x = c * (point.at[0] - cx) - s * (point.at[1] - cy);
    const y = s * (point.at[0] - cx) + c * (point.at[1] - cy);
    const a = this.linkAcc[3 * i];
    const w2 = this.w[i] * this.w[i];
    out[0] = this.linkAcc[3 * i + 1] - a * y - w2 * x;
    out[1] = this.linkAcc[3 * i + 2] + a * x - w2 * y;
  }

  /** Fills the columns of turning and acceleration of every link (relative to the base point's acceleration). */
  private columns(unknowns: number, qdd: ArrayLike<number>, share: ArrayLike<number>): void {
    const { walk, cols, al, bx, by, ex, ey, column, w: W } = this;
    const r = this.base.link;
    for (let u = 0; u <= unknowns; u++) {
      al[r * cols + u] = u === 1 ? 1 : 0;
      bx[r * cols + u] = 0;
      by[r * cols + u] = 0;
    }
    this.centreColumns(r, unknowns);
    for (let i = 0; i < walk.length; i++) {
      const { joint, from, to, sigma } = walk[i];
      const dx = ex[to] - ex[from];
      const dy = ey[to] - ey[from];
      const w2 = W[from] * W[from];
      const o = from * cols;
      const p = to * cols;
      for (let u = 0; u <= unknowns; u++) {
        const a = al[o + u];
        al[p + u] = a;
        bx[p + u] = bx[o + u] - a * dy;
        by[p + u] = by[o + u] + a * dx;
      }
      bx[p] -= w2 * dx;
      by[p] -= w2 * dy;
      const own = column[joint];
      if (own > 0) al[p + own] += 1;
      else {
        al[p] += sigma * qdd[joint];
        if (unknowns > 0) al[p + 1] += sigma * share[joint];
      }
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
      ax[o + u] = bx[o + u] - al[o + u] * dy;
      ay[o + u] = by[o + u] + al[o + u] * dx;
    }
    ax[o] -= w2 * dx;
    ay[o] -= w2 * dy;
  }

  /** Adds a moment equation to the row of A that starts at `row`; returns its constant part. */
  private momentRow(row: number, unknowns: number, links: Int32Array, ox: number, oy: number, gravity: number): number {
    const { cols, al, ax, ay, A } = this;
    let constant = 0;
    for (let i = 0; i < links.length; i++) {
      const k = links[i];
      const m = this.m[k];
      const I = this.inertia[k];
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

function linksBeyond(walk: readonly Step[], joint: number): number[] {
  const out: number[] = [];
  for (const s of walk) if (s.joint === joint || out.includes(s.from)) out.push(s.to);
  return out;
}
