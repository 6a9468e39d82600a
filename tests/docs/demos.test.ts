// The page of ready skills before and after says of each what is said of it now, of a chain of its last flight.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { wordVerdict } from '../../sim/index.ts';
import { judgeFlight } from '../../sim/skill/judge-flight.ts';
import { flownOf } from '../presets/flown.ts';

const rows = [...readFileSync('docs/demos.md', 'utf8').matchAll(/^\| `([\w-]+)` \|.*\| ([^|]+) \|$/gm)].map(
  ([, id, now]) => [id, now.replace(/ \(not changed\)$/, '')] as const,
);

test('it has a row for each that changed, and more', () => expect(rows.length).toBeGreaterThan(12));

test.each(rows)('%s', (id, now) => {
  const { legs } = flownOf(id);
  const { skill, flight } = legs[legs.length - 1].whole;
  expect(wordVerdict(judgeFlight(skill, flight, contact))).toBe(now);
});
