/** What joints, points and columns of a recording are on a body, as a file of JSON: laid over what their names say. docs/recording.md explains the fields. */
import * as v from 'valibot';
import { FieldError } from '../math/field-error.ts';
import { check } from './check-schema.ts';
import { listOf, may, one, say, schemaLink, text, triple, within } from './schema-parts.ts';
import { checkTame } from './tame-json.ts';

const MAP_FORMAT = 'shapeflight-recording-map';
const MAP_VERSION = 1;
/** As many as a recording has (sim/recording/recording-limits.ts; a test holds the two together). */
export const MAP_ENTRIES = 2000;

const NAME = 'a name of 1 to 200 characters';
const named = v.pipe(v.string(NAME), v.minLength(1, NAME), v.maxLength(200, NAME));
const from = say(named, 'Its name in the recording.');
const segment = say(text(80), 'Segment of the body, as thighL; empty: on none, so that nothing is made of it.');
const angleUnit = say(one('deg', 'rad'), 'Unit of its numbers.');
const unit = within(1e-6, 1000, 'm');
const of = say(named, 'F (the body frame), pelvis, trunk (the upper trunk), or a segment of the body.');
const kind = <const K extends string>(word: K, meaning: string) => say(v.literal(word, `"${word}"`), meaning);

const means = v.variant(
  'kind',
  [
    v.strictObject({
      kind: kind('angle', 'A joint angle.'),
      angle: say(named, 'Name of the angle, as kneeFlexionL.'),
      unit: angleUnit,
    }),
    v.strictObject({
      kind: kind('point', 'One axis of a point.'),
      point: say(named, 'Name of the point; its three columns have the same.'),
      axis: say(one('x', 'y', 'z'), 'Which axis.'),
      unitM: say(unit, 'Metres in its unit.'),
    }),
    v.strictObject({
      kind: kind('quaternion', 'One part of a quaternion.'),
      of,
      part: say(one('w', 'x', 'y', 'z'), 'Which part.'),
    }),
    v.strictObject({
      kind: kind('matrix', 'One number of a rotation matrix that turns axes of the part into those of the recording.'),
      of,
      row: say(v.picklist([1, 2, 3], 'one of 1, 2, 3'), 'Its row.'),
      column: say(v.picklist([1, 2, 3], 'one of 1, 2, 3'), 'Its column.'),
    }),
    v.strictObject({
      kind: kind('attitude', 'Somersault, tilt or twist.'),
      of: say(one('F', 'pelvis', 'trunk'), 'Of the body frame, the pelvis or the upper trunk.'),
      part: say(one('somersault', 'tilt', 'twist'), 'Which of the three.'),
      unit: angleUnit,
    }),
    v.strictObject({ kind: kind('ignored', 'Nothing is made of it.') }),
  ],
  'a meaning of kind "angle", "point", "quaternion", "matrix", "attitude" or "ignored"',
);

export const recordingMapSchema = v.strictObject({
  $schema: schemaLink,
  format: say(v.literal(MAP_FORMAT, `"${MAP_FORMAT}"`), 'Says what the file is.'),
  version: say(v.literal(MAP_VERSION, String(MAP_VERSION)), 'Version of this form.'),
  unitM: may(unit, "Metres in the recording's unit of length."),
  up: may(one('+x', '-x', '+y', '-y', '+z', '-z'), 'Axis of the recording that points up.'),
  joints: may(listOf(v.strictObject({ from, segment }), MAP_ENTRIES), 'Joints of a recorded skeleton.'),
  points: may(
    listOf(
      v.strictObject({
        from,
        segment,
        atM: may(
          triple(-3, 3, 'm'),
          'Where on the segment, in its frame: front, up, right; left out: found from the recording.',
        ),
        isFixed: may(v.boolean('true or false'), 'The place is exact, as of a joint centre.'),
      }),
      MAP_ENTRIES,
    ),
    'Markers and joint centres.',
  ),
  columns: may(listOf(v.strictObject({ from, means: say(means, 'What it is.') }), MAP_ENTRIES), 'Columns of a table.'),
});

export type RecordingMapFile = v.InferOutput<typeof recordingMapSchema>;

export const MAP_HEAD = { format: MAP_FORMAT, version: MAP_VERSION } as const;

/** A map file, checked. Throws a FieldError with path, value and what is allowed. */
export function checkMapFile(json: unknown): RecordingMapFile {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const { format } = json as Record<string, unknown>;
  if (format !== MAP_FORMAT) throw new FieldError('format', format, `"${MAP_FORMAT}"`);
  return check(recordingMapSchema, json, 'docs/recording.md');
}
