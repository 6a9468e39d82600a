// The commands margin and map in this process (threads and processes of their own: margin-jobs.test.ts).
import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { makeFolder, run, still } from './run.ts';

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
    const [names, ...rows] = table(made.rows('o.csv'));
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
    expect(study.vary[0].source).toBe('asked for');
    expect(said.out).toContain('takeoff.h.z, takeoff.speedUp: asked for');
    // somersaults go with the momentum
    const bar = study.bars.find((b: { input: string }) => b.input === 'takeoff.h.z');
    const perUnit = study.asItIs.somersaults_rev / 60;
    expect(bar.low.by).toBeCloseTo((1 - study.asItIs.somersaults_rev) / perUnit, 3);
    expect(bar.high.by).toBeCloseTo((1.15 - study.asItIs.somersaults_rev) / perUnit, 3);
  });

  it('says of every usual error where it is from, of whom, and what goes together', async () => {
    const made = makeFolder();
    const argv = ['margin', 'giant-double-straight', '--samples', '2', '--no-bars', '--json', made.at('o.json')];
    const usual = await run(...argv);
    expect(usual.out).toContain('Where the errors are from (national level, times 1)');
    expect(usual.out).toMatch(/swing\.late, block:2\.moveStart, .*: published: 12 ms at four instants of a giant/);
    expect(usual.out).toMatch(/What goes together: times are a shift common to all/);
    const study = JSON.parse(made.read('o.json'));
    expect(study.usualErrors).toEqual({ level: 'national', factor: 1 });
    expect(study.goesTogether).toMatch(/correlation 0\.5/);
    for (const { input, source } of study.vary) expect(source, input).toMatch(/^published: /);

    const elite = await run(...argv, '--level', 'elite', '--error-factor', '0.5');
    expect(elite.out).toContain('(elite level, times 0.5)');
    expect(elite.out).toMatch(/swing\.late, .*: 0\.5 times: our judgement, 8 ms/);
    const { usualErrors, vary } = JSON.parse(made.read('o.json'));
    expect(usualErrors).toEqual({ level: 'elite', factor: 0.5 });
    expect(vary.find((v: { input: string }) => v.input === 'swing.late')).toMatchObject({ by: 0.004, unit: 's' });
  });

  it('of a skill to be held straight shows the range of the reflex beside the open loop, and heads nothing with it', async () => {
    const made = makeFolder();
    const argv = ['margin', 'back-straight', '--samples', '3', '--no-bars', '--json', made.at('o.json')];
    const { out } = await run(...argv);
    expect(out).toMatch(
      /To be held straight: .*first 3 samples\n +open loop .*\n +hips' reflex after 0\.10 s .*\n.*0\.15 s .*\n.*0\.20 s /,
    );
    expect(out).toContain('None of these is what an athlete lands');
    expect(out).toContain('All together in an open loop: 3 samples');
    const { heldStraight } = JSON.parse(made.read('o.json'));
    expect(heldStraight.openLoop.n).toBe(3);
    expect(heldStraight.hipsReflex.map((r: { delayS: number }) => r.delayS)).toEqual([0.1, 0.15, 0.2]);
    expect(heldStraight.note).toMatch(/^None of these/);

    const off = await run(...argv, '--balance', 'off');
    expect(off.out).not.toContain('held straight');
    expect(JSON.parse(made.read('o.json'))).not.toHaveProperty('heldStraight');
    const tuck = await run('margin', 'back-tuck', '--samples', '3', '--no-bars');
    expect(tuck.out).toContain('All together: 3 samples');
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
      [['--level', 'olympic'], /--level: .*national, elite/],
      [['--error-factor', '3'], /errors\.factor: 3 .*0\.5 to 2/],
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
    for (const [more, shown] of cases) {
      const said = await run('margin', 'back-straight-full', '--samples', '1', '--no-bars', ...more);
      expect([said.code, said.out], more.join(' ')).toEqual([2, '']);
      expect(said.err).toMatch(shown);
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
    const [names, ...rows] = table(made.rows('m.csv'));
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
    for (const [more, shown] of cases) {
      const said = await run('map', 'back-straight-full', ...more);
      expect([said.code, said.out], more.join(' ')).toEqual([2, '']);
      expect(said.err).toMatch(shown);
    }
  });
});

describe('samples read again', () => {
  it('change no bit of what is read from the samples again, put end to end or file by file', async () => {
    const made = makeFolder({ 'still.json': still });
    const margin = async (...more: string[]): Promise<string> => {
      const said = await run(
        ...['margin', made.at('still.json'), '--no-bars', '--seed', '4', '--json', made.at('j.json'), ...more],
      );
      expect([said.code, said.err]).toEqual([0, '']);
      // what is said of reading apart, all is as it was flown
      return said.out.replace(/\n {2}read from files; .*/, '') + made.read('j.json');
    };
    // angles and turns, whose units are not those of the file
    const vary = ['--vary', 'takeoff.h.z', '--vary', 'takeoff.tilt=2', '--vary', 'takeoff.lean=1'];
    const window = ['--window', 'somersaults=1..1.2', '--window', 'tilt=-10..10'];
    const flown = await margin(...vary, ...window, '--samples', '150', '--csv', made.at('whole.csv'));
    await margin(...vary, ...window, '--to', '70', '--csv', made.at('a.csv'));
    await margin(...vary, ...window, '--from', '70', '--samples', '150', '--csv', made.at('b.csv'));
    expect(await margin(...vary, ...window, '--read', made.at('whole.csv'))).toBe(flown);
    expect(await margin(...vary, ...window, '--samples', '150', '--seed', '5')).not.toBe(flown);
    // as a shell spreads part-*.csv, in whatever order
    expect(await margin(...vary, ...window, '--read', made.at('b.csv'), made.at('a.csv'))).toBe(flown);
    writeFileSync(made.at('cat.csv'), `${made.read('a.csv')}${made.read('b.csv').replaceAll('\n', '\r\n')}`);
    expect(await margin(...vary, ...window, '--read', made.at('cat.csv'))).toBe(flown);
    const part = JSON.parse((await margin(...vary, ...window, '--read', made.at('b.csv'))).replace(/^[^{]*/, ''));
    expect(part.samples).toMatchObject({ from: 70, to: 150 });
  });

  it('are refused where samples are missing, given twice, or of another study', async () => {
    const made = makeFolder({ 'still.json': still, 'longer.json': { ...still, end: { durationS: 1.2 } } });
    const margin = (...more: string[]) => run('margin', made.at('still.json'), '--no-bars', ...more);
    const vary = ['--vary', 'takeoff.h.z=1', '--window', 'somersaults=1..1.2'];
    await margin(...vary, '--to', '6', '--csv', made.at('a.csv'));
    const lines = made.rows('a.csv').split('\n');
    writeFileSync(made.at('gap.csv'), lines.filter((_, i) => i !== 3).join('\n'));
    writeFileSync(made.at('odd.csv'), lines.join('\n').replace(/,1,\n2,/, ',1,\n2,x'));
    writeFileSync(made.at('none.csv'), '');
    const read = (name: string, ...more: string[]) => margin('--read', made.at(name), ...more);
    const cases: [Promise<{ code: number; err: string }>, RegExp][] = [
      [read('gap.csv', ...vary), /sample.*2: no sample is left out/],
      [margin(...vary, '--read', made.at('a.csv'), made.at('a.csv')), /each sample once/],
      [read('odd.csv', ...vary), /odd\.csv line 4 takeoff\.h\.z_kgM2PerS.*a number/],
      [read('none.csv', ...vary), /at least one sample/],
      // the same take-off, another flight
      [
        run('margin', made.at('longer.json'), '--no-bars', ...vary, '--read', made.at('a.csv')),
        /sample 0 somersaults.*this skill/,
      ],
      [read('lost.csv', ...vary), /lost\.csv: there is no such file/],
      [read('a.csv', ...vary, '--seed', '2'), /sample 0 takeoff\.h\.z.*seed 2/],
      [read('a.csv', '--vary', 'takeoff.h.z=2', '--window', 'somersaults=1..1.2'), /sample 0 takeoff\.h\.z/],
      [read('a.csv', '--vary', 'takeoff.tilt=1', '--window', 'somersaults=1..1.2'), /line 6.*takeoff\.tilt_deg/],
      [read('a.csv', ...vary, '--samples', '6'), /--samples: has no meaning with --read/],
    ];
    for (const [said, shown] of cases) {
      const { code, err } = await said;
      expect(code, err).toBe(2);
      expect(err).toMatch(shown);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
  });
});
