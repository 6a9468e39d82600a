/**
 * A held shape changed from its beginning to its end, with the keys beside it that hold the same value: where an angle is reached
 * before the rest of the shape, or left after it, those keys are part of what is held. Degrees by name, seconds from take-off.
 */
import type { SkillFile } from '../../sim/index.ts';
import { adjustBlock } from './edits.ts';
import { shareAngle } from './key-order.ts';
import { getSchedule } from './phases.ts';
import { type NamedDegrees, setPoseAt } from './pose-edits.ts';
import { type AnchorSeconds, resolveTime } from './times.ts';

/** deg: values are kept to a tenth, and shapes are written in whole ones */
const SAME = 0.6;

/** `held`: the value of every angle while the shape is held. */
export function adjustHeld(
  file: SkillFile,
  block: number,
  changed: NamedDegrees,
  held: NamedDegrees,
  anchors: AnchorSeconds,
): SkillFile {
  const { blocks = [], keys = [] } = getSchedule(file);
  const from = block > 0 ? resolveTime(blocks[block - 1].to, anchors) : Number.NEGATIVE_INFINITY;
  const to = block + 1 < blocks.length ? resolveTime(blocks[block + 1].from, anchors) : Number.POSITIVE_INFINITY;
  let next = file;
  for (const [name, deg] of Object.entries(changed)) {
    next = adjustBlock(next, block, [name], deg);
    const value = held[name] ?? held[`${name}L`];
    for (const key of keys) {
      const t = resolveTime(key.at, anchors);
      const isBeside = t > from && t < to && shareAngle(key.angle, name) && Math.abs(key.deg - value) < SAME;
      if (isBeside) next = setPoseAt(next, t, { [name]: deg }, { anchors });
    }
  }
  return next;
}
