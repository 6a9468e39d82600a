/** The skill file, version 1: read and migrated, and written by an export. Its parts are those of version 2 in another order. */
import * as v from 'valibot';
import { FieldError } from '../math/field-error.ts';
import { check } from './check-schema.ts';
import { contactSchema, endSchema, landingFields, swingSchema, takeoffFields } from './phase-schema.ts';
import { scheduleSchema } from './schedule-schema.ts';
import { sheetPartSchema } from './sheet-file.ts';
import { commonFields, SKILL_FORMAT, shapesField, targetField } from './skill-schema.ts';

const skillSchema1 = v.strictObject({
  format: v.literal(SKILL_FORMAT, `"${SKILL_FORMAT}"`),
  version: v.literal(1, '1'),
  ...commonFields,
  sheet: v.optional(sheetPartSchema),
  takeoff: v.strictObject(takeoffFields),
  end: endSchema,
  schedule: scheduleSchema,
  approach: v.optional(v.variant('kind', [swingSchema, contactSchema], 'an approach of kind "swing" or "contact"')),
  arrival: v.optional(v.strictObject(landingFields)),
  shapes: shapesField,
  target: targetField,
});

export type SkillFile1 = v.InferOutput<typeof skillSchema1>;

export function checkSkillFile1(json: unknown): SkillFile1 {
  const file = check(skillSchema1, json);
  checkHeights(file.takeoff, 'takeoff');
  if ('athlete' in file && 'ageYears' in file.athlete)
    throw new FieldError('athlete.ageYears', 'this unknown field', 'only the fields of version 1 (docs/skill-file.md)');
  return file;
}

/** A take-off has one height. */
export function checkHeights(
  takeoff: { massCentreHeightM?: number | undefined; lowestPointHeightM?: number | undefined },
  field: string,
): void {
  const { massCentreHeightM, lowestPointHeightM } = takeoff;
  if ((massCentreHeightM === undefined) === (lowestPointHeightM === undefined))
    throw new FieldError(
      field,
      massCentreHeightM === undefined ? 'no height' : 'two heights',
      'exactly one of massCentreHeightM and lowestPointHeightM',
    );
}
