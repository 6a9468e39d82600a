/**
 * The feet on a mat: heel, ball and toe as points, each on its own share of the mat's springs, held sideways by a spring
 * that gives way at the friction limit. A penalty force on the points converges as the step shrinks, contact impulses of an
 * engine do not.
 * Plane of the landing: x forward as the athlete faces, y up.
 */
import type { Chain, ChainPoint } from './chain.ts';
import { elasticEnergy, type MatSpec, matForce } from './mat.ts';

export interface FootPoint {
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

/** One point's springs at the state they were last pushed with. */
export class FootSpring {
  readonly point: FootPoint;
  private readonly mat: MatSpec;
  private readonly sideways: number;
  private stretch = 0;
  depth = 0;
  fx = 0;
  fy = 0;
  /** m/s: how fast the sideways spring is stretched, whose far end is dragged along where friction does not hold it (`held`); 0 while it hangs free */
  stretching = 0;

  constructor(point: FootPoint, mat: MatSpec) {
    this.point = point;
    this.mat = mat;
    this.sideways = SIDEWAYS * point.share * mat.stiffness;
  }

  /** Forces on the foot whose lowest point is at height y and moves with (vx, vy), its sideways spring stretched. */
  push(y: number, stretch: number, vx: number, vy: number): void {
    const { mat, point, sideways: k } = this;
    const d = mat.surfaceY - y;
    this.depth = Math.max(0, d);
    this.stretch = stretch;
    if (d <= 0) {
      this.fx = this.fy = this.stretching = 0;
      return;
    }
    this.fy = matForce(mat, point.share, d, -vy);
    const wanted = -k * stretch - k * SIDEWAYS_DAMPING * vx;
    const most = mat.friction * this.fy;
    this.fx = Math.min(Math.max(wanted, -most), most);
    this.stretching = vx;
  }

  /** The stretch that friction can hold of `stretch`: sliding drags the spring's foot along. */
  held(stretch: number): number {
    if (this.depth === 0) return 0;
    const most = (this.mat.friction * this.fy) / this.sideways;
    return Math.min(Math.max(stretch, -most), most);
  }

  /** J held by the springs. */
  get stored(): number {
    if (this.depth === 0) return 0;
    return elasticEnergy(this.mat, this.point.share, this.depth) + (this.sideways * this.stretch * this.stretch) / 2;
  }
}
