/**
 * How far keys are from changing order, in hairs. A search stays a hair away from that, since what it finds is rounded when
 * it is written, and keys that have changed order cannot be flown.
 */

import { type AnchorTimes, resolveTime } from '../math/anchor.ts';
import { RAD, REV } from '../math/angles.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { SwingApproach } from '../skill/start-spec.ts';

/** s; of keys of a swing that lie over the swing angle, rad */
const HAIR = 1e-3;
const ANGLE_HAIR = 0.1 * RAD;

/** One for each two neighbours, in a fixed order. */
export function keySlacks({ blocks, keys, start }: SkillSpec, times: AnchorTimes): number[] {
  const out: number[] = [];
  blocks.forEach((b, i) => {
    const next = blocks[i + 1];
    // a body that comes down on its way to the last shape lands there
    if (next) out.push(resolveTime(b.to, times) - resolveTime(b.from, times));
    if (next) out.push(resolveTime(next.from, times) - resolveTime(b.to, times));
  });
  const last = new Map<string, number>();
  for (const { angle, at } of keys) {
    const t = resolveTime(at, times);
    const before = last.get(angle);
    if (before !== undefined) out.push(t - before);
    last.set(angle, t);
  }
  const inHairs = out.map((s) => s / HAIR);
  return start.kind === 'swing' ? [...inHairs, ...swingSlacks(start.swing.moves)] : inHairs;
}

/** Of the keys of a joint on the bar, over all rounds. */
function swingSlacks({ over, keys, last, rounds = 1, period = 0 }: SwingApproach['moves']): number[] {
  const [turn, hair] = over === 'time' ? [period, HAIR] : [REV, ANGLE_HAIR];
  const joints = Object.keys({ ...keys, ...last }) as (keyof typeof keys)[];
  return joints.flatMap((joint) => {
    const at = Array.from({ length: rounds }, (_, r) =>
      ((r === rounds - 1 ? last?.[joint] : undefined) ?? keys[joint] ?? []).map((key) => key.at + r * turn),
    ).flat();
    return at.slice(1).map((x, i) => (x - at[i]) / hair);
  });
}

/** Whether two keys have come nearer to each other than a hair, and nearer than they were. */
export const isTooTight = (now: readonly number[], before: readonly number[]): boolean =>
  now.some((s, i) => s < Math.min(1, before[i] - 1e-6));
