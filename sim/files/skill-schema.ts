/** The skill file, version 2, as a schema: types, ranges, no unknown fields. The type SkillFile and the published JSON Schema come from it. */
import * as v from 'valibot';
import { athleteSchema } from './athlete-schema.ts';
import { catchSchema, contactSchema, entrySchema, flightSchema, landingSchema, swingSchema } from './phase-schema.ts';
import { shapeSchema } from './schedule-schema.ts';
import { listOf, may, name, one, say, schemaLink, text, within } from './schema-parts.ts';
import { sheetPartSchema } from './sheet-file.ts';
import { targetSchema } from './target-schema.ts';

export const SKILL_FORMAT = 'shapeflight-skill';
export const SKILL_VERSION = 2;

const phase = v.variant(
  'kind',
  [swingSchema, contactSchema, flightSchema, catchSchema, landingSchema, entrySchema],
  'a phase of kind "swing", "contact", "flight", "catch", "landing" or "entry"',
);
export const PHASE_KINDS = ['swing', 'contact', 'flight', 'catch', 'landing', 'entry'] as const;
/** Most flights of a chain, and most phases with that. */
export const MOST_FLIGHTS = 6;

const recording = v.strictObject({
  title: say(text(200), 'Name of the recording.'),
  kind: say(one('film', 'capture'), 'film: pictures; capture: measured points or angles.'),
  file: may(text(500), 'Name of its file.'),
  startS: may(within(-3600, 3600, 's'), 'Time of its first picture or value, from take-off.'),
  rateHz: may(within(0.001, 100000, 'Hz'), 'Pictures or values in a second.'),
  note: may(text(2000), 'A remark.'),
  data: may(v.unknown(), 'Any JSON; kept word for word.'),
});

const athleteOrRefSchema = v.union(
  [v.strictObject({ ref: say(text(200), 'Id of a ready or saved athlete.') }), athleteSchema],
  'an athlete of kind "human" or "tree", or {"ref": id}',
);
/** Fields that version 1 has too. */
export const commonFields = {
  title: say(text(200), 'Name of the skill.'),
  note: may(text(2000), 'A remark.'),
  athlete: say(athleteOrRefSchema, 'Who does it.'),
  gravityMPerS2: may(within(0, 30, 'm/s2'), '9.81 if left out.'),
};
export const shapesField = may(v.record(name, shapeSchema), 'Shapes of this file, by name.');
export const targetField = may(targetSchema, 'What the skill is meant to be; the result is compared with it.');

export const skillSchema = v.strictObject({
  $schema: schemaLink,
  format: say(v.literal(SKILL_FORMAT, `"${SKILL_FORMAT}"`), 'Says what the file is.'),
  version: say(v.literal(SKILL_VERSION, String(SKILL_VERSION)), 'Version of this form.'),
  ...commonFields,
  phases: say(
    listOf(phase, 2 * MOST_FLIGHTS + 1),
    'In the order of time: a swing or a contact (or neither); a flight; then, for each flight more, a contact or a catch and the flight; a landing, a catch or an entry (or none).',
  ),
  shapes: shapesField,
  target: targetField,
  worksheets: may(listOf(sheetPartSchema, 20), 'Estimate sheets kept with the skill; they change nothing of it.'),
  recordings: may(listOf(recording, 100), 'Recordings of the skill; kept, and not read by this build.'),
});

export type SkillFile = v.InferOutput<typeof skillSchema>;
/** written in, or the id of a ready or saved one, or (command line) of a file beside the skill */
export type AthleteRef = SkillFile['athlete'];
