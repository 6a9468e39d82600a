/** What comes before and after the flight, as pure changes of the document. */
import type {
  FileApproach,
  FileArrival,
  FileSwing,
  FileSwingKey,
  FileTakeoffContact,
  SkillFile,
} from '../../sim/index.ts';

export const isSwing = (a: FileApproach | undefined): a is FileSwing => a?.kind === 'swing';
export const isContact = (a: FileApproach | undefined): a is FileTakeoffContact => a?.kind === 'contact';

export function setApproach(file: SkillFile, approach: FileApproach | undefined): SkillFile {
  const { approach: _, ...rest } = file;
  return approach ? { ...rest, approach } : rest;
}

export function setArrival(file: SkillFile, arrival: FileArrival | undefined): SkillFile {
  const { arrival: _, ...rest } = file;
  return arrival ? { ...rest, arrival } : rest;
}

export function changeSwing(file: SkillFile, part: Partial<FileSwing>): SkillFile {
  return isSwing(file.approach) ? setApproach(file, { ...file.approach, ...part }) : file;
}

export function changeContact(file: SkillFile, part: Partial<FileTakeoffContact>): SkillFile {
  return isContact(file.approach) ? setApproach(file, { ...file.approach, ...part }) : file;
}

export function changeApproachSpeed(file: SkillFile, part: Partial<FileTakeoffContact['velocityMPerS']>): SkillFile {
  const a = file.approach;
  return isContact(a) ? changeContact(file, { velocityMPerS: { ...a.velocityMPerS, ...part } }) : file;
}

/** A key of the last giant, or of the only kind there is. */
export function changeMove(file: SkillFile, index: number, part: Partial<FileSwingKey>): SkillFile {
  const a = file.approach;
  if (!isSwing(a)) return file;
  const list = a.moves.last ? 'last' : 'keys';
  const next = (a.moves[list] ?? []).map((key, i) => (i === index ? { ...key, ...part } : key));
  return changeSwing(file, { moves: { ...a.moves, [list]: next } });
}

export function changeGiven(file: SkillFile, part: Partial<NonNullable<FileTakeoffContact['given']>>): SkillFile {
  const a = file.approach;
  if (!isContact(a) || !a.given) return file;
  return changeContact(file, { given: { ...a.given, ...part } });
}

export function changeArrival(file: SkillFile, part: Partial<FileArrival>): SkillFile {
  return file.arrival ? setArrival(file, { ...file.arrival, ...part }) : file;
}

/** A contact that gives the take-off the file has now: the wanted direction, so nothing of the flight changes. */
export function contactForTakeoff(file: SkillFile): FileTakeoffContact {
  const kind = file.end.surface?.kind;
  if (kind === 'trampoline') return { kind: 'contact', place: 'trampoline', velocityMPerS: { along: 0, up: -7 } };
  if (kind === 'water') return { kind: 'contact', place: 'divingBoard', velocityMPerS: { along: 0.5, up: -4 } };
  const along = Math.sign(file.takeoff.velocityMPerS.along ?? 1) || 1;
  return { kind: 'contact', place: 'floor', velocityMPerS: { along: 4 * along, up: -0.8 } };
}

export function arrivalForSurface(file: SkillFile): FileArrival {
  const y = file.end.surface?.heightM ?? 0;
  if (file.end.surface?.kind === 'floor') return { mat: 'floor' };
  return { mat: y > 0.25 ? 'withSoftLayer' : 'competitionMat' };
}
