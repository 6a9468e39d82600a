/** The torques of a flight's hinges, each about its own axis, against the strength known for it (torque-loads.ts). */
import type { Body } from '../body/body.ts';
import type { Frames } from './frames.ts';
import { type HingeStrength, rateOf, strengthOfHinges } from './known-strength.ts';
import { listTorqueLoads, OPEN, type TorqueLoad } from './torque-loads.ts';

type LoadColumns = Pick<Frames, 'n' | 'angles' | 'qd' | 'tau'>;

interface JointLoad extends TorqueLoad {
  readonly hinge: HingeStrength;
}

/** Each load that may be more than `share` of what is known; all of them for 0. `at`: those of one row alone. */
export function listLoads(body: Body, c: LoadColumns, share: number, at?: number): JointLoad[] {
  const hinges = strengthOfHinges(body);
  const [nq, na] = [hinges.length, body.angles.length];
  return hinges.flatMap((hinge, k) => {
    if (!hinge.strength || (share > 0 && isIdle(c, nq, k, hinge.strength))) return [];
    const course = {
      rows: c.n,
      strength: hinge.strength,
      limbs: 1,
      torqueAt: (i: number) => c.tau[nq * i + k],
      angleAt: (i: number) => c.angles[na * i + hinge.angle],
      rateAt: (i: number) => rateOf(hinge, k, c, na * i, nq * i),
    };
    return listTorqueLoads(course, share, at).map((load) => ({ ...load, hinge }));
  });
}

/** Nothing that would be warned of: a look at the torques alone. */
function isIdle(c: LoadColumns, nq: number, k: number, [plus, minus]: Required<HingeStrength>['strength']): boolean {
  const [high, low] = [OPEN * plus.still, -OPEN * minus.still];
  for (let i = k; i < nq * c.n; i += nq) if (c.tau[i] > high || c.tau[i] < low) return false;
  return true;
}
