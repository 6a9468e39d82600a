/**
 * Landings over the angle of the body at touchdown: a balanced pose turned as one about its mass centre, soles kept as level as the
 * ankles can. What has to come of it, from the middle outward: stands, a small step, steps, a fall, never the other way.
 */
import type { Body } from '../../sim/body/body.ts';
import type { EndingKind } from '../../sim/contact/ending.ts';
import { type LandingRun, type LandingSetup, runLanding } from '../../sim/contact/landing.ts';
import type { LandingEntry } from '../../sim/contact/landing-entry.ts';
import { DEFAULT_ACTION } from '../../sim/contact/landing-joints.ts';
import type { MatSpec } from '../../sim/contact/mat.ts';
import { RAD } from '../../sim/math/angles.ts';
import { makeDropEntry } from './drop-entry.ts';

export interface Arrival {
  /** m/s down and forward */
  readonly speed: number;
  readonly forward?: number;
  /** kg m^2/s for each kg m^2 of m h^2, + backward: 20 for 54 kg and 1.62 m is 0.14 */
  readonly turning?: number;
  /** hips, deg; 35 if left out */
  readonly hip?: number;
}

/** `angle`: leaning back +, deg. */
export function arrive(body: Body, a: Arrival, angle: number): LandingEntry {
  const e = makeDropEntry(body, {
    speed: a.speed,
    vx: a.forward ?? 0,
    h: (a.turning ?? 0) * body.mass * (body.stature ?? 1.7) ** 2,
    knee: 25 * RAD,
    hip: (a.hip ?? 35) * RAD,
    shoulder: 1.8,
    toesDown: 10 * RAD,
  });
  const ankle = e.chain.joints.findIndex((j) => j.name === 'ankle');
  const q = [...e.q];
  q[ankle] = Math.min(Math.max(q[ankle] + angle * RAD, -20 * RAD), 45 * RAD);
  return { ...e, q, theta: e.theta + angle * RAD };
}

/** As batches land; `more`: other settings. */
export const landAt = (
  body: Body,
  mat: MatSpec,
  a: Arrival,
  angle: number,
  more: Partial<LandingSetup> = {},
): LandingRun => runLanding(arrive(body, a, angle), { mat, action: DEFAULT_ACTION, isBatch: true, ...more });

/** 0 on the feet, 1 a step, 2 steps, 3 down. */
export const rankOf = (kind: EndingKind): number =>
  kind === 'stands' || kind === 'hop' || kind === 'deepSquat' ? 0 : kind === 'smallStep' ? 1 : kind === 'steps' ? 2 : 3;

const LETTERS: Readonly<Record<EndingKind, string>> = {
  stands: 'S', hop: 'o', deepSquat: 'D', smallStep: 's', steps: 't', hands: 'h', knees: 'k', seat: 'e', back: 'b', head: 'x',
  unsettled: '?', tooFast: '-',
}; // biome-ignore format: a table
export const letterOf = (kind: EndingKind): string => LETTERS[kind];

/** Places in a row of ranks where, seen from its best place outward, it gets better again: [from, to) of each island. */
export function findIslands(ranks: readonly number[]): readonly (readonly [number, number])[] {
  const best = Math.min(...ranks);
  // the widest run of the best rank is the middle
  let [middle, width] = [0, 0];
  for (let i = 0; i < ranks.length; ) {
    let k = i;
    while (k < ranks.length && ranks[k] === best) k++;
    if (k - i > width) [middle, width] = [i, k - i];
    i = Math.max(k, i + 1);
  }
  const found: [number, number][] = [];
  for (const side of [1, -1]) {
    let worst = best;
    for (let i = side > 0 ? middle + width : middle - 1; i >= 0 && i < ranks.length; i += side) {
      if (ranks[i] < worst) {
        const last = found.at(-1);
        if (last && (last[1] === i || last[0] === i + 1)) {
          last[0] = Math.min(last[0], i);
          last[1] = Math.max(last[1], i + 1);
        } else found.push([i, i + 1]);
      }
      worst = Math.max(worst, ranks[i]);
    }
  }
  return found;
}
