/**
 * How an athlete squats in balance: for each bend of the knees the lean of shank and trunk that keeps the mass centre over
 * the middle of the soles, statics alone, arms and held joints as they are. The shank leans forward with a share of the knee's bend
 * until the ankle is at its range; the trunk leans as balance asks. From it a landing takes what height of the hips, and what
 * lean of the trunk, goes with which bend.
 */
import type { Chain } from './chain.ts';
import type { FootPoint } from './feet.ts';
import { PlacedChain } from './placed-chain.ts';

interface Stance {
  /** height of the hips over the soles, m */
  readonly hip: number;
  /** angle of the trunk, rad, - forward */
  readonly theta: number;
  readonly knee: number;
}

/** Of the knee's bend, what the ankle takes; and the most it takes, rad: judgement, dorsiflexion of a weight-bearing squat. */
const SHANK_SHARE = 0.42;
const SHANK_MOST = 0.52;
/** Where the mass centre is held, from heel to toe: about under the arch (judgement). */
export const MIDDLE = 0.5;
const KNEES = 25;
const DEEPEST = 2.4;

export class StanceTable {
  readonly rows: readonly Stance[];

  constructor(chain: Chain, feet: readonly FootPoint[], q: ArrayLike<number>) {
    const index = (name: string): number => chain.joints.findIndex((j) => j.name === name);
    const [hip, knee, ankle] = [index('hip'), index('knee'), index('ankle')];
    const placed = new PlacedChain(chain, feet[0].at);
    const angles = Float64Array.from(q);
    const rates = new Float64Array(angles.length);
    const sum = new Float64Array(4);
    const ends = feet.flatMap(({ at, radius }) => [
      at.at[0] - feet[0].at.at[0] - radius,
      at.at[0] - feet[0].at.at[0] + radius,
    ]);
    const [heel, toe] = [Math.min(...ends), Math.max(...ends)];
    const middle = heel + MIDDLE * (toe - heel);
    const sole = Math.min(...feet.map(({ at, radius }) => at.at[1] - feet[0].at.at[1] - radius));
    const hipLink = chain.joints[hip].parent;
    const rows: Stance[] = [];
    let last = 0;
    for (let i = 0; i < KNEES; i++) {
      const bend = (DEEPEST * i) / (KNEES - 1);
      const shank = Math.min(SHANK_SHARE * bend, SHANK_MOST);
      angles[knee] = bend;
      angles[ankle] = -shank;
      // the trunk's angle: soles level, links turned by their joints
      const offOf = (flexion: number): number => {
        angles[hip] = flexion;
        placed.place(0, 0, angles, rates);
        placed.centreInto(sum);
        return sum[0] / chain.mass - middle;
      };
      // secant from the row before: off is nearly straight in the flexion
      let before = last + 0.2;
      let off = offOf(before);
      for (let k = 0; k < 20 && Math.abs(before - last) > 1e-12; k++) {
        const now = offOf(last);
        if (now === off) break;
        const next = Math.min(Math.max(last - (now * (last - before)) / (now - off), -0.6), 3);
        before = last;
        off = now;
        last = next;
      }
      offOf(last);
      rows.push({ knee: bend, hip: placed.ey[hipLink] - sole, theta: placed.theta[hipLink] });
    }
    this.rows = rows;
  }

  /** Height of the hips at a bend of the knees, held at the ends. */
  hipAt(knee: number): number {
    const { rows } = this;
    let k = 0;
    while (k < rows.length - 2 && rows[k + 1].knee < knee) k++;
    return between(rows[k].knee, rows[k + 1].knee, knee, rows[k].hip, rows[k + 1].hip);
  }

  /** Angle of the trunk at a height of the hips, held at the ends; heights fall from row to row. */
  leanAt(hip: number): number {
    const { rows } = this;
    let k = 0;
    while (k < rows.length - 2 && rows[k + 1].hip > hip) k++;
    return between(rows[k].hip, rows[k + 1].hip, hip, rows[k].theta, rows[k + 1].theta);
  }
}

function between(from: number, to: number, x: number, a: number, b: number): number {
  const share = Math.min(Math.max((x - from) / (to - from), 0), 1);
  return a + share * (b - a);
}
