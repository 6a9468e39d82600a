/**
 * How far keys are from changing order, s. A search stays a hair away from that, since what it finds is rounded when it is
 * written, and keys that have changed order cannot be flown.
 */
import { type AnchorTimes, resolveTime } from '../math/anchor.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';

const HAIR = 1e-3;

/** One for each two neighbours, in a fixed order. */
export function keySlacks({ blocks, keys }: SkillSpec, times: AnchorTimes): number[] {
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
  return out;
}

/** Whether two keys have come nearer to each other than a hair, and nearer than they were. */
export const isTooTight = (now: readonly number[], before: readonly number[]): boolean =>
  now.some((s, i) => s < Math.min(HAIR, before[i] - 1e-9));
