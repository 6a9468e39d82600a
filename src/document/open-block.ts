/** A held shape opened into joint lanes: the block is gone, and keys at its edges do what it did. */
import type { FileKey, SkillFile } from '../../sim/index.ts';
import { removeBlock } from './edits.ts';
import { withSchedule } from './phases.ts';
import { pasteKeys } from './pose-edits.ts';
import { type AnchorSeconds, resolveTime } from './times.ts';

export function openBlock(
  file: SkillFile,
  index: number,
  keys: readonly FileKey[],
  base: string | undefined,
  anchors: AnchorSeconds,
): SkillFile {
  let out = removeBlock(file, index);
  if (base !== undefined) out = withSchedule(out, { base });
  // one by one: each keeps the event that it is anchored to
  for (const key of keys) {
    const t = resolveTime(key.at, anchors);
    out = pasteKeys(out, { keys: [{ afterS: 0, key }], lengthS: 0 }, t, anchors);
  }
  return out;
}
