/** What can be changed in a skill, each as a pure function from one document to the next. */

import type { Athlete, FileBlock, FileKey, FileTime, HumanAthlete, SkillFile } from '../../sim/index.ts';
import { sideOf } from '../../sim/math/side.ts';
import { dropHold, followBlocks } from './hand-holds.ts';

type Takeoff = SkillFile['takeoff'];

export function changeTakeoff(file: SkillFile, part: Partial<Takeoff>): SkillFile {
  return { ...file, takeoff: { ...file.takeoff, ...part } };
}

export function changeVelocity(file: SkillFile, part: Partial<Takeoff['velocityMPerS']>): SkillFile {
  return changeTakeoff(file, { velocityMPerS: { ...file.takeoff.velocityMPerS, ...part } });
}

export function changeAttitude(file: SkillFile, part: NonNullable<Takeoff['attitudeDeg']>): SkillFile {
  return changeTakeoff(file, { attitudeDeg: { ...file.takeoff.attitudeDeg, ...part } });
}

/** A referenced athlete is written into the skill when it is first changed, so that the shelf stays as it is. */
export function changeAthlete(file: SkillFile, athlete: Athlete, part: Partial<HumanAthlete>): SkillFile {
  return athlete.kind === 'human' ? { ...file, athlete: { ...athlete, ...part } } : file;
}

export function setAthlete(file: SkillFile, athlete: SkillFile['athlete']): SkillFile {
  return { ...file, athlete };
}

export function changeBlock(file: SkillFile, index: number, part: Partial<FileBlock>): SkillFile {
  const blocks = (file.schedule.blocks ?? []).map((b, i) => (i === index ? { ...b, ...part } : b));
  return { ...file, schedule: { ...file.schedule, blocks } };
}

export function setBlockEdge(file: SkillFile, index: number, side: 'from' | 'to', time: FileTime): SkillFile {
  return followBlocks(file, changeBlock(file, index, { [side]: time }));
}

/** In this block only, an angle differs from the shape. `names`: the angle on one side or on both. */
export function adjustBlock(file: SkillFile, index: number, names: readonly string[], deg: number): SkillFile {
  const adjustDeg = { ...file.schedule.blocks?.[index]?.adjustDeg };
  for (const name of names) {
    // a value for one side must not be hidden by an older one for both, or the other way round
    if (!sideOf(name)) for (const side of ['L', 'R']) delete adjustDeg[name + side];
    adjustDeg[name] = deg;
  }
  return changeBlock(file, index, { adjustDeg });
}

export function addBlock(file: SkillFile, index: number, block: FileBlock): SkillFile {
  const blocks = [...(file.schedule.blocks ?? [])];
  blocks.splice(index, 0, block);
  return { ...file, schedule: { ...file.schedule, blocks } };
}

export function removeBlock(file: SkillFile, index: number): SkillFile {
  const blocks = (file.schedule.blocks ?? []).filter((_, i) => i !== index);
  const free = dropHold(file, index);
  return { ...free, schedule: { ...free.schedule, blocks } };
}

export function changeKey(file: SkillFile, index: number, part: Partial<FileKey>): SkillFile {
  const keys = (file.schedule.keys ?? []).map((k, i) => (i === index ? { ...k, ...part } : k));
  return { ...file, schedule: { ...file.schedule, keys } };
}

export function addKey(file: SkillFile, key: FileKey): SkillFile {
  return { ...file, schedule: { ...file.schedule, keys: [...(file.schedule.keys ?? []), key] } };
}

export function removeKey(file: SkillFile, index: number): SkillFile {
  const keys = (file.schedule.keys ?? []).filter((_, i) => i !== index);
  return { ...file, schedule: { ...file.schedule, keys } };
}
