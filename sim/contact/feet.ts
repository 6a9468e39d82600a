/**
 * The feet on a mat: heel, ball and toe as points, each on its own share of the mat's springs, held sideways by a spring
 * that gives way at the friction limit. Forces are read from these springs and from nothing else: a penalty force on the
 * points converges as the step shrinks, contact impulses of an engine do not (docs/decisions/0004-planar-contact-planck.md).
 * Plane of the landing: x forward as the athlete faces, y up.
 */
import type { Chain, ChainPoint } from './chain.ts';
import { elasticEnergy, type MatSpec, matForce } from './mat.ts';

interface FootPoint {
  readonly name: string;
  /** centre of the contact sphere, and its radius, m */
  readonly at: ChainPoint;
  readonly radius: number;
  readonly share: number;
}

/** Shares of the sole that press on the mat: judgement. */
const SHARES: Readonly<Record<string, number>> = { heel: 0.4, ball: 0.4, toe: 0.2 };
/** Sideways stiffness of the mat as a share of the vertical, and its damping ratio against a mass of one foot: judgement. */
const SIDEWAYS = 0.6;
const SIDEWAYS_DAMPING = 0.012; // s

/** The points of both feet together. */
export function footPoints(chain: Chain): readonly FootPoint[] {
  return Object.entries(SHARES).map(([name, share]) => {
    const found = chain.body.contacts.find((c) => c.name === `${name}L`);
    if (!found) throw new RangeError(`${chain.body.name}: no ${name} to land on`);
    return { name, at: chain.pointOf(found.segment, found.p_BoC_B), radius: found.radius, share };
  });
}

/** One point's springs, with what they did. Filled step by step. */
export class FootSpring {
  readonly point: FootPoint;
  private readonly mat: MatSpec;
  private stretch = 0;
  depth = 0;
  fx = 0;
  fy = 0;

  constructor(point: FootPoint, mat: MatSpec) {
    this.point = point;
    this.mat = mat;
  }

  /** Forces on the foot whose lowest point is at height y, has slid by `slid` since the last call and moves with (vx, vy). */
  push(y: number, slid: number, vx: number, vy: number): void {
    const { mat, point } = this;
    const d = mat.surfaceY - y;
    this.depth = Math.max(0, d);
    if (d <= 0) {
      this.stretch = this.fx = this.fy = 0;
      return;
    }
    this.fy = matForce(mat, point.share, d, -vy);
    const k = SIDEWAYS * point.share * mat.stiffness;
    const c = k * SIDEWAYS_DAMPING;
    this.stretch += slid;
    const wanted = -k * this.stretch - c * vx;
    const most = mat.friction * this.fy;
    this.fx = Math.min(Math.max(wanted, -most), most);
    // sliding drags the spring's foot along
    this.stretch = Math.min(Math.max(this.stretch, -most / k), most / k);
  }

  /** J held by the springs. */
  get stored(): number {
    if (this.depth === 0) return 0;
    const k = SIDEWAYS * this.point.share * this.mat.stiffness;
    return elasticEnergy(this.mat, this.point.share, this.depth) + (k * this.stretch * this.stretch) / 2;
  }
}
