// A chain on the command line: flown whole, and one of its flights by its number.
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { parseCommand } from '../../src/cli/command-line.ts';
import { runFly } from '../../src/cli/fly.ts';
import { readSkill } from '../../src/cli/read-input.ts';
import { runSolve } from '../../src/cli/solve.ts';
import { boardTable } from '../chain/files.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'chain-'));
const file = path.join(folder, 'vault.json');
writeFileSync(file, JSON.stringify(boardTable()));

/** shares of the scale; measured: 5e-13 in the air, 2e-9 on the hands */
const CLOSES = 1e-6;

test('every flight is said in its order, and the account closes', async () => {
  const summary = path.join(folder, 'summary.json');
  const out = await runFly({ kind: 'fly', skill: file, summary, rateHz: 240 }, []);
  expect(out).toMatch(/1\. To the table, 0\.00 to 0\.\d\d s\n[\s\S]*hands down[\s\S]*2\. /);
  expect(out).toContain('not coaching advice');
  const json = JSON.parse(readFileSync(summary, 'utf8'));
  expect(json.flights).toHaveLength(2);
  expect(json.account.map(({ phase }: { phase: string }) => phase)).toEqual(['flight', 'contact', 'flight']);
  for (const [i, row] of json.account.entries()) {
    expect(row.misses.energy).toBeLessThan(CLOSES);
    if (row.misses.momentum !== undefined) expect(row.misses.momentum).toBeLessThan(CLOSES);
    if (i > 0) {
      expect(row.energyJ.before).toBeCloseTo(json.account[i - 1].energyJ.after, 6);
      for (const [k, h] of row.momentumKgM2PerS.before.entries())
        expect(h).toBeCloseTo(json.account[i - 1].momentumKgM2PerS.after[k], 9);
    }
  }
});

test('one flight of a chain is a skill as any other, by its number', async () => {
  const read = await readSkill(`${file}#2`);
  expect(read.file.phases.map(({ kind }) => kind)).toEqual(['contact', 'flight']);
  expect(read.update({ ...read.spec, title: 'Another' })).toMatchObject({
    title: 'Another',
    phases: boardTable().phases,
  });
  await expect(readSkill(file)).rejects.toThrow(/a chain of 2 flights; choose one, .*#1 to .*#2/);
  await expect(readSkill(`${file}#3`)).rejects.toThrow(/allowed: #1 to #2/);
  await expect(runFly({ kind: 'fly', skill: file, frames: 'x.csv', rateHz: 240 }, [])).rejects.toThrow(
    /frames are of one flight/,
  );
});

test('a leg is solved with the legs before it, and its whole chain is written', async () => {
  const out = path.join(folder, 'solved.json');
  const asked = ['--vary', 'leg1.takeoff.speedUp=3..4', '--target', 'airTime=0.82', '--ending', 'any'];
  const command = parseCommand(['solve', `${file}#2`, ...asked, '--tries', '0', '--fits', '1', '--out', out]);
  if (command.kind !== 'solve') throw new Error(command.kind);
  expect(await runSolve(command, [])).toContain('(leg1.takeoff.speedUp)');
  const is = JSON.parse(readFileSync(out, 'utf8'));
  expect(is.phases.slice(1)).toEqual(boardTable().phases.slice(1));
  expect(is.phases[0].takeoff.velocityMPerS.up).not.toBe(3.5);
});
