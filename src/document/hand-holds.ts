/** Hands that hold on while a shape is held: a contact from the shape's beginning to its end. */
import type { FileContact, FileTime, SkillFile } from '../../sim/index.ts';
import { type AnchorSeconds, resolveTime } from './times.ts';

export type HoldOn = FileContact['on'];
export interface HandHold {
  readonly on: HoldOn;
  readonly hand: FileContact['hand'];
}

const same = (a: FileTime, b: FileTime): boolean => a.anchor === b.anchor && a.s === b.s;

/** The contact that lasts while this shape is held; of two hands the first named. */
export function findHold(file: SkillFile, index: number): { contact: number; hold: HandHold } | undefined {
  const block = file.schedule.blocks?.[index];
  if (!block) return undefined;
  const contact = (file.schedule.contacts ?? []).findIndex((c) => same(c.from, block.from) && same(c.to, block.to));
  const found = file.schedule.contacts?.[contact];
  return found && { contact, hold: { on: found.on, hand: found.hand } };
}

/** Sets or changes the hold of this shape. */
export function setHold(file: SkillFile, index: number, hold: HandHold, anchors: AnchorSeconds): SkillFile {
  const block = file.schedule.blocks?.[index];
  if (!block) return file;
  const free = dropHold(file, index);
  const contacts = [...(free.schedule.contacts ?? []), { ...hold, from: block.from, to: block.to }];
  contacts.sort((a, b) => resolveTime(a.from, anchors) - resolveTime(b.from, anchors));
  return { ...free, schedule: { ...free.schedule, contacts } };
}

/** The hands let go through this shape. */
export function dropHold(file: SkillFile, index: number): SkillFile {
  const block = file.schedule.blocks?.[index];
  const { contacts, ...schedule } = file.schedule;
  if (!block || !contacts) return file;
  const rest = contacts.filter((c) => !(same(c.from, block.from) && same(c.to, block.to)));
  return { ...file, schedule: rest.length > 0 ? { ...schedule, contacts: rest } : schedule };
}

/** After blocks were retimed: contacts that began or ended with an edge of a block go with it. */
export function followBlocks(before: SkillFile, after: SkillFile): SkillFile {
  const { contacts } = after.schedule;
  if (!contacts?.length) return after;
  const moved = (time: FileTime): FileTime => {
    for (const [i, block] of (before.schedule.blocks ?? []).entries())
      for (const side of ['from', 'to'] as const)
        if (same(block[side], time)) return after.schedule.blocks?.[i]?.[side] ?? time;
    return time;
  };
  return {
    ...after,
    schedule: { ...after.schedule, contacts: contacts.map((c) => ({ ...c, from: moved(c.from), to: moved(c.to) })) },
  };
}
