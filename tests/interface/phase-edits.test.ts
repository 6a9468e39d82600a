// Phases taken out on the ruler leave a chain that can be read.
import { expect, test } from 'vitest';
import { chains } from '../../presets/index.ts';
import { checkSkillFile, type SkillFile } from '../../sim/index.ts';
import { withoutPhase } from '../../src/features/air/phase-edits.ts';
import type { LegResult } from '../../src/jobs/kinds/leg-data.ts';

const kinds = (file: SkillFile | undefined) => file?.phases.map(({ kind }) => kind);
const of = (n: number) => ({ legs: Array.from({ length: n }, () => ({}) as LegResult) });

test('a contact between two flights goes with the flight that it gives; the rest can be read', () => {
  const file = structuredClone(chains['vault-from-the-board']);
  expect(kinds(file)).toEqual(['contact', 'flight', 'contact', 'flight', 'landing']);
  const less = withoutPhase(file, of(2), { kind: 'contact', leg: 1 });
  expect(kinds(less)).toEqual(['contact', 'flight', 'landing']);
  expect(() => checkSkillFile(less)).not.toThrow();
});

test('the landing of the last leg goes alone; a flight, and what gives the first, does not go so', () => {
  const file = structuredClone(chains['vault-from-the-board']);
  expect(kinds(withoutPhase(file, of(2), { kind: 'landing', leg: 1 }))).toEqual([
    'contact',
    'flight',
    'contact',
    'flight',
  ]);
  expect(withoutPhase(file, of(2), { kind: 'flight', leg: 1 })).toBeUndefined();
  expect(withoutPhase(file, of(2), { kind: 'contact', leg: 0 })).toBeUndefined();
});
