/** The order of keys and block edges in time, which the file's lists must keep. */

import type { FileTime, SkillFile } from '../../sim/index.ts';
import { sideOf } from '../../sim/math/side.ts';
import { followBlocks } from './hand-holds.ts';
import type { KeySource } from './lanes.ts';
import { getSchedule, withSchedule } from './phases.ts';
import { SHORTEST_MOVE } from './spans.ts';
import { type AnchorSeconds, resolveTime } from './times.ts';

/** Keys of one angle are at least this apart, s. */
const KEY_GAP = 0.001;
const SLACK = 1e-9;

/** The angle's name without its side, and the sides it keys ('' for an angle without sides). */
export function sidesOf(angle: string): { stem: string; sides: readonly ('L' | 'R')[] } {
  const side = sideOf(angle);
  return side ? { stem: angle.slice(0, -1), sides: [side] } : { stem: angle, sides: ['L', 'R'] };
}

/** Whether two keys move a common angle. */
export function shareAngle(a: string, b: string): boolean {
  if (a === b) return true;
  const [x, y] = [sidesOf(a), sidesOf(b)];
  return x.stem === y.stem && x.sides.some((s) => y.sides.includes(s));
}

export function getTime(file: SkillFile, source: KeySource): FileTime | undefined {
  return source.kind === 'key'
    ? getSchedule(file).keys?.[source.index]?.at
    : getSchedule(file).blocks?.[source.block]?.[source.side];
}

/** A copy of the file in which each source is at its new time. */
export function setTimes(file: SkillFile, times: readonly (readonly [KeySource, FileTime])[]): SkillFile {
  const schedule = getSchedule(file);
  const keys = schedule.keys && [...schedule.keys];
  const blocks = schedule.blocks && [...schedule.blocks];
  for (const [source, time] of times)
    if (source.kind === 'key' && keys?.[source.index]) keys[source.index] = { ...keys[source.index], at: time };
    else if (source.kind === 'edge' && blocks?.[source.block])
      blocks[source.block] = { ...blocks[source.block], [source.side]: time };
  return followBlocks(file, withSchedule(file, { ...(keys ? { keys } : {}), ...(blocks ? { blocks } : {}) }));
}

/** Whether keys of each angle, and blocks with a move between them, follow each other as listed. */
export function isInOrder(file: SkillFile, anchors: AnchorSeconds): boolean {
  const last = new Map<string, number>();
  for (const key of getSchedule(file).keys ?? []) {
    const t = resolveTime(key.at, anchors);
    const { stem, sides } = sidesOf(key.angle);
    for (const side of sides) {
      const before = last.get(stem + side);
      if (before !== undefined && t < before + KEY_GAP - SLACK) return false;
      last.set(stem + side, t);
    }
  }
  const blocks = getSchedule(file).blocks ?? [];
  return blocks.every((block, i) => {
    const from = resolveTime(block.from, anchors);
    const former = blocks[i - 1];
    // blocks that were laid closer by hand may stay so
    const gap = former ? Math.min(SHORTEST_MOVE, from - resolveTime(former.to, anchors)) : 0;
    return (
      gap >= -SLACK && (gap >= SHORTEST_MOVE - SLACK || gap === 0) && resolveTime(block.to, anchors) >= from - SLACK
    );
  });
}

const HALVINGS = 24;

/** The change done as far as order allows: all of it, or the largest share that keeps keys and blocks in order. */
export function limitChange(
  change: (share: number) => SkillFile,
  anchors: AnchorSeconds,
  unchanged: SkillFile,
): SkillFile {
  const whole = change(1);
  if (isInOrder(whole, anchors) || !isInOrder(unchanged, anchors)) return whole;
  let best = unchanged;
  let low = 0;
  let high = 1;
  for (let i = 0; i < HALVINGS; i++) {
    const share = (low + high) / 2;
    const tried = change(share);
    if (isInOrder(tried, anchors)) [best, low] = [tried, share];
    else high = share;
  }
  return best;
}
