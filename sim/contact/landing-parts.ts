/** The parts of a landing athlete that are not to come down, and which of them is on the surface; beside the feet a mat has gone down with them. */
import type { Chain } from './chain.ts';
import type { LandingEquations } from './landing-equations.ts';
import type { SoledMat } from './soles.ts';

/** The mat beside the feet goes down with them, over about this distance, m: judgement. */
const DENT = 0.15;

/** A contact ball: its link, its place from the link's mass centre, its radius, m. */
interface Part {
  readonly part: string;
  readonly link: number;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export class LandingParts {
  private readonly e: LandingEquations;
  private readonly mat: SoledMat;
  private readonly parts: readonly Part[];

  constructor(e: LandingEquations, chain: Chain, mat: SoledMat) {
    this.e = e;
    this.mat = mat;
    this.parts = chain.body.contacts.flatMap((c) => {
      // both sides move alike
      if (c.part === 'feet' || c.name.endsWith('R')) return [];
      const { link, at } = chain.pointOf(c.segment, c.p_BoC_B);
      const [x, y] = chain.links[link].centre;
      return [{ part: c.part, link, x: at[0] - x, y: at[1] - y, radius: c.radius }];
    });
  }

  /** In the state placed last; hindmost and foremost point of the soles from the base point, m. Undefined: nothing but the feet. */
  touching(heel: number, toe: number): string | undefined {
    const { e, mat } = this;
    const { planar, state, feet } = e;
    let sunk = 0;
    for (const foot of feet) sunk = Math.max(sunk, foot.depth * mat.matShare);
    for (const { part, link, x, y, radius } of this.parts) {
      const c = planar.cos[link];
      const s = planar.sin[link];
      const low = state[1] + planar.ry[link] + s * x + c * y - radius;
      if (low >= mat.surfaceY) continue;
      const at = planar.rx[link] + c * x - s * y;
      const beside = Math.max(0, heel - at, at - toe);
      if (low < mat.surfaceY - sunk * Math.exp(-((beside / DENT) ** 2))) return part;
    }
    return undefined;
  }
}
