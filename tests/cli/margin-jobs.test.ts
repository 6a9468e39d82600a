// The commands margin and map over threads, and as spans in processes of their own.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeFolder, still } from './run.ts';

const command = path.resolve(import.meta.dirname, '../../src/cli/shapeflight.mjs');
const start = (...argv: string[]) => spawnSync(process.execPath, [command, ...argv], { encoding: 'utf8' });

describe('jobs and spans', () => {
  it('change no bit of a margin, and spans put end to end are the whole', () => {
    const made = makeFolder();
    const out = (name: string): string => made.at(name);
    const margin = (name: string, ...more: string[]): void => {
      const { status, stderr } = start(
        ...['margin', 'back-straight-full', '--no-bars', '--seed', '4', '--samples', '16', '--csv', out(name), ...more],
      );
      expect(status, stderr).toBe(0);
    };
    margin('one.csv');
    margin('two.csv', '--jobs', '3');
    margin('a.csv', '--to', '7');
    margin('b.csv', '--from', '7', '--jobs', '2');
    const whole = made.read('one.csv');
    expect(made.read('two.csv')).toBe(whole);
    expect(made.read('a.csv') + made.read('b.csv')).toBe(whole);
  });

  it('change no bit of a map', () => {
    const made = makeFolder({ 'still.json': still });
    const map = (name: string, ...more: string[]): void => {
      const { status, stderr } = start(
        ...['map', made.at('still.json'), '--x', 'takeoff.h.z=50..70', '--y', 'takeoff.tilt=-2..2', '--grid', '7x6'],
        ...['--csv', made.at(name), ...more],
      );
      expect(status, stderr).toBe(0);
    };
    map('one.csv');
    map('two.csv', '--jobs', '2');
    map('a.csv', '--to', '2');
    map('b.csv', '--from', '2');
    expect(made.read('two.csv')).toBe(made.read('one.csv'));
    expect(made.read('a.csv') + made.read('b.csv')).toBe(made.read('one.csv'));
  });

  it('report what is wrong in the input of a thread, in one line', () => {
    const { status, stderr } = start('margin', 'back-straight-full', '--jobs', '2', '--window', 'luck=1..2');
    expect(status).toBe(2);
    expect(stderr.trim().split('\n').at(-1)).toMatch(/luck/);
  });
});
