// What is written reads back the same; what comes from elsewhere never does harm.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkSkillFile, formatSkill } from '../../sim/files/check-skill.ts';
import { parseAthlete } from '../../sim/files/parse-athlete.ts';
import { parseJson } from '../../sim/files/parse-json.ts';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import type { SkillFile } from '../../sim/files/skill-schema.ts';
import { FieldError } from '../../sim/math/field-error.ts';
import { launchedOf } from '../skill/load.ts';
import { emptyShelf, sampleSkill } from './sample-skill.ts';

const SEED = 20261125;
const RAD = Math.PI / 180;

test('a skill written and read is the same skill, and writing is stable', () => {
  const text = formatSkill(sampleSkill);
  const read = checkSkillFile(parseJson(text));
  expect(read).toEqual(sampleSkill);
  expect(formatSkill(read)).toBe(text);
});

test('a byte order mark before the JSON does no harm', () => {
  expect(parseJson(`\uFEFF${formatSkill(sampleSkill)}`)).toEqual(sampleSkill);
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const time = fc.record({ anchor: fc.constantFrom('takeoff', 'apex', 'touchdown'), s: number(-60, 60) });
const skills = fc.record({
  format: fc.constant('shapeflight-skill' as const),
  version: fc.constant(2 as const),
  title: fc.string({ maxLength: 200 }),
  athlete: fc.record({
    kind: fc.constant('human' as const),
    name: fc.string({ minLength: 1, maxLength: 80 }),
    sex: fc.constantFrom('female' as const, 'male' as const),
    massKg: number(10, 250),
    statureM: number(0.8, 2.5),
  }),
  phases: fc.tuple(
    fc.record({
      kind: fc.constant('flight' as const),
      takeoff: fc.record({
        massCentreHeightM: number(-20, 50),
        velocityMPerS: fc.record({ along: number(-15, 15), up: number(-20, 20) }),
        momentum: fc.oneof(
          fc.record({ straightSomersaults: number(-20, 20) }),
          fc.record({ vectorKgM2PerS: fc.tuple(number(-1e5, 1e5), number(-1e5, 1e5), number(-1e5, 1e5)) }),
          fc.record({ ratesRevPerS: fc.record({ somersault: number(-20, 20), twist: number(-20, 20) }) }),
        ),
      }),
      end: fc.record({ durationS: number(0.02, 60) }),
      schedule: fc.record({
        keys: fc.array(
          fc.record({
            angle: fc.constantFrom('hipFlexion', 'kneeFlexionL', 'neckTurn'),
            at: time,
            deg: number(-720, 720),
          }),
          { maxLength: 5 },
        ),
      }),
    }),
  ),
});

test('any skill within the ranges is read, and read the same after writing', () => {
  fc.assert(
    fc.property(skills, (skill) => {
      const json = parseJson(formatSkill(skill as SkillFile));
      expect(checkSkillFile(json)).toEqual(JSON.parse(JSON.stringify(skill)));
      const spec = parseSkill(json, emptyShelf);
      spec.keys.forEach((k, i) => {
        expect(k.value).toBe(JSON.parse(JSON.stringify(skill.phases[0].schedule.keys[i].deg)) * RAD);
      });
    }),
    { seed: SEED, numRuns: 300 },
  );
});

/** Only a FieldError, and one whose message is one line of bearable length. */
function onlyFieldError(work: () => unknown): void {
  try {
    work();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    expect(error.message.length).toBeLessThan(2500);
    expect(error.message).not.toMatch(/[\n\r]/);
  }
}

test('any JSON at all is read or refused with a FieldError', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), (json) => {
      onlyFieldError(() => launchedOf(parseSkill(json, emptyShelf)));
      onlyFieldError(() => parseAthlete(json));
    }),
    { seed: SEED, numRuns: 500 },
  );
});

test('a real skill with any one value replaced by anything is read or refused with a FieldError', () => {
  const paths: (string | number)[][] = [];
  const walk = (value: unknown, path: (string | number)[]): void => {
    if (path.length > 0) paths.push(path);
    if (typeof value !== 'object' || value === null) return;
    for (const key of Object.keys(value)) walk((value as Record<string, unknown>)[key], [...path, key]);
  };
  walk(sampleSkill, []);
  const anything = fc.oneof(fc.jsonValue({ maxDepth: 3 }), fc.double(), fc.constant(undefined));
  fc.assert(
    fc.property(fc.constantFrom(...paths), anything, (path, value) => {
      const json = structuredClone(sampleSkill) as unknown as Record<string | number, unknown>;
      let at = json;
      for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
      at[path[path.length - 1]] = value;
      onlyFieldError(() => launchedOf(parseSkill(json, emptyShelf)));
    }),
    { seed: SEED, numRuns: 1000 },
  );
});

test('any text is JSON or refused with its line and column', () => {
  const text = JSON.stringify(sampleSkill);
  const broken = fc.record({ at: fc.nat(text.length), cut: fc.nat(3), put: fc.string({ maxLength: 3 }) });
  fc.assert(
    fc.property(fc.oneof(fc.string(), broken), (made) => {
      const tried =
        typeof made === 'string' ? made : text.slice(0, made.at) + made.put + text.slice(made.at + made.cut);
      let fault: unknown;
      try {
        parseJson(tried);
      } catch (error) {
        fault = error;
      }
      if (fault !== undefined) expect((fault as FieldError).message).toMatch(/line \d+, column \d+ on/);
    }),
    { seed: SEED, numRuns: 1000 },
  );
});
