// The command as it is started from a shell: a process of its own, with real exit codes and streams.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, openSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { sampleSkill } from '../files/sample-skill.ts';
import { makeFolder } from './run.ts';

const command = path.resolve(import.meta.dirname, '../../src/cli/shapeflight.mjs');
const start = (...argv: string[]) => spawnSync(process.execPath, [command, ...argv], { encoding: 'utf8' });

test('exit 0 with the result on stdout; exit 2 with one line on stderr', () => {
  const made = makeFolder({ 'skill.json': sampleSkill, 'bad.json': { ...sampleSkill, title: 5 } });
  const good = start('fly', made.at('skill.json'), '--frames', made.at('o.csv'));
  expect(good.status).toBe(0);
  expect(good.stdout).toContain(CAUTION);
  expect(made.rows('o.csv').startsWith('t,px,py,pz,qw')).toBe(true);

  // built by now, so that nothing else is said on stderr
  const bad = start('fly', made.at('bad.json'));
  expect([bad.status, bad.stdout]).toEqual([2, '']);
  expect(bad.stderr).toMatch(/^shapeflight: [^\n]*title[^\n]*\n$/);
});

test('a reader that closes early, as head does, is no error', async () => {
  start('--version');
  const child = spawn(process.execPath, [command, '--help'], { stdio: ['ignore', 'pipe', 'pipe'] });
  child.stdout.destroy();
  let err = '';
  child.stderr.on('data', (data) => {
    err += data;
  });
  const code = await new Promise((resolve) => child.on('close', resolve));
  expect([code, err]).toEqual([0, '']);
});

test.runIf(existsSync('/dev/full'))('a full disk behind stdout is one line and exit 2', () => {
  start('--version');
  const { status, stderr } = spawnSync(process.execPath, [command, '--help'], {
    stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
    encoding: 'utf8',
  });
  expect([status, stderr]).toEqual([2, 'shapeflight: the standard output: the disk is full\n']);
});
