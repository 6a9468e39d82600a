/** The phases of a skill changed: swing or contact before the flight, the flight, the landing. */
import type { FileBefore, FileFlight, FileLanding, FileSchedule, FileTakeoff, SkillFile } from '../../sim/index.ts';
import { beforeOf, flightOf } from '../../sim/math/phases.ts';

export const getSchedule = (file: SkillFile): FileSchedule => flightOf(file).schedule;

export function withFlight(file: SkillFile, part: Partial<FileFlight>): SkillFile {
  return { ...file, phases: file.phases.map((phase) => (phase.kind === 'flight' ? { ...phase, ...part } : phase)) };
}

export function withSchedule(file: SkillFile, part: Partial<FileSchedule>): SkillFile {
  return withFlight(file, { schedule: { ...getSchedule(file), ...part } });
}

/**
 * With another phase before the flight, or none. What that phase gives is taken out of the take-off; what nothing gives any
 * more is stated as `launched`, so that the flight stays as it was.
 */
export function withBefore(file: SkillFile, before: FileBefore | undefined, launched: FileTakeoff): SkillFile {
  const { takeoff: stated } = flightOf(file);
  const takeoff =
    before?.kind === 'swing' ? undefined : statedBeside(before, { ...withoutHeight(launched, stated), ...stated });
  return begunBy(file, before, takeoff);
}

/** All after the first flight stays. */
function begunBy(file: SkillFile, before: FileBefore | undefined, takeoff: FileTakeoff | undefined): SkillFile {
  const { takeoff: _, ...flight } = flightOf(file);
  const at = file.phases.findIndex(({ kind }) => kind === 'flight');
  return {
    ...file,
    phases: [...(before ? [before] : []), { ...flight, ...(takeoff ? { takeoff } : {}) }, ...file.phases.slice(at + 1)],
  };
}

function statedBeside(before: FileBefore | undefined, whole: FileTakeoff): FileTakeoff {
  if (before?.kind !== 'contact' || !before.given) return whole;
  const { velocityMPerS: _, momentum: __, ...place } = whole;
  return place;
}

/** A take-off has one height. */
function withoutHeight(launched: FileTakeoff, stated: FileTakeoff | undefined): FileTakeoff {
  if (!stated) return launched;
  const { massCentreHeightM: _, lowestPointHeightM: __, ...rest } = launched;
  return rest;
}

export function withAfter(file: SkillFile, landing: FileLanding | undefined): SkillFile {
  const rest = file.phases.filter((phase) => phase.kind !== 'landing');
  return { ...file, phases: landing ? [...rest, landing] : rest };
}

/** Begins as another skill does: with its take-off, and with the swing or contact before it. */
export const withStartOf = (file: SkillFile, other: SkillFile): SkillFile =>
  begunBy(file, beforeOf(other), flightOf(other).takeoff);
