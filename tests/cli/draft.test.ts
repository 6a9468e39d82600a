// "draft": a file that flies to its code, or one line that says why there is none.
import { expect, it } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

it('a name is drafted into a file that "fly" calls by that name, with the caution at the end', async () => {
  const folder = makeFolder();
  const file = folder.at('tuck.json');
  const said = await run('draft', 'back', 'tuck', '--place', 'floor', '--athlete', 'ilse-marrow', '--out', file);
  expect(said.code).toBe(0);
  expect(said.out).toContain('(4 0 o, floor) for Ilse Marrow');
  expect(said.out.trimEnd().endsWith(`Caution. ${CAUTION}`)).toBe(true);
  const flown = await run('fly', file);
  expect(flown.code).toBe(0);
  expect(flown.out).toMatch(/back somersault/i);
});

it('an athlete of a file of its own is written into the draft', async () => {
  const athlete = {
    format: 'shapeflight-athlete',
    version: 1,
    athlete: { kind: 'human', name: 'Ada Roan', sex: 'female', massKg: 50, statureM: 1.6 },
  };
  const folder = makeFolder({ 'ada.json': athlete });
  const said = await run('draft', '4 0 /', '--athlete', folder.at('ada.json'), '--out', folder.at('out.json'));
  expect(said.code).toBe(0);
  expect(JSON.parse(folder.read('out.json')).athlete).toMatchObject({ name: 'Ada Roan', massKg: 50 });
});

it('what can mean several skills lists them, and writes nothing', async () => {
  const folder = makeFolder();
  const said = await run('draft', '8 1 o', '--out', folder.at('x.json'));
  expect(said.code).toBe(2);
  expect(said.err).toMatch(/"8 01 o".*"8 10 o"/);
  expect(folder.list()).toEqual([]);
});

it('a refusal names the limit, ends with 3 and writes nothing', async () => {
  const folder = makeFolder();
  const said = await run(
    'draft',
    'triple back tuck',
    '--place',
    'floor',
    '--athlete',
    'tobias-fenn',
    '--out',
    folder.at('x.json'),
  );
  expect(said.code).toBe(3);
  expect(said.err).toContain('it asks more of joints and muscles than is known of them');
  expect(folder.list()).toEqual([]);
});

it('what is refused for strength alone is written on request, and says in title and output that it is beyond it', async () => {
  const folder = makeFolder();
  const at = ['--place', 'floor', '--athlete', 'tobias-fenn', '--out', folder.at('x.json')];
  const said = await run('draft', 'triple back tuck', ...at, '--beyond-strength');
  expect(said.code).toBe(0);
  expect(said.out).toMatch(/^It asks more strength or speed than has been measured: /m);
  expect(said.out.trimEnd().endsWith(`Caution. ${CAUTION}`)).toBe(true);
  expect(JSON.parse(folder.read('x.json')).title).toContain('(draft beyond known strength)');
}, 60_000);

it.each([
  [['--out', 'x.json'], /CODE_OR_NAME is missing/],
  [['rudi'], /--out FILE\.json is missing/],
  [['rudi', '--place', 'beach', '--out', 'x.json'], /--place: "beach" is not possible/],
  [['rudi', '--athlete', 'nobody', '--out', 'x.json'], /nobody/],
])('%j is refused in one line', async (args, reason) => {
  const said = await run('draft', ...args);
  expect(said.code).toBe(2);
  expect(said.err).toMatch(reason);
  expect(said.err.trim().split('\n')).toHaveLength(1);
});
