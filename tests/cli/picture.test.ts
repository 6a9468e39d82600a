// "picture": an SVG complete in itself, to scale, without a name, and one line for what cannot be drawn.
import { expect, it } from 'vitest';
import { athletes, skills } from '../../presets/index.ts';
import { CAUTION } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

it('poses of a skill are written with typeface and caution in them, and without a name', async () => {
  const folder = makeFolder();
  const said = await run(
    'picture',
    'back-straight-full',
    '--as',
    'path',
    '--by',
    'twist',
    '--count',
    '5',
    '--out',
    folder.at('a.svg'),
  );
  expect(said.err).toBe('');
  expect(said.code).toBe(0);
  expect(said.out.trimEnd().endsWith(`Caution. ${CAUTION}`)).toBe(true);
  const svg = folder.read('a.svg');
  expect(svg.match(/data-figure="A/g)).toHaveLength(5);
  expect(svg).toContain('url(data:font/woff2;base64,');
  expect(svg).toContain('A model, not coaching advice');
  expect(svg).not.toContain('Marrow');
  expect(svg).toMatch(
    /<metadata>Shapeflight [^<]*picture back-straight-full --as path --by twist --count 5; input [^<]*sha256/,
  );
  // the typeface is most of it
  expect(svg.length).toBeLessThan(400_000);
});

it('a second version is beside the first, and the name is there where it is asked for', async () => {
  const folder = makeFolder();
  const said = await run(
    'picture',
    'back-straight-full',
    '--beside',
    'back-straight',
    '--at',
    '0,0.4',
    '--named',
    '--out',
    folder.at('a.svg'),
  );
  expect(said.code).toBe(0);
  const svg = folder.read('a.svg');
  expect(svg.match(/data-figure="B/g)).toHaveLength(2);
  expect(svg).toContain('Ilse Marrow');
});

it.each([
  [['picture', 'back-tuck', '--by', 'twist', '--out', 'OUT'], /back somersault, tucked has no twist/i],
  [['picture', 'back-tuck', '--at', '0,5', '--out', 'OUT'], /--at: 5 s is after the end; allowed: 0 to 0\.8/],
  [['picture', 'back-tuck', '--as', 'fan', '--out', 'OUT'], /--as: "fan" is not possible; allowed: row, path, time/],
  [
    ['picture', 'back-tuck', '--count', '99', '--out', 'OUT'],
    /--count: "99" is not possible; allowed: a whole number from 2 to 16/,
  ],
  [['picture', 'back-tuck', '--out', 'a.png'], /name it \.svg/],
  [['picture', 'back-tuck'], /--out OUT\.svg is missing/],
  [['picture', '--out', 'OUT'], /SKILL is missing/],
])('%s is refused in one line', async (argv, reason) => {
  const folder = makeFolder();
  const said = await run(...argv.map((arg) => (arg === 'OUT' ? folder.at('a.svg') : arg)));
  expect(said.code).toBe(2);
  expect(said.err.trim().split('\n')).toHaveLength(1);
  expect(said.err).toMatch(reason);
  expect(folder.list()).toEqual([]);
});

it('of a skill that is no ready one the digest tells nothing of name, age and mass, unless the name goes', async () => {
  const who = (name: string, massKg: number) => ({
    ...skills['back-straight'],
    title: 'Mine',
    athlete: { ...athletes['ilse-marrow'], name, massKg, segments: undefined },
  });
  const folder = makeFolder({ 'a.json': who('Wren', 54), 'b.json': who('Lark', 54), 'c.json': who('Wren', 60) });
  const digest = async (file: string, ...more: string[]): Promise<string | undefined> => {
    await run('picture', folder.at(file), '--count', '2', ...more, '--out', folder.at('x.svg'));
    return /sha256 ([0-9a-f]{64})/.exec(folder.read('x.svg'))?.[1];
  };
  const first = await digest('a.json');
  expect(first).toBeDefined();
  expect([await digest('b.json'), await digest('c.json')]).toEqual([first, first]);
  expect(await digest('a.json', '--named')).not.toBe(await digest('b.json', '--named'));
});
