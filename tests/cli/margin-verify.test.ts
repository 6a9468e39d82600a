// Of samples that are read, as many are flown again as --verify asks for: a forged row that the usual 50 miss is found.
import { writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { makeFolder, run, still } from './run.ts';

const ALL = 120;

it('--verify says how many samples are flown again: rows that 50 pass over are found by all', async () => {
  const made = makeFolder({ 'still.json': still });
  const margin = (...more: string[]) =>
    run(
      ...['margin', made.at('still.json'), '--no-bars', '--seed', '4', '--vary', 'takeoff.h.z=1'],
      ...['--window', 'somersaults=1..1.2', ...more],
    );
  await margin('--samples', String(ALL), '--csv', made.at('flown.csv'));
  const lines = made.rows('flown.csv').split('\n');
  const column = lines[0].split(',').indexOf('somersaults_rev');
  const verify = (...more: string[]) => margin('--read', made.at('forged.csv'), ...more);

  // which rows are picked depends on what the rows say, so a forged one is tried where the usual number does not look
  let missed = 0;
  for (let row = 1; row < ALL - 1 && missed < 2; row++) {
    const forged = lines.map((line, i) => (i === row + 1 ? line.split(',').with(column, '1.05').join(',') : line));
    writeFileSync(made.at('forged.csv'), forged.join('\n'));
    const usual = await verify();
    if (usual.code !== 0) {
      expect(usual.err).toMatch(new RegExp(`sample ${row} somersaults.*this skill`));
      continue;
    }
    missed++;
    expect(usual.out).toContain(`50 of ${ALL} were flown again`);
    const all = await verify('--verify', String(ALL));
    expect([all.code, all.out]).toEqual([2, '']);
    expect(all.err).toMatch(new RegExp(`sample ${row} somersaults.*this skill`));
  }
  expect(missed).toBe(2);
  const { out } = await margin('--read', made.at('flown.csv'), '--verify', String(ALL));
  expect(out).toContain(`${ALL} of ${ALL} were flown again`);
});
