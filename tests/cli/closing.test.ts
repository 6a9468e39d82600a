/** Whatever a command says ends with what it was held against, and the caution; its JSON has both too. */
import { expect, test } from 'vitest';
import { CAUTION, COMPARED } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

const { at, read } = makeFolder();
const few = ['--samples', '2', '--no-bars', '--balance', 'off'];

test.each([
  [['fly', 'back-tuck']],
  [['body', 'ilse-marrow']],
  [['sheet', 'rod-against-ball']],
  [['margin', 'back-tuck', ...few]],
  [['map', 'back-tuck', '--x', 'takeoff.h.z', '--y', 'takeoff.speedUp', '--grid', '2x2']],
  [['solve', 'back-tuck', '--vary', 'takeoff.h.z', '--fits', '1', '--tries', '0']],
  [['export', 'back-tuck', '--as', '1', '--out', at('v1.json')]],
  [['link', 'back-tuck']],
  [['--help']],
])('%j', async (argv) => {
  const { out, code } = await run(...argv);
  expect(code).toBe(0);
  expect(out.trimEnd().endsWith(`${COMPARED}\nCaution. ${CAUTION}`)).toBe(true);
});

test.each([
  ['summary', ['fly', 'back-tuck', '--summary']],
  ['margin', ['margin', 'back-tuck', ...few, '--json']],
  ['map', ['map', 'back-tuck', '--x', 'takeoff.h.z', '--y', 'takeoff.speedUp', '--grid', '2x2', '--json']],
  ['solve', ['solve', 'back-tuck', '--vary', 'takeoff.h.z', '--fits', '1', '--tries', '0', '--json']],
])('the JSON of %s', async (name, argv) => {
  await run(...argv, at(`${name}.json`));
  expect(JSON.parse(read(`${name}.json`))).toMatchObject({ caution: CAUTION, compared: COMPARED });
});
