// The published schema is the one that parsing uses. `npm run schema` writes it anew.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { formatJsonSchema } from '../../sim/files/json-schema.ts';

const file = path.resolve(import.meta.dirname, '../../docs/skill-file.schema.json');

test('docs/skill-file.schema.json is current', () => {
  const now = formatJsonSchema();
  if (import.meta.env.MODE === 'schema') writeFileSync(file, now);
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(now));
});

test('it refuses unknown fields and says the ranges', () => {
  const schema = JSON.parse(formatJsonSchema());
  expect(schema.additionalProperties).toBe(false);
  expect(schema.properties.format.const).toBe('shapeflight-skill');
  expect(schema.properties.takeoff.additionalProperties).toBe(false);
  expect(schema.properties.takeoff.properties.velocityMPerS.properties.up).toMatchObject({ minimum: -20, maximum: 20 });
  expect(schema.properties.schedule.properties.keys.maxItems).toBe(10000);
});
