/**
 * A planar chain placed by one of its points: angle and turning of every link, and where its mass centre and the joint by which
 * it hangs are, relative to that point, with their velocities. W, SI, radians.
 */
import type { Chain, ChainPoint } from './chain.ts';

export interface Step {
  readonly joint: number;
  readonly from: number;
  readonly to: number;
  /** theta_to = theta_from + sigma q */
  readonly sigma: number;
  /** from where the link `from` hangs to this joint, in the link */
  readonly x: number;
  readonly y: number;
}

export class PlacedChain {
  readonly chain: Chain;
  readonly base: ChainPoint;
  /** the walk from the base link outward */
  protected readonly walk: readonly Step[];
  readonly m: Float64Array;
  /** from where a link hangs to its mass centre, in the link */
  private readonly cx: Float64Array;
  private readonly cy: Float64Array;

  readonly theta: Float64Array; // (links)
  readonly w: Float64Array; // (links)
  readonly cos: Float64Array; // of theta
  readonly sin: Float64Array;
  /** mass centres relative to the base point, and their velocities, W */
  readonly rx: Float64Array;
  readonly ry: Float64Array;
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  /** the same of where each link hangs */
  readonly ex: Float64Array;
  readonly ey: Float64Array;
  readonly fx: Float64Array;
  readonly fy: Float64Array;

  constructor(chain: Chain, base: ChainPoint) {
    this.chain = chain;
    this.base = base;
    const n = chain.links.length;
    const entry = chain.links.map(() => base.at);
    this.walk = walkFrom(chain, base.link, entry);
    this.m = Float64Array.from(chain.links, (l) => l.mass);
    this.cx = Float64Array.from(chain.links, (l, i) => l.centre[0] - entry[i][0]);
    this.cy = Float64Array.from(chain.links, (l, i) => l.centre[1] - entry[i][1]);
    const f = (): Float64Array => new Float64Array(n);
    [this.theta, this.w, this.cos, this.sin] = [f(), f(), f(), f()];
    [this.rx, this.ry, this.ux, this.uy] = [f(), f(), f(), f()];
    [this.ex, this.ey, this.fx, this.fy] = [f(), f(), f(), f()];
  }

  /** Angles, turning, places and velocities relative to the base point. `theta`, `w` are those of the base link. */
  place(theta: number, w: number, q: ArrayLike<number>, qd: ArrayLike<number>): void {
    const { theta: T, w: W, walk, ex, ey, fx, fy } = this;
    const r = this.base.link;
    T[r] = theta;
    W[r] = w;
    ex[r] = ey[r] = fx[r] = fy[r] = 0;
    this.centre(r);
    for (let i = 0; i < walk.length; i++) {
      const { joint, from, to, sigma, x, y } = walk[i];
      const c = this.cos[from];
      const s = this.sin[from];
      T[to] = T[from] + sigma * q[joint];
      W[to] = W[from] + sigma * qd[joint];
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
    const x = this.cx[i];
    const y = this.cy[i];
    const c = Math.cos(this.theta[i]);
    const s = Math.sin(this.theta[i]);
    this.cos[i] = c;
    this.sin[i] = s;
    const dx = c * x - s * y;
    const dy = s * x + c * y;
    this.rx[i] = this.ex[i] + dx;
    this.ry[i] = this.ey[i] + dy;
    this.ux[i] = this.fx[i] - this.w[i] * dy;
    this.uy[i] = this.fy[i] + this.w[i] * dx;
  }

  /** Mass times place and velocity of the mass centre relative to the base point: out = [x, y, vx, vy] of a placed state. */
  centreInto(out: Float64Array): void {
    let x = 0;
    let y = 0;
    let vx = 0;
    let vy = 0;
    for (let k = 0; k < this.m.length; k++) {
      x += this.m[k] * this.rx[k];
      y += this.m[k] * this.ry[k];
      vx += this.m[k] * this.ux[k];
      vy += this.m[k] * this.uy[k];
    }
    out[0] = x;
    out[1] = y;
    out[2] = vx;
    out[3] = vy;
  }
}

/** Steps from the base link outward; fills where each link hangs (reference coordinates). */
function walkFrom(chain: Chain, root: number, entry: (readonly [number, number])[]): Step[] {
  const seen = new Set([root]);
  const out: Step[] = [];
  for (let grown = true; grown; ) {
    grown = false;
    chain.joints.forEach(({ parent, child, sign, point }, joint) => {
      const isOut = seen.has(parent) && !seen.has(child);
      const isIn = seen.has(child) && !seen.has(parent);
      if (!isOut && !isIn) return;
      const [from, to, sigma] = isOut ? [parent, child, sign] : [child, parent, -sign];
      out.push({ joint, from, to, sigma, x: point[0] - entry[from][0], y: point[1] - entry[from][1] });
      entry[to] = point;
      seen.add(to);
      grown = true;
    });
  }
  return out;
}
