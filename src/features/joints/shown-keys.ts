/** Which keys of a lane have a handle: of thousands those that can be seen apart, so that a dense lane is no longer to show than a full one. */
import type { LaneKey } from '../../document/lanes.ts';

/** So many keys all have one, however near to each other. */
const FEW = 150;
/** Of more, each is at least so far from the one before, px. */
const APART_PX = 6;

/** Indices, ascending; `kept`: those that are worked on, shown wherever they are. */
export function chooseShown(keys: readonly LaneKey[], pxPerS: number, kept: ReadonlySet<number>): number[] {
  if (keys.length <= FEW) return keys.map((_, i) => i);
  const shown: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  keys.forEach(({ t }, i) => {
    if ((t - last) * pxPerS < APART_PX && !kept.has(i)) return;
    shown.push(i);
    last = t;
  });
  return shown;
}
