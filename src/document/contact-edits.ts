/** What comes before and after the flight, as pure changes of the document. */
import type {
  FileBefore,
  FileCatch,
  FileLanding,
  FileSwing,
  FileSwingKey,
  FileTakeoffContact,
  FileVelocity,
  SkillFile,
} from '../../sim/index.ts';
import { afterOf, beforeOf, flightOf } from '../../sim/math/phases.ts';
import { withAfter } from './phases.ts';

export const isSwing = (a: FileBefore | undefined): a is FileSwing => a?.kind === 'swing';
export const isContact = (a: FileBefore | undefined): a is FileTakeoffContact => a?.kind === 'contact';

/** The phase before the flight with other values: what it gives stays the same. */
function replaceBefore(file: SkillFile, before: FileBefore): SkillFile {
  return { ...file, phases: file.phases.map((phase) => (phase.kind === before.kind ? before : phase)) };
}

export function changeSwing(file: SkillFile, part: Partial<FileSwing>): SkillFile {
  const swing = beforeOf(file);
  return isSwing(swing) ? replaceBefore(file, { ...swing, ...part }) : file;
}

export function changeContact(file: SkillFile, part: Partial<Omit<FileTakeoffContact, 'given'>>): SkillFile {
  const contact = beforeOf(file);
  return isContact(contact) ? replaceBefore(file, { ...contact, ...part }) : file;
}

export function changeApproachSpeed(file: SkillFile, part: Partial<FileVelocity>): SkillFile {
  const contact = beforeOf(file);
  return isContact(contact)
    ? changeContact(file, { velocityMPerS: { along: 0, up: 0, ...contact.velocityMPerS, ...part } })
    : file;
}

/** A key of the last giant, or of the only kind there is. */
export function changeMove(file: SkillFile, index: number, part: Partial<FileSwingKey>): SkillFile {
  const swing = beforeOf(file);
  if (!isSwing(swing)) return file;
  const list = swing.moves.last ? 'last' : 'keys';
  const next = (swing.moves[list] ?? []).map((key, i) => (i === index ? { ...key, ...part } : key));
  return changeSwing(file, { moves: { ...swing.moves, [list]: next } });
}

export function changeGiven(file: SkillFile, part: Partial<NonNullable<FileTakeoffContact['given']>>): SkillFile {
  const contact = beforeOf(file);
  if (!isContact(contact) || !contact.given) return file;
  return replaceBefore(file, { ...contact, given: { ...contact.given, ...part } });
}

/** The catch that ends the flight. */
export const catchOf = ({ phases }: SkillFile): FileCatch | undefined =>
  phases.find((phase): phase is FileCatch => phase.kind === 'catch');

export function changeCatch(file: SkillFile, part: Partial<Omit<FileCatch, 'kind'>>): SkillFile {
  return { ...file, phases: file.phases.map((phase) => (phase.kind === 'catch' ? { ...phase, ...part } : phase)) };
}

export function changeLanding(file: SkillFile, part: Partial<Omit<FileLanding, 'kind'>>): SkillFile {
  const landing = afterOf(file);
  return landing ? withAfter(file, { ...landing, ...part }) : file;
}

export function landingForSurface(file: SkillFile): FileLanding {
  const { surface } = flightOf(file).end;
  if (surface?.kind === 'floor') return { kind: 'landing', mat: 'floor' };
  return { kind: 'landing', mat: (surface?.heightM ?? 0) > 0.25 ? 'withSoftLayer' : 'competitionMat' };
}
