// docs/skill-file.md tells every field, and its examples are files that fly.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { formatJsonSchema } from '../../sim/files/json-schema.ts';
import { parseAthlete } from '../../sim/files/parse-athlete.ts';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import { flySkill } from '../../sim/index.ts';
import { launchedOf } from '../skill/load.ts';
import { emptyShelf } from './sample-skill.ts';

const docs = readFileSync(path.resolve(import.meta.dirname, '../../docs/skill-file.md'), 'utf8');
const examples = [...docs.matchAll(/```json\n([\s\S]*?)```/g)].map((m) => JSON.parse(m[1]));

function fieldsOf(schema: unknown, found = new Set<string>()): Set<string> {
  if (typeof schema !== 'object' || schema === null) return found;
  for (const [key, inner] of Object.entries(schema)) {
    if (key === 'properties') for (const name of Object.keys(inner as object)) found.add(name);
    fieldsOf(inner, found);
  }
  return found;
}

test('every field of the schema is described', () => {
  const fields = [...fieldsOf(JSON.parse(formatJsonSchema('skill-file')))];
  expect(fields.length).toBeGreaterThan(60);
  expect(fields.filter((name) => !docs.includes(`\`${name}\``) && !docs.includes(`"${name}"`))).toEqual([]);
});

test('the example skill flies', () => {
  const flight = flySkill(launchedOf(parseSkill(examples[0], emptyShelf)));
  expect(flight.touchdown?.part).toBe('feet');
});

test('the example athlete is one', () => {
  expect(parseAthlete(examples[1]).name).toBe('Example');
});
