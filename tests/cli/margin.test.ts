// The commands margin and map in this process; over threads and as spans in processes of their own.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

const command = path.resolve(import.meta.dirname, '../../src/cli/shapeflight.mjs');
const start = (...argv: string[]) => spawnSync(process.execPath, [command, ...argv], { encoding: 'utf8' });

/** A stretched body that only turns: quick, and its margin is known. */
const still = {
  format: 'shapeflight-skill',
  version: 1,
  title: 'Still',
  athlete: { ref: 'tobias-fenn' },
  takeoff: {
    massCentreHeightM: 1.2,
    velocityMPerS: { along: 0, up: 5 },
    momentum: { vectorKgM2PerS: [0, 0, 60] },
  },
  end: { durationS: 1.1 },
  schedule: { base: 'straight' },
};
const table = (csv: string): string[][] =>
  csv
    .trim()
    .split('\n')
    .map((line) => line.split(','));

describe('margin', () => {
  it('says bars, share and what matters, and writes samples and study', async () => {
    const made = makeFolder({ 'still.json': still });
    const said = await run(
      ...['margin', made.at('still.json'), '--samples', '120', '--seed', '9'],
      ...['--vary', 'takeoff.h.z=0.5', '--vary', 'takeoff.speedUp=0.1,uniform', '--window', 'somersaults=1..1.15'],
      ...['--csv', made.at('o.csv'), '--json', made.at('o.json')],
    );
    expect([said.code, said.err]).toEqual([0, '']);
    expect(said.out).toContain('without balance reflex');
    expect(said.out).toContain(CAUTION);
    const [names, ...rows] = table(made.read('o.csv'));
    expect(names).toEqual([
      'sample',
      'takeoff.h.z_kgM2PerS',
      'takeoff.speedUp_mPerS',
      'somersaults_rev',
      'distance',
      'inside',
      'fault',
    ]);
    expect(rows.map((r) => Number(r[0]))).toEqual(Array.from({ length: 120 }, (_, i) => i));
    expect(made.read('o.csv')).not.toContain(CAUTION);
    const study = JSON.parse(made.read('o.json'));
    expect(study.caution).toBe(CAUTION);
    expect(study.balance).toMatch(/^without/);
    expect(study.inWindow.inside).toBe(rows.filter((r) => r[5] === '1').length);
    expect(study.vary.map((v: { input: string }) => v.input)).toEqual(['takeoff.h.z', 'takeoff.speedUp']);
    // somersaults go with the momentum
    const bar = study.bars.find((b: { input: string }) => b.input === 'takeoff.h.z');
    const perUnit = study.asItIs.somersaults_rev / 60;
    expect(bar.low.by).toBeCloseTo((1 - study.asItIs.somersaults_rev) / perUnit, 3);
    expect(bar.high.by).toBeCloseTo((1.15 - study.asItIs.somersaults_rev) / perUnit, 3);
  });

  it('labels the reflex', async () => {
    const said = await run(
      ...['margin', 'double-back-straight', '--samples', '2', '--no-bars', '--balance', 'hips', '--delay', '0.05'],
    );
    expect(said.out).toMatch(/with balance reflex: hips, .* delay 0\.05 s/);
  });

  it('names what is wrong', async () => {
    const cases: [string[], RegExp][] = [
      [['--vary', 'takeoff.momentum=1'], /takeoff\.momentum/],
      [['--vary', 'takeoff.h.z=-1'], /above 0/],
      [['--vary', 'takeoff.h.z=1,round'], /normal, uniform/],
      [['--samples', '0'], /--samples/],
      [['--seed', '1.5'], /--seed/],
      [['--from', '7', '--to', '3'], /below the last/],
      [['--window', 'short=10..-10'], /lower bound/],
      [['--window', 'luck=1..2'], /luck/],
      [['--correlate', 'takeoff.h.z,takeoff.speedUp=2'], /-1 to 1/],
      [['--balance', 'knees'], /off, hips, arms/],
      [['--delay', '0.1'], /--balance/],
      [['--balance', 'hips', '--delay', '9'], /delay/],
      [['--nonsense'], /nonsense/],
    ];
    for (const [more, told] of cases) {
      const said = await run('margin', 'back-straight-full', '--samples', '1', '--no-bars', ...more);
      expect([said.code, said.out], more.join(' ')).toEqual([2, '']);
      expect(said.err).toMatch(told);
      expect(said.err.trim().split('\n')).toHaveLength(1);
    }
  });
});

describe('map', () => {
  const asked = ['--x', 'takeoff.h.z=50..70', '--y', 'end.duration=1..1.2', '--of', 'somersaults', '--grid', '6x5'];

  it('is the product it should be, with round contours', async () => {
    const made = makeFolder({ 'still.json': still });
    const said = await run(
      ...['map', made.at('still.json'), ...asked, '--csv', made.at('m.csv'), '--json', made.at('m.json')],
    );
    expect([said.code, said.err]).toEqual([0, '']);
    const [names, ...rows] = table(made.read('m.csv'));
    expect(names).toEqual([
      ...['row', 'column', 'end.duration_s', 'takeoff.h.z_kgM2PerS', 'somersaults_rev', 'distance', 'inside', 'fault'],
    ]);
    expect(rows).toHaveLength(30);
    // N = h T / (2 pi A)
    const constant = Number(rows[0][4]) / 50;
    for (const r of rows) expect(Number(r[4]) / (constant * Number(r[2]) * Number(r[3]))).toBeCloseTo(1, 7);
    const map = JSON.parse(made.read('m.json'));
    expect(map.x.now).toBe(60);
    const { contours } = map.results[0];
    expect(contours.length).toBeGreaterThan(3);
    for (const { level, lines } of contours)
      for (const line of lines)
        for (let i = 0; i < line.length; i += 2)
          // linear between places of the grid, along which the product is linear
          expect(line[i] * line[i + 1] * constant).toBeCloseTo(level, 6);
  });

  it('names what is wrong', async () => {
    const cases: [string[], RegExp][] = [
      [['--x', 'takeoff.h.z=50..70'], /--y is missing/],
      [['--x', 'takeoff.h.z', '--y', 'takeoff.h.z'], /another input/],
      [['--x', 'takeoff.h.z=5..5', '--y', 'takeoff.tilt'], /not the start/],
      [['--x', 'takeoff.h.z', '--y', 'takeoff.tilt=-90..90'], /takeoff\.tilt/],
      [['--x', 'takeoff.h.z', '--y', 'takeoff.tilt', '--grid', '1x5'], /--grid/],
      [['--x', 'takeoff.h.z', '--y', 'takeoff.tilt', '--grid', '3x5', '--to', '6'], /beyond the 5 rows/],
    ];
    for (const [more, told] of cases) {
      const said = await run('map', 'back-straight-full', ...more);
      expect([said.code, said.out], more.join(' ')).toEqual([2, '']);
      expect(said.err).toMatch(told);
    }
  });
});

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
    margin('other.csv', '--seed', '5');
    expect(made.read('other.csv')).not.toBe(whole);
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

  it('tell what a thread was told is wrong, in one line', () => {
    const { status, stderr } = start('margin', 'back-straight-full', '--jobs', '2', '--window', 'luck=1..2');
    expect(status).toBe(2);
    expect(stderr.trim().split('\n').at(-1)).toMatch(/luck/);
  });
});
