/**
 * A last shape that is held until touchdown: its end moves nothing, since a body rests in its last shape anyway. So it
 * is ended where it starts, and touchdown is asked of nothing: a body that comes down before the shape is reached lands
 * on its way there, and a flight on which nothing else hangs needs no agreement about T.
 */
import type { ScheduleSpec } from '../schedule/schedule.ts';

/** The same motion with such a shape ended where it starts; the schedule itself where there is none. */
export function freeHeldShape(schedule: ScheduleSpec): ScheduleSpec {
  const { blocks, keys } = schedule;
  const last = blocks[blocks.length - 1];
  if (last?.to.anchor !== 'touchdown' || last.from.anchor === 'touchdown') return schedule;
  const { anchor, s } = last.from;
  // a key that falls into the held shape is met by it again at its end
  if (!keys.every((k) => k.at.anchor === anchor && k.at.s <= s)) return schedule;
  return { ...schedule, blocks: [...blocks.slice(0, -1), { ...last, to: last.from }] };
}
