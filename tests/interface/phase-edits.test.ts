// Phases taken out on the ruler leave a chain that can be read, or stay.
import { expect, test } from 'vitest';
import { chains } from '../../presets/index.ts';
import { buildChain, checkSkillFile, parseChain, type SkillFile } from '../../sim/index.ts';
import { withoutPhase } from '../../src/features/air/phase-edits.ts';
import { shelf } from '../skill/load.ts';

const isFile = (file: SkillFile): boolean => {
  try {
    buildChain(parseChain(checkSkillFile(file), shelf));
    return true;
  } catch {
    return false;
  }
};
const kinds = (file: SkillFile | undefined) => file?.phases.map(({ kind }) => kind);
const chain = (id: string): SkillFile => structuredClone(chains[id]);
const before = { from: -1 };

test('a contact between two flights goes with the flight that it gives; the rest can be read', () => {
  const file = chain('vault-from-the-board');
  expect(kinds(file)).toEqual(['contact', 'flight', 'contact', 'flight', 'landing']);
  const less = withoutPhase(file, { kind: 'contact', leg: 1, ...before }, 0, () => true);
  expect(kinds(less)).toEqual(['contact', 'flight', 'landing']);
  // whether it goes is what a reader of files says
  expect(withoutPhase(file, { kind: 'contact', leg: 1, ...before }, 0, isFile) !== undefined).toBe(
    isFile(less as SkillFile),
  );
});

test('the landing of the last leg goes alone; a flight, and what gives the first, does not go so', () => {
  const file = chain('vault-from-the-board');
  expect(kinds(withoutPhase(file, { kind: 'landing', leg: 1, from: 2 }, 1, isFile))).toEqual([
    'contact',
    'flight',
    'contact',
    'flight',
  ]);
  expect(withoutPhase(file, { kind: 'flight', leg: 1, ...before }, 0, isFile)).toBeUndefined();
  expect(withoutPhase(file, { kind: 'contact', leg: 0, ...before }, 0, isFile)).toBeUndefined();
});

test('the swing after a catch is the catch’s own, and what cannot be read does not come of a deletion', () => {
  const file = chain('low-rail-half-turn-high-rail');
  expect(withoutPhase(file, { kind: 'swing', leg: 0, from: 0.6 }, 0, isFile)).toBeUndefined();
  for (const id of Object.keys(chains))
    chain(id).phases.forEach((_, leg) => {
      for (const kind of ['contact', 'landing', 'swing'] as const) {
        const less = withoutPhase(chain(id), { kind, leg, ...before }, 0, isFile);
        if (less) expect(isFile(less)).toBe(true);
      }
    });
});
