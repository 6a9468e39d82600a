// From version 1 to 2 and back: what is dropped, what is kept, and what an export says.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import * as contact from '../../sim/contact/index.ts';
import {
  afterOf,
  athleteOf,
  beforeOf,
  buildSkill,
  checkSkillFile,
  exportVersion1,
  flightOf,
  formatSkill,
  launch,
  parseAthlete,
  parseJson,
  parseSheet,
  parseSkill,
  type SkillFile,
  type SkillFile1,
} from '../../sim/index.ts';

const root = path.join(import.meta.dirname, 'v1');
const idsIn = (folder: string): string[] => readdirSync(path.join(root, folder)).map((f) => f.replace(/\.json$/, ''));
const textOf = (folder: string, id: string): string => readFileSync(path.join(root, folder, `${id}.json`), 'utf8');
const fileOf = (id: string): SkillFile1 => JSON.parse(textOf('skills', id));
const shelf = { athletes, shapes };
const launched = (file: SkillFile) => launch(buildSkill(parseSkill(file, shelf)), contact).takeoff;

describe.each(idsIn('skills'))('%s', (id) => {
  const old = fileOf(id);
  const file = checkSkillFile(parseJson(textOf('skills', id)));

  test('each part is where version 2 has it, word for word', () => {
    expect(file.version).toBe(2);
    for (const name of ['title', 'note', 'athlete', 'gravityMPerS2', 'shapes', 'target'] as const)
      expect(file[name]).toEqual(old[name]);
    expect(flightOf(file).schedule).toEqual(old.schedule);
    expect(flightOf(file).end).toEqual(old.end);
    expect(beforeOf(file)).toEqual(old.approach);
    expect(afterOf(file)).toEqual(old.arrival && { kind: 'landing', ...old.arrival });
    expect(file.worksheets).toEqual(old.sheet && [old.sheet]);
  });

  test('the take-off is stated only as far as nothing gives it', () => {
    const { takeoff } = flightOf(file);
    if (old.approach?.kind === 'swing') expect(takeoff).toBeUndefined();
    else if (old.approach?.given) {
      const { velocityMPerS: _, momentum: __, ...place } = old.takeoff;
      expect(takeoff).toEqual(place);
    } else expect(takeoff).toEqual(old.takeoff);
  });

  test('what is migrated reads back the same, and an export is the file again but for the take-off that is launched', () => {
    expect(checkSkillFile(parseJson(formatSkill(file)))).toEqual(file);
    const back = exportVersion1(file, launched(file), athleteOf(file, shelf));
    const { takeoff: _, ...rest } = back;
    const { takeoff: __, ...oldRest } = old;
    expect(rest).toEqual(oldRest);
    if (!old.approach || (old.approach.kind === 'contact' && !old.approach.given))
      expect(back.takeoff).toEqual(old.takeoff);
    expect(checkSkillFile(JSON.parse(formatSkill(back)))).toEqual(file);
  });
});

test('the launched take-off that an export writes flies as the swing does, to what is carried in the joints', () => {
  const file = checkSkillFile(fileOf('giant-double-straight'));
  const takeoff = launched(file);
  const { takeoff: written } = exportVersion1(file, takeoff, athleteOf(file, shelf));
  expect(written.massCentreHeightM).toBeCloseTo(takeoff.height.y, 8);
  expect(written.velocityMPerS.up).toBeCloseTo(takeoff.v_WScm_W[1], 8);
  expect(written.momentum).toEqual({
    vectorKgM2PerS: [0, 0, expect.closeTo(takeoff.momentum.kind === 'vector' ? takeoff.momentum.h_Scm_W[2] : 0, 8)],
  });
});

describe('what version 1 cannot say is named', () => {
  const file = checkSkillFile(fileOf('made-own-shapes'));
  const sheet = { title: 'A', lines: [] };
  const human = { ...(file.athlete as object), ageYears: 12 } as SkillFile['athlete'];
  test.each<[string, Partial<SkillFile>]>([
    ['recordings', { recordings: [{ title: 'A', kind: 'film' }] }],
    ['worksheets', { worksheets: [sheet, sheet] }],
    ['athlete.ageYears', { athlete: human }],
  ])('%s', (field, part) => {
    expect(() => exportVersion1({ ...file, ...part }, launched(file), athleteOf({ ...file, ...part }, shelf))).toThrow(
      new RegExp(`^${field}: `),
    );
  });

  test('a field of version 2 in a version 1 file is refused', () => {
    expect(() => checkSkillFile({ ...fileOf('made-own-shapes'), athlete: human })).toThrow(/^athlete\.ageYears: /);
    expect(() => checkSkillFile({ ...fileOf('back-tuck'), phases: [] })).toThrow(/^phases: /);
    expect(() => checkSkillFile({ ...fileOf('back-tuck'), $schema: 'x' })).toThrow(/^\$schema|\["\$schema"\]/);
  });

  test('a version 1 file is checked as one: its faults have its paths', () => {
    const old = fileOf('giant-double-straight');
    old.takeoff.velocityMPerS.up = 99;
    expect(() => checkSkillFile(old)).toThrow(/^takeoff\.velocityMPerS\.up: 99/);
  });
});

test.each(idsIn('athletes'))('athlete %s is read as before', (id) => {
  expect(parseAthlete(parseJson(textOf('athletes', id)))).toEqual(JSON.parse(textOf('athletes', id)).athlete);
});

test.each(idsIn('sheets'))('sheet %s is read as before', (id) => {
  expect(parseSheet(parseJson(textOf('sheets', id)))).toEqual(JSON.parse(textOf('sheets', id)));
});
