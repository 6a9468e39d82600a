// Ctrl+C on the shell: what was flown is kept, from the first piece on; how much is said; the exit code is 130.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { makeFolder, run, type Said, still } from './run.ts';

/** Runs a command in this process and interrupts it some time after it listens for that. */
async function runInterrupted(ms: number, ...argv: string[]): Promise<Said> {
  const before = process.listenerCount('SIGINT');
  let isOver = false;
  const said = run(...argv).finally(() => {
    isOver = true;
  });
  while (process.listenerCount('SIGINT') === before && !isOver) await sleep(5);
  await sleep(ms);
  if (process.listenerCount('SIGINT') > before) process.emit('SIGINT');
  const done = await said;
  expect(done.err).toContain('interrupted');
  expect(process.listenerCount('SIGINT')).toBe(before);
  return done;
}

describe('an interrupted command', () => {
  test('margin keeps the samples from the first on: the rows are those of a run of so many', async () => {
    const made = makeFolder({ 'still.json': still });
    const margin = (name: string, n: string) =>
      ['margin', made.at('still.json'), '--no-bars', '--samples', n, '--csv', made.at(name)] as const;
    const { code, err, out } = await runInterrupted(300, ...margin('cut.csv', '1000000'));
    expect(code).toBe(130);
    const [, kept] = /interrupted: (\d+) of 1000000 samples are kept/.exec(err) ?? [];
    expect(Number(kept)).toBeGreaterThan(0);
    expect(Number(kept)).toBeLessThan(1_000_000);
    expect(err).toContain(`--from ${kept} --to 1000000`);
    expect(out).toContain(`${kept} samples`);
    expect(out).toContain('Caution.');
    await run(...margin('whole.csv', kept));
    expect(made.read('cut.csv')).toBe(made.read('whole.csv'));
  });

  test('map keeps its rows from the first on', async () => {
    const made = makeFolder({ 'still.json': still });
    const map = (name: string, ...more: string[]) => [
      ...['map', made.at('still.json'), '--x', 'takeoff.h.z=50..70', '--y', 'takeoff.tilt=-2..2', '--grid', '60x2000'],
      ...['--csv', made.at(name), ...more],
    ];
    const { code, err } = await runInterrupted(300, ...map('cut.csv'));
    expect(code).toBe(130);
    const [, kept] = /interrupted: (\d+) of 2000 rows are kept/.exec(err) ?? [];
    expect(Number(kept)).toBeGreaterThan(0);
    await run(...map('whole.csv', '--to', kept));
    expect(made.read('cut.csv')).toBe(made.read('whole.csv'));
  });

  test('solve ends with what it has found so far', async () => {
    const made = makeFolder({ 'still.json': still });
    const { code, err, out } = await runInterrupted(
      300,
      ...['solve', made.at('still.json'), '--target', 'somersaults=3,twists=0', '--vary', 'takeoff.h.z=40..80'],
      ...['--fits', '1000', '--within', 'landing=0.000001', '--json', made.at('answer.json')],
    );
    expect(code).toBe(130);
    expect(err).toMatch(/interrupted: 0 answers and the nearest miss found so far are kept/);
    expect(out).toContain('Caution.');
    expect(existsSync(made.at('answer.json'))).toBe(true);
  });

  test('as a shell does it: threads end too, and the process exits with 130', async () => {
    const made = makeFolder({ 'still.json': still });
    const command = path.resolve(import.meta.dirname, '../../src/cli/shapeflight.mjs');
    // built before anything is interrupted
    spawnSync(process.execPath, [command, '--version']);
    const cut = async (ms: number): Promise<{ code: number | null; err: string }> => {
      const argv = ['margin', made.at('still.json'), '--no-bars', '--samples', '1000000', '--jobs', '2'];
      const child = spawn(process.execPath, [command, ...argv, '--csv', made.at('cut.csv')]);
      let err = '';
      child.stderr.on('data', (data) => {
        err += data;
      });
      const code = new Promise<number | null>((resolve) => child.on('exit', resolve));
      await sleep(ms);
      child.kill('SIGINT');
      return { code: await code, err };
    };
    let said = await cut(2000);
    // a busy machine: the signal may come before the command listens, or before the first piece
    for (const ms of [6000, 20_000]) if (!said.err.includes('samples are kept')) said = await cut(ms);
    expect(said.code, said.err).toBe(130);
    expect(said.err).toMatch(/interrupted: \d+ of 1000000 samples are kept/);
    const rows = made.rows('cut.csv').trim().split('\n').length - 1;
    expect(said.err).toContain(`${rows} of 1000000`);
  });
});
