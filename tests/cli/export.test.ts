/** The command "export": a version 1 file that is the original but for the take-off as launched, or an error that names what it cannot say. */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillFile, SkillFile1 } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

const frozen = path.resolve(import.meta.dirname, '../golden/v1/skills');
const textOf = (id: string): string => readFileSync(path.join(frozen, `${id}.json`), 'utf8');

const own = structuredClone(skills['back-tuck']) as SkillFile;
const human = { kind: 'human', name: 'Tove Ekdahl', sex: 'female', massKg: 51, statureM: 1.58 };
const { folder, at, read } = makeFolder({
  'film.json': { ...own, recordings: [{ title: 'From the side', kind: 'film' }] },
  'sheets.json': {
    ...own,
    worksheets: [
      { title: 'A', lines: [] },
      { title: 'B', lines: [] },
    ],
  },
  'young.json': { ...human, ageYears: 12 },
  'by-ref.json': { ...own, athlete: { ref: 'young.json' } },
  'age.json': { ...own, athlete: { ...human, ageYears: 12 } },
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The summary that `fly` writes of a skill. */
const flownOf = async (skill: string, name: string): Promise<unknown> => {
  const { code, err } = await run('fly', skill, '--summary', at(name));
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(read(name));
};

describe.each(['back-tuck', 'made-own-shapes', 'floor-double-tuck'])('%s, which states its take-off', (id) => {
  it('is written as version 1, the very file it was, and flies the same', async () => {
    const out = at(`${id}.json`);
    const said = await run('export', path.join(frozen, `${id}.json`), '--as', '1', '--out', out);
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(said.out).toContain('written as version 1');
    expect(said.out).toContain('not coaching advice');
    expect(JSON.parse(readFileSync(out, 'utf8'))).toEqual(JSON.parse(textOf(id)));
    expect(await flownOf(out, `${id}-a.json`)).toEqual(await flownOf(path.join(frozen, `${id}.json`), `${id}-b.json`));
  });
});

describe.each(['giant-double-straight', 'vault-handspring-half', 'made-contact-given'])(
  '%s, launched by what comes before',
  (id) => {
    it('is the file it was but for the take-off, and flies the same', async () => {
      const out = at(`${id}.json`);
      expect(await run('export', path.join(frozen, `${id}.json`), '--as', '1', '--out', out)).toMatchObject({
        code: 0,
      });
      const { takeoff, ...rest } = JSON.parse(readFileSync(out, 'utf8')) as SkillFile1;
      const { takeoff: _, ...before } = JSON.parse(textOf(id)) as SkillFile1;
      expect(rest).toEqual(before);
      expect(takeoff.momentum).toHaveProperty('vectorKgM2PerS');
      expect(await flownOf(out, `${id}-a.json`)).toEqual(
        await flownOf(path.join(frozen, `${id}.json`), `${id}-b.json`),
      );
    });
  },
);

describe('what version 1 cannot say', () => {
  it.each([
    ['film.json', /^shapeflight: recordings: /],
    ['sheets.json', /^shapeflight: worksheets: /],
    ['age.json', /^shapeflight: athlete\.ageYears: /],
    ['by-ref.json', /^shapeflight: athlete\.ref "young\.json": ageYears: 12 is not possible/],
  ])('%s is refused by name, and nothing is written', async (file, words) => {
    const out = at(`out-${file}`);
    const said = await run('export', at(file), '--as', '1', '--out', out);
    expect(said.code).toBe(2);
    expect(said.out).toBe('');
    expect(said.err).toMatch(words);
    expect(said.err).not.toContain('undefined');
    expect(existsSync(out)).toBe(false);
  });
});

it.each([
  [['export', 'back-tuck', '--out', 'x.json'], /--as is missing/],
  [['export', 'back-tuck', '--as', '2', '--out', 'x.json'], /--as "2" is not possible; allowed: 1/],
  [['export', 'back-tuck', '--as', '1'], /--out OUT\.json is missing/],
])('%j is refused in one line', async (argv, words) => {
  const said = await run(...argv);
  expect(said).toMatchObject({ code: 2, out: '' });
  expect(said.err).toMatch(words);
  expect(said.err.trimEnd()).not.toContain('\n');
});
