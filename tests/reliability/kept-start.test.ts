// A kept document may lack anything: the page starts all the same, and the reader says which field is missing.
import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { makeEngine } from '../../src/engine/engine.ts';

const far = {
  ask: () => {
    throw new Error('asked of a worker');
  },
  read: () => {
    throw new Error('read by a worker');
  },
};
const skill = skills['back-straight'] as SkillFile;
const [flight] = skill.phases.filter(({ kind }) => kind === 'flight');

test.each<[string, object, string]>([
  ['no athlete', { athlete: undefined }, 'athlete'],
  ['no schedule', { phases: [{ ...flight, schedule: undefined }] }, 'phases[0].schedule'],
  ['samples that are nothing', { phases: [{ ...flight, schedule: { samples: null } }] }, 'phases[0].schedule.samples'],
  ['no end', { phases: [{ ...flight, end: undefined }] }, 'phases[0].end'],
])('%s', async (_, change, field) => {
  const engine = makeEngine({ athletes, shapes }, undefined, far);
  const doc = { ...skill, ...change } as SkillFile;
  await engine.ready(doc);
  expect(() => engine.fly(doc)).toThrow(expect.objectContaining({ name: 'FieldError', field }));
});
