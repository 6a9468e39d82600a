/**
 * A version 1 file as one of version 2. It means what was flown of it: with a swing the take-off it states was not, and of
 * that beside a known contact only height and attitude were.
 */
import type { SkillFile1 } from './skill-file-1.ts';
import { SKILL_VERSION, type SkillFile } from './skill-schema.ts';

export function migrateSkill(file: SkillFile1): SkillFile {
  const { format, title, note, athlete, gravityMPerS2, sheet, approach, arrival, shapes, target } = file;
  const { velocityMPerS, momentum, ...place } = file.takeoff;
  const isSwing = approach?.kind === 'swing';
  const isGiven = approach?.kind === 'contact' && approach.given !== undefined;
  const takeoff = isGiven ? place : file.takeoff;
  return {
    format,
    version: SKILL_VERSION,
    title,
    ...(note === undefined ? {} : { note }),
    athlete,
    ...(gravityMPerS2 === undefined ? {} : { gravityMPerS2 }),
    phases: [
      ...(approach ? [approach] : []),
      { kind: 'flight', ...(isSwing ? {} : { takeoff }), end: file.end, schedule: file.schedule },
      ...(arrival ? [{ kind: 'landing' as const, ...arrival }] : []),
    ],
    ...(shapes ? { shapes } : {}),
    ...(target ? { target } : {}),
    ...(sheet ? { worksheets: [sheet] } : {}),
  };
}

const isObject = (x: unknown): boolean => typeof x === 'object' && x !== null && !Array.isArray(x);

/**
 * The same for a document that an older build kept, in whatever state it was: an unfinished edit need not pass a check.
 * Undefined: not a document of any version that this build knows.
 */
export function migrateKept(doc: unknown): SkillFile | undefined {
  if (typeof doc !== 'object' || doc === null) return undefined;
  const { version, takeoff, end, schedule, phases } = doc as Record<string, unknown>;
  if (version === 1 && [takeoff, end, schedule].every(isObject)) return migrateSkill(doc as SkillFile1);
  const isWhole =
    version === SKILL_VERSION &&
    Array.isArray(phases) &&
    phases.every(isObject) &&
    phases.some(({ kind }) => kind === 'flight');
  return isWhole ? (doc as SkillFile) : undefined;
}
