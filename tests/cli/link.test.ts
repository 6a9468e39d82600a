// A skill goes out as a link and comes back where a file is asked for.
import { expect, test } from 'vitest';
import { makeFolder, run } from './run.ts';

const linkIn = (out: string): string => out.split('\n')[0];

test('a link with all of the athlete flies as the file does', async () => {
  const { code, out } = await run(
    'link',
    'back-tuck',
    '--with',
    'name,age,mass',
    '--base',
    'https://bench.example/b/?x=1#y',
  );
  expect(code).toBe(0);
  expect(out).toMatch(/^https:\/\/bench\.example\/b\/#1\.[\w-]+\n/);
  const body = (text: string): string => text.slice(text.indexOf('\n'));
  expect(body((await run('fly', linkIn(out))).out)).toBe(body((await run('fly', 'back-tuck')).out));
});

test('without ticks it says what stays, and what is another for it', async () => {
  const { out } = await run('link', 'giant-double-straight');
  expect(out).toMatch(/^#1\./);
  expect(out).toContain('name, age, mass: not in it');
  expect(out).toContain('read forces in body weights');
  expect(out).not.toContain('Jory');
});

test('what is in it is what was asked for, though an age of a grown-up changes nothing', async () => {
  const { out } = await run('link', 'back-straight-full', '--with', 'name,mass');
  expect(out).toContain('name, mass: in it; age: not in it');
});

test('a link in a call is named as one, not written again: it may hold name, age and mass', async () => {
  const made = makeFolder();
  const link = linkIn((await run('link', 'back-tuck', '--with', 'name,age,mass')).out);
  await run('fly', link, '--frames', made.at('f.csv'), '--rate', '5');
  expect(made.read('f.csv')).toMatch(
    /^# program: .*\n# call: shapeflight fly 'the link' --rate 5\n# input: the link, sha256/,
  );
  await run('picture', 'back-straight', '--beside', link, '--out', made.at('p.svg'));
  expect(made.read('p.svg')).toContain("--beside 'the link'");
  for (const file of made.list()) expect(made.read(file)).not.toContain(link.slice(0, 40));
});

test('what is wrong is one line', async () => {
  for (const [argv, said] of [
    [['link'], 'link: SKILL is missing'],
    [['link', 'back-tuck', '--with', 'height'], '--with: "height" is not possible; allowed: name,age,mass'],
    [['link', 'back-tuck', '--base', 'bench'], '--base: "bench" is not possible'],
    [['link', 'back-tuck', '--out', 'x'], '--out is not an option of this command'],
    [['fly', `${linkIn((await run('link', 'back-tuck')).out).slice(0, 90)}`], 'This link is cut off after 90 letters'],
  ] as const) {
    const { code, err } = await run(...argv);
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(err.trim().split('\n')).toHaveLength(1);
  }
});
