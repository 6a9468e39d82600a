/**
 * A skill as a version 1 file, where version 1 can say it. The take-off that the phase before gives is written in, as
 * launched, so that a reader that knows take-offs only has the flight too. What cannot be said is an error that names it.
 */
import type { TakeoffSpec } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import { afterOf, beforeOf, flightOf } from '../math/phases.ts';
import type { Athlete } from './athlete-schema.ts';
import { checkSkillFile1, type SkillFile1 } from './skill-file-1.ts';
import type { SkillFile } from './skill-schema.ts';
import { takeoffInFile } from './write-start.ts';

/** Fields of phases that came later. */
const NEW_FIELDS = ['title', 'target', 'limb', 'entry', 'pulse'] as const;
const NONE = 'none: a version 1 file has no place for it';

/** `resolved`: the athlete that a reference of the file leads to. */
export function exportVersion1(file: SkillFile, launched: TakeoffSpec, resolved: Athlete): SkillFile1 {
  const { title, note, athlete, gravityMPerS2, shapes, target, worksheets = [], recordings = [] } = file;
  if (recordings.length > 0) throw new FieldError('recordings', recordings, NONE);
  if (worksheets.length > 1) throw new FieldError('worksheets', worksheets, 'at most one in a version 1 file');
  // a build that reads version 1 refuses the athlete's own file too; of a ready athlete it has its own file
  const isReady = 'ref' in athlete && !athlete.ref.endsWith('.json');
  if (resolved.kind === 'human' && resolved.ageYears !== undefined && !isReady)
    throw new FieldError(
      'ref' in athlete ? `athlete.ref ${JSON.stringify(athlete.ref)}: ageYears` : 'athlete.ageYears',
      resolved.ageYears,
      NONE,
    );
  file.phases.forEach((phase, i) => {
    const isNew = phase.kind === 'catch' || phase.kind === 'entry';
    if (isNew || (phase.kind === 'contact' && i > 0)) throw new FieldError(`phases[${i}]`, phase, NONE);
    for (const name of NEW_FIELDS)
      if (name in phase) throw new FieldError(`phases[${i}].${name}`, phase[name as keyof typeof phase], NONE);
  });
  const { takeoff, end, schedule } = flightOf(file);
  if (end.surface?.by !== undefined) throw new FieldError('end.surface.by', end.surface.by, NONE);
  const before = beforeOf(file);
  if (before?.kind === 'swing' && 'caught' in before.start)
    throw new FieldError('swing.start.caught', before.start.caught, NONE);
  const { kind: _, ...arrival } = afterOf(file) ?? { kind: 'landing' };
  return checkSkillFile1({
    format: file.format,
    version: 1,
    title,
    ...(note === undefined ? {} : { note }),
    ...(worksheets.length === 1 ? { sheet: worksheets[0] } : {}),
    athlete,
    ...(gravityMPerS2 === undefined ? {} : { gravityMPerS2 }),
    // what is stated stays as it is written
    takeoff: { ...takeoffInFile(launched), ...takeoff },
    end,
    schedule,
    ...(before ? { approach: before } : {}),
    ...(afterOf(file) ? { arrival } : {}),
    ...(shapes ? { shapes } : {}),
    ...(target ? { target } : {}),
  });
}
