// What the commands say of one file is said of one flight, also where a swing or a push was changed in it.
import { describe, expect, it } from 'vitest';
import { formatMjcf } from '../../sim/index.ts';
import { casesOf } from '../corpus.ts';
import { givenIn, swingIn } from '../files/parts.ts';
import { fileOf, skillOf } from '../skill/load.ts';
import { bareModel, makeFolder, run } from './run.ts';

/** deg and rev: of a margin flown at the tolerance of studies, and of one map of it (docs/margin.md) */
const STUDY = { deg: 1e-4, rev: 1e-6 };

/** s: a sheet writes what it was handed in five figures or more */
const SAME_S = 1e-4;

describe('one file, one flight', () => {
  const giant = fileOf('giant-double-straight');
  swingIn(giant).release = { atDeg: 400 };
  const vault = fileOf('vault-handspring-half');
  givenIn(vault).meanBodyWeights = 3;

  it.each([
    ['a giant released at 400 deg', giant, 'swing.late=-0.001..0.001', [291.5, 0]],
    ['a vault pushed with 3 body weights', vault, 'contact.force=2.9..3.1', [21.5, 0.983]],
  ])(
    '%s: fly, margin, map, solve, sheet and body say the same',
    { timeout: 120_000 },
    async (_, file, span, [short, twists]) => {
      const made = makeFolder({ 'skill.json': file, 'sheet.txt': 'T = 1 s vs {air time}\n' });
      const skill = made.at('skill.json');
      const json = async (name: string, ...argv: string[]) => {
        const said = await run(argv[0], skill, ...argv.slice(1), made.at(name));
        expect([said.code, said.err], argv.join(' ')).toEqual([0, '']);
        return JSON.parse(made.read(name));
      };
      const fly = await json('fly.json', 'fly', '--summary');
      expect(fly.landing.shortDeg).toBeCloseTo(short, 0);
      expect(fly.done.twists).toBeCloseTo(twists, 2);

      const margin = await json('margin.json', 'margin', '--samples', '1', '--no-bars', '--json');
      const now = margin.asItIs;
      expect(Math.abs(now.short_deg - fly.landing.shortDeg)).toBeLessThan(STUDY.deg);
      expect(Math.abs(now.twists_rev - fly.done.twists)).toBeLessThan(STUDY.rev);

      const sheet = await run('sheet', made.at('sheet.txt'), '--skill', skill, '--csv', made.at('sheet.csv'));
      expect([sheet.code, sheet.err]).toEqual([0, '']);
      const [head, line] = made.rows('sheet.csv').trimEnd().split('\n');
      const simulated = Number(line.split(',')[head.split(',').indexOf('simulated')]);
      expect(Math.abs(simulated - fly.done.durationS)).toBeLessThan(SAME_S);

      // with the shapes of its file and the athlete that it names, whatever comes before the flight
      expect((await run('body', skill, '--mjcf', made.at('body.xml'))).code).toBe(0);
      const { body, gravity } = skillOf(file);
      expect(bareModel(made.read('body.xml'))).toBe(formatMjcf(body, gravity));

      const [input] = span.split('=');
      const map = await json(
        'map.json',
        'map',
        '--x',
        span,
        '--y',
        'body.mass=46.9..47.1',
        '--grid',
        '3x3',
        '--of',
        'short',
        '--json',
      );
      expect(JSON.stringify(map)).not.toContain('takeoff.');

      const solved = await json('solve.json', 'solve', '--vary', span, '--fits', '1', '--tries', '0', '--json');
      const vary = solved.vary[0];
      expect(vary.input).toBe(input);
      expect(solved.solutions).toEqual([]);
      // within the span the landing stays about as far short
      const [landing] = solved.nearest.terms;
      expect(landing.result).toBe('short');
      expect(landing.reached).toBeGreaterThan(short - 20);
    },
  );

  it('a number that the swing gives is refused with what to vary in its place', async () => {
    const { code, err } = await run('solve', 'giant-double-straight', '--vary', 'takeoff.h.z');
    expect(code).toBe(2);
    expect(err).toContain(
      'takeoff.h.z is given by the swing; vary swing.releaseAngle, swing.late or swing.key:3.angle',
    );
  });

  it('a release that is never reached: one error, wherever it is read', { timeout: 60_000 }, async () => {
    const never = structuredClone(giant);
    Object.assign(swingIn(never), { release: { atDeg: 3000 }, durationS: 4 });
    const made = makeFolder({ 'never.json': never });
    const skill = made.at('never.json');
    const said = [
      await run('fly', skill),
      await run('margin', skill, '--samples', '1'),
      await run('map', skill, '--x', 'swing.late=0..0.1', '--y', 'swing.nudge=8..9', '--grid', '2x2'),
      await run('sheet', 'energy-ledger', '--skill', skill),
      await run('solve', skill, '--vary', 'swing.late'),
    ];
    expect(new Set(said.map((s) => s.err)).size).toBe(1);
    for (const { code, out, err } of said) {
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(/^shapeflight: \S+never\.json: the swing's release: /);
    }
  });
});

describe('what solve writes', () => {
  it('flies from the bar as it is read back, and the release is in the file', { timeout: 120_000 }, async () => {
    // 45 ms after its time, which leaves it short
    const late = fileOf('giant-release-late');
    swingIn(late).releaseLateS = 0.045;
    const made = makeFolder({ 'late.json': late });
    const [skill, out] = [made.at('late.json'), made.at('out.json')];
    const { code, err } = await run(
      'solve',
      skill,
      '--vary',
      'swing.late=-0.05..0.05',
      // by its angle: one input alone need not hold the landing
      '--ending',
      'any',
      '--fits',
      '2',
      '--answers',
      '1',
      '--tries',
      '0',
      '--out',
      out,
    );
    expect([code, err]).toEqual([0, '']);
    const before = await run('fly', skill);
    const after = await run('fly', out);
    const shortOf = (text: string): number => Number(/(\d+) deg (?:short|past)/.exec(text)?.[1] ?? 0);
    expect(shortOf(before.out)).toBeGreaterThan(5);
    expect(shortOf(after.out)).toBeLessThanOrEqual(5);
  });

  it('is nothing where no flight could be flown: exit code 3, and the starts are counted', {
    timeout: 60_000,
  }, async () => {
    const made = makeFolder();
    const { code, out, err } = await run(
      ...[
        'solve',
        'back-tuck',
        '--vary',
        'end.surfaceHeight=15..19',
        '--fits',
        '2',
        '--tries',
        '0',
        '--out',
        made.at('out.json'),
      ],
    );
    expect([code, out]).toEqual([3, '']);
    expect(err).toMatch(/no flight could be flown.*nothing is written: 13 of 13 starts could not be flown/);
    expect(made.list()).toEqual([]);
  });

  it('tells how many starts could not be flown, and how many fits were asked for', { timeout: 60_000 }, async () => {
    const { code, out } = await run(
      'solve',
      'back-tuck',
      '--target',
      'somersaults=3',
      '--vary',
      'end.surfaceHeight=0..19',
      '--fits',
      '2',
      '--tries',
      '0',
    );
    expect(code).toBe(0);
    expect(out).toMatch(/\d+ of 13 starts could not be flown/);
  });
});

it('forged samples are found: one in ten of the rows changed', { timeout: 120_000 }, async () => {
  const n = casesOf(200, 100);
  const made = makeFolder();
  const csv = made.at('rows.csv');
  expect((await run('margin', 'back-tuck', '--samples', String(n), '--no-bars', '--csv', csv)).code).toBe(0);
  const read = () => run('margin', 'back-tuck', '--no-bars', '--read', csv);
  expect((await read()).out).toContain(`read from files; 50 of ${n} were flown again and came out the same`);
  const [head, ...rows] = made.rows('rows.csv').trimEnd().split('\n');
  const short = head.split(',').findIndex((name) => name.startsWith('short'));
  const forge = (row: string): string =>
    row
      .split(',')
      .map((x, k) => (k === short ? String(Number(x) / 10) : x))
      .join(',');
  const write = (every: number): void => {
    const { writeFileSync } = process.getBuiltinModule('node:fs');
    writeFileSync(
      csv,
      `${[head, ...rows.map((row, i) => (i > 0 && i < n - 1 && i % every === 0 ? forge(row) : row))].join('\n')}\n`,
    );
  };
  write(1);
  expect((await read()).code).toBe(2);
  write(10);
  const { code, err } = await read();
  expect(code).toBe(2);
  expect(err).toMatch(/sample \d+ short/);
});
