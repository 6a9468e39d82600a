// The shelf of ready skills: by place, by level, by the words of the trade.
import { expect, test } from 'vitest';
import { catalogue, chains, skills } from '../../presets/index.ts';
import { findDemos } from '../../src/features/shelf/find-demos.ts';

const all = catalogue.map(({ id, ...about }) => ({ id, file: skills[id] ?? chains[id], about }));
type Asked = Parameters<typeof findDemos>;
const find = (wanted = '', place: Asked[2] = 'all', level: Asked[3] = 'all'): string[] =>
  findDemos(all, wanted, place, level).map(({ id }) => id);

test('nothing asked: all, in the order of the catalogue', () => expect(find()).toEqual(all.map(({ id }) => id)));

test('place and level leave what has both', () => {
  const found = findDemos(all, '', 'trampoline', 'advanced');
  expect(found.length).toBeGreaterThan(1);
  for (const { about } of found) expect(about).toMatchObject({ place: 'trampoline', level: 'advanced' });
  expect(find('', 'bars', 'basic')).toEqual([]);
});

test('a name of the trade comes before titles that only hold its words', () => {
  expect(find('full twist')[0]).toBe('back-straight-full');
  expect(find('tuck')[0]).toBe('back-tuck');
  expect(find('barani')[0]).toBe('trampoline-barani');
  expect(find('103b')).toEqual(['dive-forward-one-and-half-pike']);
  expect(find('half', 'vault').length).toBeGreaterThan(0);
});

test('what to see is searched too', () => expect(find('tilts')).toContain('back-straight-full'));
