// Tables of numbers alone: one line of names, then numbers in every cell, the same as in the tables with words.
import { expect, test } from 'vitest';
import { makeFolder, run, still } from './run.ts';

const made = makeFolder({ 'still.json': still });

/** One line of names without a quote or space, each once; every cell a number or NaN. */
function check(text: string): { names: string[]; rows: string[][] } {
  const [head, ...lines] = text.trimEnd().split('\n');
  const names = head.split(',');
  expect(head).toMatch(/^[A-Za-z]\S*$/);
  expect(text).not.toMatch(/["#]/);
  expect(new Set(names).size).toBe(names.length);
  const rows = lines.map((line) => line.split(','));
  for (const row of rows) {
    expect(row).toHaveLength(names.length);
    for (const cell of row) expect(cell).toMatch(/^(NaN|-?\d+(\.\d+)?(e[+-]\d+)?)$/);
  }
  return { names, rows };
}

test('frames and segments', async () => {
  // leans beyond 80 degrees, so that some cells are not defined
  const fly = ['fly', 'cat-turn', '--rate', '20', '--frames', made.at('f.csv')];
  expect((await run(...fly, '--segments', made.at('s.csv'), '--numeric')).code).toBe(0);
  const { names, rows } = check(made.read('f.csv'));
  check(made.read('s.csv'));
  await run(...fly);
  const [head, ...lines] = made.rows('f.csv').trimEnd().split('\n');
  const wanted = head.split(',').flatMap((name, k) => (name.endsWith('_word') ? [] : [k]));
  expect(names).toEqual(wanted.map((k) => head.split(',')[k]));
  expect(rows).toEqual(lines.map((line) => wanted.map((k) => line.split(',')[k] || 'NaN')));
  expect(rows.flat()).toContain('NaN');
});

test('samples and map; what could not be flown is 1, and such samples are not read back', async () => {
  const vary = ['--vary', 'takeoff.h.z=1', '--no-bars'];
  await run('margin', made.at('still.json'), '--samples', '3', ...vary, '--csv', made.at('m.csv'), '--numeric');
  expect(check(made.read('m.csv')).names.at(-1)).toBe('is_fault');
  const { code, err } = await run('margin', made.at('still.json'), ...vary, '--read', made.at('m.csv'));
  expect(code).toBe(2);
  expect(err).toMatch(/is_fault|--numeric/);
  const axes = ['--x', 'takeoff.h.z=50..70', '--y', 'takeoff.tilt=-2..2', '--grid', '2x2'];
  await run('map', made.at('still.json'), ...axes, '--csv', made.at('p.csv'), '--numeric');
  expect(check(made.read('p.csv')).rows).toHaveLength(4);
});

test('is refused where there is no table', async () => {
  for (const command of [['fly'], ['margin'], ['map', '--x', 'takeoff.h.z', '--y', 'takeoff.tilt']]) {
    const { code, err } = await run(command[0], made.at('still.json'), ...command.slice(1), '--numeric');
    expect([code, err]).toEqual([2, expect.stringMatching(/--numeric: is about --/)]);
  }
});
