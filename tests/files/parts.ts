/** The phases of a skill for tests that write into them. */
import {
  beforeOf,
  type FileFlight,
  type FileSwing,
  type FileTakeoff,
  type FileTakeoffContact,
  flightOf,
  type SkillFile,
} from '../../sim/index.ts';

type WholeTakeoff = FileTakeoff & Required<Pick<FileTakeoff, 'velocityMPerS' | 'momentum'>>;

/** A flight that states its take-off. */
export function flightIn(file: SkillFile): FileFlight & { takeoff: WholeTakeoff } {
  const flight = flightOf(file);
  if (!flight.takeoff?.velocityMPerS || !flight.takeoff.momentum) throw new Error('no take-off is stated');
  return flight as FileFlight & { takeoff: WholeTakeoff };
}

export function swingIn(file: SkillFile): FileSwing {
  const before = beforeOf(file);
  if (before?.kind !== 'swing') throw new Error('no swing');
  return before;
}

export function contactIn(file: SkillFile): FileTakeoffContact {
  const before = beforeOf(file);
  if (before?.kind !== 'contact') throw new Error('no contact');
  return before;
}

/** Of a contact whose force is known. */
export function givenIn(file: SkillFile): NonNullable<FileTakeoffContact['given']> {
  const { given } = contactIn(file);
  if (!given) throw new Error('no known contact');
  return given;
}

/** Left and right exchanged in the flight's shapes; changed in place. */
export function mirrorShapes(file: SkillFile): SkillFile {
  for (const block of flightIn(file).schedule.blocks ?? []) {
    if (block.shape === 'oneUpOneDown') block.shape = 'oneDownOneUp';
    block.adjustDeg = Object.fromEntries(
      Object.entries(block.adjustDeg ?? {}).map(([k, v]) => [k.replace(/[LR]$/, (s) => (s === 'L' ? 'R' : 'L')), v]),
    );
  }
  return file;
}
