/**
 * Studies of the double-twist preset, over two threads of the built command line as a shell starts it: 10,000 samples with
 * the take-off varied, 10,000 with the schedule varied too, and a map of 100 x 100. One run each, start of the process and
 * files included; docs/benchmarks.md says what was reached. Beside it the same on one thread, and a fixed piece of arithmetic.
 */
import { spawnSync } from 'node:child_process';
import { cpus, loadavg } from 'node:os';
import path from 'node:path';
import { bench, describe } from 'vitest';

const command = path.resolve(import.meta.dirname, '../../src/cli/shapeflight.mjs');
const start = (...argv: string[]): void => {
  const { status, stderr } = spawnSync(process.execPath, [command, ...argv], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
};
// built before anything is timed
start('--version');
console.log(`${cpus().length} processors, load ${loadavg()[0].toFixed(1)}`);

const skill = 'back-straight-double';
const samples = ['margin', skill, '--no-bars', '--samples', '10000'];
const takeoff = ['h.z', 'speedUp', 'lean', 'tilt', 'twist'].flatMap((name) => ['--vary', `takeoff.${name}`]);
const map = ['map', skill, '--grid', '100x100', '--x', 'block:3.moveStart', '--y', 'takeoff.tilt'];
const ONCE = { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 };

describe('studies of the double-twist preset', () => {
  bench('10,000 take-offs, 2 threads', () => start(...samples, ...takeoff, '--jobs', '2'), ONCE);
  bench('10,000 take-offs and schedules, 2 threads', () => start(...samples, '--jobs', '2'), ONCE);
  bench('a map of 100 x 100, 2 threads', () => start(...map, '--jobs', '2'), ONCE);
  bench('10,000 take-offs, 1 thread', () => start(...samples, ...takeoff), ONCE);
  bench('10,000 take-offs and schedules, 1 thread', () => start(...samples), ONCE);
  bench('a map of 100 x 100, 1 thread', () => start(...map), ONCE);
  bench(
    'a hundred million sines',
    () => {
      let sum = 0;
      for (let k = 0; k < 1e8; k++) sum += Math.sin(k);
      if (Number.isNaN(sum)) throw new Error('no sum');
    },
    ONCE,
  );
});
