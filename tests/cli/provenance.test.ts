// Every output says where it is from: program, call, input by its hash, tolerance, seed; the same bytes twice.
import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import pkg from '../../package.json' with { type: 'json' };
import { athletes, shapes, skills } from '../../presets/index.ts';
import { checkSkillFile, digestOfSkill, VERSION } from '../../sim/index.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { formatFramesFile } from '../../src/engine/frames-file.ts';
import { makeFolder, run, still } from './run.ts';

const made = makeFolder({ 'still.json': still });
const id = 'back-tuck';
const file = checkSkillFile(skills[id]);
if (!('ref' in file.athlete)) throw new Error('no reference');
const athlete = athletes[file.athlete.ref];
const digest = digestOfSkill(file, athlete);

/** Names and values of the lines over a CSV. */
const head = (csv: string): Record<string, string> =>
  Object.fromEntries(
    csv
      .split('\n')
      .filter((line) => line.startsWith('#'))
      .map((line) => [line.slice(2, line.indexOf(':')), line.slice(line.indexOf(':') + 2)]),
  );

test('the version is that of the package', () => expect(VERSION).toBe(pkg.version));

test('the hash is of the canonical form: sorted names, no space, the athlete written in, nothing that changes no flight', () => {
  const sorted = (x: unknown): unknown =>
    Array.isArray(x)
      ? x.map(sorted)
      : typeof x === 'object' && x !== null
        ? Object.fromEntries(
            Object.keys(x)
              .sort()
              .map((k) => [k, sorted((x as Record<string, unknown>)[k])]),
          )
        : x;
  const byNode = (json: object) =>
    createHash('sha256')
      .update(JSON.stringify(sorted(json)))
      .digest('hex');
  expect(digest).toBe(byNode({ ...file, athlete }));
  const reversed = Object.fromEntries(Object.entries(file).reverse()) as typeof file;
  expect(digestOfSkill({ ...reversed, worksheets: [], recordings: [] }, athlete)).toBe(digest);
  expect(digestOfSkill({ ...file, title: 'Another' }, athlete)).not.toBe(digest);
  expect(digestOfSkill(file, { ...athlete, name: 'Another' })).not.toBe(digest);
});

describe('fly', () => {
  beforeAll(async () => {
    for (const n of ['1', '2'])
      await run('fly', id, '--frames', made.at(`${n}.csv`), '--summary', made.at(`${n}.json`), '--rate', '50');
  }, 60_000);

  test('writes the same bytes twice, whatever the names of its outputs', () => {
    expect(made.read('1.csv')).toBe(made.read('2.csv'));
    expect(made.read('1.json')).toBe(made.read('2.json'));
  });

  test('says program, call, input and tolerance', () => {
    expect(head(made.read('1.csv'))).toEqual({
      program: `Shapeflight ${pkg.version}`,
      call: 'shapeflight fly back-tuck --rate 50',
      input: `back-tuck, sha256 ${digest}, the ready skill back-tuck`,
      tolerance: '1e-10',
    });
    expect(JSON.parse(made.read('1.json')).provenance).toEqual({
      program: `Shapeflight ${pkg.version}`,
      call: 'shapeflight fly back-tuck',
      inputs: [{ name: id, sha256: digest, ready: { id, changed: false } }],
      tolerance: 1e-10,
      seed: null,
    });
  });

  test('knows a ready skill in a file, laid out otherwise, and one that was changed', async () => {
    const { writeFileSync } = await import('node:fs');
    writeFileSync(made.at('same.json'), JSON.stringify(skills[id]));
    writeFileSync(made.at('changed.json'), JSON.stringify({ ...skills[id], gravityMPerS2: 9.8 }));
    const inputOf = async (name: string): Promise<string> => {
      await run('fly', made.at(name), '--frames', made.at('x.csv'), '--rate', '5');
      return head(made.read('x.csv')).input;
    };
    expect(await inputOf('same.json')).toBe(`same.json, sha256 ${digest}, the ready skill back-tuck`);
    const changed = await inputOf('changed.json');
    expect(changed).toMatch(/^changed\.json, sha256 [0-9a-f]{64}, changed from the ready skill back-tuck$/);
    expect(changed).not.toContain(digest);
    expect(await inputOf('still.json')).toMatch(/^still\.json, sha256 [0-9a-f]{64}$/);
  });
});

test('the page writes the same hash of the same skill', () => {
  const engine = makeEngine({ athletes, shapes });
  const from = head(formatFramesFile(engine.fly(file)));
  expect(from).toMatchObject({ call: 'page: frames, 240 Hz', tolerance: '1e-10' });
  expect(from.input).toBe(`${file.title}, sha256 ${digest}, the ready skill back-tuck`);
});

test('samples, study and map say their seed and the tolerance of a study, and nothing of how the work was shared out', async () => {
  const given = ['margin', made.at('still.json'), '--seed', '7', '--no-bars', '--vary', 'takeoff.h.z=1'];
  await run(...given, '--samples', '4', '--csv', made.at('m.csv'), '--json', made.at('m.json'));
  const call = 'shapeflight margin still.json --seed 7 --vary takeoff.h.z=1 --no-bars';
  expect(head(made.read('m.csv'))).toMatchObject({ call, tolerance: '3e-10', seed: '7' });
  expect(JSON.parse(made.read('m.json')).provenance).toMatchObject({ call, tolerance: 3e-10, seed: 7 });
  const axes = ['--x', 'takeoff.h.z=50..70', '--y=takeoff.tilt=-2..2', '--grid', '2x2'];
  await run('map', made.at('still.json'), ...axes, '--csv', made.at('map.csv'), '--json', made.at('map.json'));
  const { provenance } = JSON.parse(made.read('map.json'));
  expect(provenance.call).toBe('shapeflight map still.json --x takeoff.h.z=50..70 --y takeoff.tilt=-2..2 --grid 2x2');
  expect(head(made.read('map.csv'))).toMatchObject({ call: provenance.call });
});

test('body, sheet and chain say it in their own form', async () => {
  await run('body', id, '--mjcf', made.at('b.xml'));
  expect(made.read('b.xml')).toContain(`<text name="input" data="back-tuck, sha256 ${digest}, the ready skill`);
  await run('sheet', 'energy-of-spin', '--skill', id, '--csv', made.at('s.csv'), '--page', made.at('s.html'));
  expect(made.read('s.csv')).toContain(`# input: back-tuck, sha256 ${digest}`);
  expect(made.read('s.html')).toContain(`input back-tuck, sha256 ${digest}, the ready skill back-tuck`);
  await run('fly', 'vault-handspring-half', '--summary', made.at('c.json'));
  expect(JSON.parse(made.read('c.json')).provenance.inputs[0].ready).toEqual({
    id: 'vault-handspring-half',
    changed: false,
  });
});

test('a text that would end its line or its element does neither', async () => {
  const { provenance, provenanceCsv, provenanceSvg } = await import('../../sim/index.ts');
  const from = provenance({
    call: 'a\nb',
    inputs: [{ name: '<"&>\r\n# x', sha256: digest, ready: null }],
    tolerance: null,
    seed: 3,
  });
  expect(provenanceCsv(from).split('\n')).toHaveLength(5);
  expect(provenanceSvg(from)).toMatch(/^<metadata>[^<>"]*<\/metadata>$/);
});
