// The published schemas are those that parsing uses, and each field says what it means. `npm run schema` writes them.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { formatJsonSchema, PUBLISHED } from '../../sim/files/json-schema.ts';

const names = Object.keys(PUBLISHED) as (keyof typeof PUBLISHED)[];
const fileOf = (name: string): string => path.resolve(import.meta.dirname, `../../docs/${name}.schema.json`);

interface Node {
  readonly properties?: Record<string, Node>;
  readonly description?: string;
  readonly const?: unknown;
}

/** Fields without a description, by path; a "kind" or "criterion" of one value says itself. */
function listSilent(node: unknown, at = ''): string[] {
  if (typeof node !== 'object' || node === null) return [];
  const { properties } = node as Node;
  const own = Object.entries(properties ?? {}).flatMap(([name, field]) =>
    field.description || field.const !== undefined ? [] : [`${at}.${name}`],
  );
  const inner = Object.entries(node).flatMap(([name, one]) => listSilent(one, `${at}.${name}`));
  return [...own, ...inner];
}

describe.each(names)('%s', (name) => {
  test('docs hold the current schema', () => {
    const now = formatJsonSchema(name);
    if (import.meta.env.MODE === 'schema') writeFileSync(fileOf(name), now);
    expect(JSON.parse(readFileSync(fileOf(name), 'utf8'))).toEqual(JSON.parse(now));
  });

  test('every field has a description', () => {
    expect(listSilent(JSON.parse(formatJsonSchema(name)))).toEqual([]);
  });

  test('it refuses unknown fields and takes $schema', () => {
    const schema = JSON.parse(formatJsonSchema(name));
    expect(schema.additionalProperties).toBe(false);
    expect(schema.properties.$schema.type).toBe('string');
  });
});

test('a skill says the ranges', () => {
  const schema = JSON.parse(formatJsonSchema('skill-file'));
  expect(schema.properties.format.const).toBe('shapeflight-skill');
  const flight = schema.properties.phases.items.oneOf.find(
    (one: { properties: Record<string, Node> }) => one.properties.kind.const === 'flight',
  );
  const { takeoff, schedule } = flight.properties;
  expect(takeoff.additionalProperties).toBe(false);
  expect(takeoff.properties.velocityMPerS.properties.up).toMatchObject({ minimum: -20, maximum: 20 });
  expect(schedule.properties.keys.maxItems).toBe(10000);
});
