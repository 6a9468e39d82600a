/** Hands that hold on while a shape is held: a contact from the shape's beginning to its end. */
import type { FileContact, FileTime, SkillFile } from '../../sim/index.ts';
import { getSchedule, withFlight, withSchedule } from './phases.ts';
import { type AnchorSeconds, resolveTime } from './times.ts';

export type HoldOn = FileContact['on'];
export interface HandHold {
  readonly on: HoldOn;
  readonly hand: FileContact['hand'];
}

const same = (a: FileTime, b: FileTime): boolean => a.anchor === b.anchor && a.s === b.s;

/** The contact that lasts while this shape is held; of two hands the first named. */
export function findHold(file: SkillFile, index: number): { contact: number; hold: HandHold } | undefined {
  const block = getSchedule(file).blocks?.[index];
  if (!block) return undefined;
  const contact = (getSchedule(file).contacts ?? []).findIndex((c) => same(c.from, block.from) && same(c.to, block.to));
  const found = getSchedule(file).contacts?.[contact];
  return found && { contact, hold: { on: found.on, hand: found.hand } };
}

/** Sets or changes the hold of this shape. */
export function setHold(file: SkillFile, index: number, hold: HandHold, anchors: AnchorSeconds): SkillFile {
  const block = getSchedule(file).blocks?.[index];
  if (!block) return file;
  const free = dropHold(file, index);
  const contacts = [...(getSchedule(free).contacts ?? []), { ...hold, from: block.from, to: block.to }];
  contacts.sort((a, b) => resolveTime(a.from, anchors) - resolveTime(b.from, anchors));
  return withSchedule(free, { contacts });
}

/** The hands let go through this shape. */
export function dropHold(file: SkillFile, index: number): SkillFile {
  const block = getSchedule(file).blocks?.[index];
  const { contacts, ...schedule } = getSchedule(file);
  if (!block || !contacts) return file;
  const rest = contacts.filter((c) => !(same(c.from, block.from) && same(c.to, block.to)));
  return withFlight(file, { schedule: rest.length > 0 ? { ...schedule, contacts: rest } : schedule });
}

/** After blocks were retimed: contacts that began or ended with an edge of a block go with it. */
export function followBlocks(before: SkillFile, after: SkillFile): SkillFile {
  const { contacts } = getSchedule(after);
  if (!contacts?.length) return after;
  const moved = (time: FileTime): FileTime => {
    for (const [i, block] of (getSchedule(before).blocks ?? []).entries())
      for (const side of ['from', 'to'] as const)
        if (same(block[side], time)) return getSchedule(after).blocks?.[i]?.[side] ?? time;
    return time;
  };
  return withSchedule(after, { contacts: contacts.map((c) => ({ ...c, from: moved(c.from), to: moved(c.to) })) });
}
