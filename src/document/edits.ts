/** What can be changed in a skill, each as a pure function from one document to the next. */
import type {
  Athlete,
  FileBlock,
  FileKey,
  FileTakeoff,
  FileTime,
  FileVelocity,
  HumanAthlete,
  SkillFile,
} from '../../sim/index.ts';
import { flightOf } from '../../sim/math/phases.ts';
import { sideOf } from '../../sim/math/side.ts';
import { dropHold, followBlocks } from './hand-holds.ts';
import { getSchedule, withFlight, withSchedule } from './phases.ts';

/** Of what the flight states; what the phase before gives cannot be changed here. */
export function changeTakeoff(file: SkillFile, part: FileTakeoff): SkillFile {
  const { takeoff } = flightOf(file);
  return takeoff ? withFlight(file, { takeoff: { ...takeoff, ...part } }) : file;
}

export function changeVelocity(file: SkillFile, part: Partial<FileVelocity>): SkillFile {
  const velocity = flightOf(file).takeoff?.velocityMPerS;
  return velocity ? changeTakeoff(file, { velocityMPerS: { ...velocity, ...part } }) : file;
}

export function changeAttitude(file: SkillFile, part: NonNullable<FileTakeoff['attitudeDeg']>): SkillFile {
  return changeTakeoff(file, { attitudeDeg: { ...flightOf(file).takeoff?.attitudeDeg, ...part } });
}

/** A referenced athlete is written into the skill when it is first changed, so that the shelf stays as it is. */
export function changeAthlete(file: SkillFile, athlete: Athlete, part: Partial<HumanAthlete>): SkillFile {
  if (athlete.kind !== 'human') return file;
  const { segments } = athlete;
  const sized = segments && { segments: sizeSegments(segments, athlete, { ...athlete, ...part }) };
  return { ...file, athlete: { ...athlete, ...part, ...sized } };
}

type Segments = NonNullable<HumanAthlete['segments']>;
type Measured = Pick<HumanAthlete, 'massKg' | 'statureM'>;

/** Measured segments keep their shares: masses of the mass, lengths of the stature. */
function sizeSegments(segments: Segments, from: Measured, to: Measured): Segments {
  const [mass, length] = [to.massKg / from.massKg, to.statureM / from.statureM];
  return Object.fromEntries(
    Object.entries(segments).map(([name, s]) => [
      name,
      {
        ...s,
        ...(s.massKg === undefined ? {} : { massKg: s.massKg * mass }),
        ...(s.lengthM === undefined ? {} : { lengthM: s.lengthM * length }),
      },
    ]),
  );
}

export function setAthlete(file: SkillFile, athlete: SkillFile['athlete']): SkillFile {
  return { ...file, athlete };
}

export function changeBlock(file: SkillFile, index: number, part: Partial<FileBlock>): SkillFile {
  const blocks = (getSchedule(file).blocks ?? []).map((b, i) => (i === index ? { ...b, ...part } : b));
  return withSchedule(file, { blocks });
}

export function setBlockEdge(file: SkillFile, index: number, side: 'from' | 'to', time: FileTime): SkillFile {
  return followBlocks(file, changeBlock(file, index, { [side]: time }));
}

/** In this block only, an angle differs from the shape. `names`: the angle on one side or on both. */
export function adjustBlock(file: SkillFile, index: number, names: readonly string[], deg: number): SkillFile {
  const adjustDeg = { ...getSchedule(file).blocks?.[index]?.adjustDeg };
  for (const name of names) {
    // a value for one side must not be hidden by an older one for both, or the other way round
    if (!sideOf(name)) for (const side of ['L', 'R']) delete adjustDeg[name + side];
    adjustDeg[name] = deg;
  }
  return changeBlock(file, index, { adjustDeg });
}

export function addBlock(file: SkillFile, index: number, block: FileBlock): SkillFile {
  const blocks = [...(getSchedule(file).blocks ?? [])];
  blocks.splice(index, 0, block);
  return withSchedule(file, { blocks });
}

export function removeBlock(file: SkillFile, index: number): SkillFile {
  const blocks = (getSchedule(file).blocks ?? []).filter((_, i) => i !== index);
  const free = dropHold(file, index);
  return withSchedule(free, { blocks });
}

export function changeKey(file: SkillFile, index: number, part: Partial<FileKey>): SkillFile {
  const keys = (getSchedule(file).keys ?? []).map((k, i) => (i === index ? { ...k, ...part } : k));
  return withSchedule(file, { keys });
}

export function addKey(file: SkillFile, key: FileKey): SkillFile {
  return withSchedule(file, { keys: [...(getSchedule(file).keys ?? []), key] });
}

export function removeKey(file: SkillFile, index: number): SkillFile {
  const keys = (getSchedule(file).keys ?? []).filter((_, i) => i !== index);
  return withSchedule(file, { keys });
}
