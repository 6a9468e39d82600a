/** The published JSON Schema of skill files (docs/skill-file.schema.json), made from the schema that parsing uses. */
import { toJsonSchema } from '@valibot/to-json-schema';
import { skillSchema } from './skill-schema.ts';

/** Where the meaning goes beyond what JSON Schema says, docs/skill-file.md holds. */
export function formatJsonSchema(): string {
  const schema = toJsonSchema(skillSchema, { errorMode: 'throw', typeMode: 'input' });
  const { $schema, ...rest } = schema;
  // parsing asks for exactly one height by hand, to say so in words
  const takeoff = rest.properties?.takeoff;
  if (typeof takeoff !== 'object') throw new RangeError('the schema has no take-off');
  takeoff.oneOf = [{ required: ['massCentreHeightM'] }, { required: ['lowestPointHeightM'] }];
  const file = {
    $schema,
    title: 'Shapeflight skill file',
    description: 'A skill in flight: athlete, take-off, schedule of the joints, end. Every field: docs/skill-file.md.',
    ...rest,
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}
