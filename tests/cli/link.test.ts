// A skill goes out as a link and comes back where a file is asked for.
import { expect, test } from 'vitest';
import { run } from './run.ts';

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
  expect(out).toContain('name, mass: not in it');
  expect(out).toContain('read forces in body weights');
  expect(out).not.toContain('Jory');
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
