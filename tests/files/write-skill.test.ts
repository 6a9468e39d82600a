// One codec: a spec written as a file reads back as it was, and what a search did not change stays as it is written.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkSkillFile } from '../../sim/files/check-skill.ts';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import { updateSkill, writeSkill } from '../../sim/files/write-skill.ts';
import { flightOf, type SkillFile, type SkillSpec } from '../../sim/index.ts';
import { shelf } from '../skill/load.ts';
import { swingIn } from './parts.ts';

const root = path.resolve(import.meta.dirname, '../golden/v1/skills');
const ids = readdirSync(root).map((file) => file.replace(/\.json$/, ''));
const fileOf = (id: string): SkillFile =>
  checkSkillFile(JSON.parse(readFileSync(path.join(root, `${id}.json`), 'utf8')));

/** rad, m, s and their like; a file holds nine digits behind the point, of degrees too. Measured: 4e-10. */
const WRITTEN = 1e-9;

function largestGap(a: unknown, b: unknown, at = ''): number {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b);
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null) {
    expect(a, at).toBe(b);
    return 0;
  }
  expect(Object.keys(a).sort(), at).toEqual(Object.keys(b).sort());
  return Math.max(
    0,
    ...Object.entries(a).map(([k, v]) => largestGap(v, (b as Record<string, unknown>)[k], `${at}.${k}`)),
  );
}

describe.each(ids)('%s', (id) => {
  const file = fileOf(id);
  const spec = parseSkill(file, shelf);

  test('its spec, written and read, is the same to what a file holds', () => {
    const written = writeSkill(spec, { athlete: file.athlete, base: flightOf(file).schedule.base });
    // a shape of the file keeps its angles; its words are of the file alone
    const read = parseSkill(JSON.parse(JSON.stringify(checkSkillFile(written))), shelf);
    expect(largestGap(read, spec)).toBeLessThan(WRITTEN);
  });

  test('nothing changed leaves the file as it is, also its order and its words', () => {
    expect(JSON.stringify(updateSkill(file, spec, spec))).toBe(JSON.stringify(file));
    // every number came once through another spec
    expect(JSON.stringify(updateSkill(file, structuredClone(spec), structuredClone(spec)))).toBe(JSON.stringify(file));
  });

  test('gravity alone changed changes gravity alone', () => {
    const { gravityMPerS2: _, ...rest } = updateSkill(file, spec, { ...spec, gravity: 3.7 });
    const { gravityMPerS2: __, ...own } = file;
    expect(rest).toEqual(own);
    expect(updateSkill(file, spec, { ...spec, gravity: 3.7 }).gravityMPerS2).toBe(3.7);
  });
});

describe('values that a search changes', () => {
  const swing = (change: (start: Extract<SkillSpec['start'], { kind: 'swing' }>) => SkillSpec['start']) => {
    const file = fileOf('made-swing-late-both');
    const spec = parseSkill(file, shelf);
    if (spec.start.kind !== 'swing') throw new Error('no swing');
    const out = updateSkill(file, spec, { ...spec, start: change(spec.start) });
    checkSkillFile(JSON.parse(JSON.stringify(out)));
    return { file, out };
  };

  test('release, lateness and late hand of a swing, each alone', () => {
    const { file, out } = swing(({ kind, swing: s }) => ({
      kind,
      swing: { ...s, release: { at: 'angle', angle: 7.5 }, late: 0.0123456789, lateHand: { hand: 'left', s: 1e-7 } },
    }));
    expect(out.phases.slice(1)).toEqual(file.phases.slice(1));
    expect(swingIn(out)).toEqual({
      ...swingIn(file),
      release: { atDeg: 429.718346348 },
      releaseLateS: 0.012345679,
      lateHand: { hand: 'left', lateS: 1e-7 },
    });
  });

  test('a lateness of nothing and no late hand are left out', () => {
    const { out } = swing(({ kind, swing: { lateHand: _, ...s } }) => ({ kind, swing: { ...s, late: 0 } }));
    expect(swingIn(out)).not.toHaveProperty('releaseLateS');
    expect(swingIn(out)).not.toHaveProperty('lateHand');
  });

  test('one key of a swing whose file mixes the joints goes to its own place', () => {
    const file = fileOf('made-swing-over-time');
    const own = swingIn(file);
    const [first, ...others] = own.moves.keys;
    const mixed: SkillFile = {
      ...file,
      phases: [
        { ...own, moves: { ...own.moves, keys: [others[2], first, ...others.filter((_, i) => i !== 2)] } },
        ...file.phases.slice(1),
      ],
    };
    const spec = parseSkill(mixed, shelf);
    if (spec.start.kind !== 'swing') throw new Error('no swing');
    const { moves } = spec.start.swing;
    const hip = (moves.keys.hip ?? []).map((key, i) => (i === 1 ? { ...key, value: -0.3 } : key));
    const start = { ...spec.start, swing: { ...spec.start.swing, moves: { ...moves, keys: { ...moves.keys, hip } } } };
    const out = swingIn(updateSkill(mixed, spec, { ...spec, start }));
    const changed = out.moves.keys.filter((key, i) => key !== swingIn(mixed).moves.keys[i]);
    expect(changed).toEqual([{ joint: 'hip', atS: 0.55, deg: -17.188733854, kind: 'pass' }]);
  });

  test('push, lean, place and free turn of a contact, and its time where the file left it out', () => {
    const file = fileOf('vault-handspring-half');
    const spec = parseSkill(file, shelf);
    if (spec.start.kind !== 'contact') throw new Error('no contact');
    const { contact } = spec.start;
    const given = { ...contact.given, bodyWeights: 2.4, place: { x: 0.5, z: 0 }, freeTurn: 0 };
    const out = updateSkill(file, spec, {
      ...spec,
      start: { ...spec.start, contact: { ...contact, friction: 0.7, h_Scm_W: [0, 0, -48], given } },
    });
    const [before, flight] = out.phases;
    expect(before).toEqual({
      ...file.phases[0],
      frictionCoefficient: 0.7,
      momentumKgM2PerS: [0, 0, -48],
      given: { meanBodyWeights: 2.4, leanDeg: -26, placeM: { along: 0.5 } },
    });
    expect(flight).toEqual(file.phases[1]);
  });

  test('another way to say the momentum takes the place of the old one', () => {
    const file = fileOf('back-tuck');
    const spec = parseSkill(file, shelf);
    if (spec.start.kind !== 'stated') throw new Error('no take-off');
    const takeoff = { ...spec.start.takeoff, momentum: { kind: 'vector', h_Scm_W: [0, 0, 17] } } as const;
    const out = updateSkill(file, spec, { ...spec, start: { ...spec.start, takeoff } });
    expect(flightOf(out).takeoff).toEqual({ ...flightOf(file).takeoff, momentum: { vectorKgM2PerS: [0, 0, 17] } });
  });

  test('a changed athlete of the shelf is written in; one written in keeps club and age', () => {
    const change = (file: SkillFile): SkillFile['athlete'] => {
      const spec = parseSkill(file, shelf);
      if (spec.athlete.kind !== 'human') throw new Error('no human');
      return updateSkill(file, spec, {
        ...spec,
        athlete: { ...spec.athlete, human: { ...spec.athlete.human, stature: 1.7 } },
      }).athlete;
    };
    expect(change(fileOf('back-tuck'))).toMatchObject({ kind: 'human', name: 'Nell Oakum (11)', statureM: 1.7 });
    const file = fileOf('made-own-shapes');
    const athlete = { ...(file.athlete as object), ageYears: 12 } as SkillFile['athlete'];
    expect(change({ ...file, athlete })).toEqual({ ...athlete, statureM: 1.7 });
  });

  test('what this build only keeps is kept word for word', () => {
    const kept = {
      $schema: './skill-file.schema.json',
      worksheets: [
        { title: 'A', lines: ['a = 1'] },
        { title: 'B', lines: [] },
      ],
      recordings: [{ title: 'F', kind: 'capture' as const, data: { any: [1, { thing: null }] } }],
    };
    const file = checkSkillFile(JSON.parse(JSON.stringify({ ...fileOf('back-tuck'), ...kept })));
    expect(file).toMatchObject(kept);
    const spec = parseSkill(file, shelf);
    expect(updateSkill(file, spec, { ...spec, gravity: 5 })).toMatchObject(kept);
  });
});
