/** The athlete's fields on the page: height, mass, age. */
import { describe, expect, test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { type Athlete, checkSkillFile, makeHuman, readAthlete, type SkillFile } from '../../sim/index.ts';
import { getFields } from '../../src/document/fields.ts';
import { fileOf } from '../skill/load.ts';

const file = checkSkillFile(fileOf('back-straight'));
const woman: Athlete = athletes['ilse-marrow'];
const ageOf = (athlete: Athlete) => {
  const field = getFields(file, athlete).find((f) => f.id === 'age');
  if (!field) throw new Error('no age');
  return field;
};
const bodyOf = ({ athlete }: SkillFile) => {
  const spec = readAthlete(athlete);
  if (spec.kind !== 'human') throw new Error('no human');
  return makeHuman(spec.human);
};

describe('age', () => {
  test('an athlete without one is an adult, and the field says so', () => {
    const field = ageOf(woman);
    expect(field.value).toBe(18);
    expect(field.label).toBe('Age, not stated: adult');
  });

  test('typed it goes into the document, and below 18 it changes the masses of segments', () => {
    const changed = ageOf(woman).write(file, 12);
    expect(changed.athlete).toMatchObject({ name: 'Ilse Marrow', ageYears: 12 });
    const [grown, young] = [bodyOf(ageOf(woman).write(file, 18)), bodyOf(changed)];
    const head = (body: typeof grown): number => body.segments.find((s) => s.name === 'head')?.mass ?? 0;
    expect(head(young)).toBeGreaterThan(1.3 * head(grown));
    expect(young.notes?.length).toBe(3);
    expect(grown.notes).toMatchObject([expect.stringMatching(/^Two body models meet/)]);
    if ('ref' in changed.athlete) throw new Error('by name');
    expect(ageOf(changed.athlete).label).toBe('Age');
  });
});
