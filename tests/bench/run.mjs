// npm run bench: the benchmarks in Node (*.bench.ts, by vitest), then those in a browser against the built app
// (*.browser.mjs, each a program that prints its own table). A word after -- picks the files whose names hold it;
// --beside DIR measures another build of the page in alternation.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { ensureInstalled, root } from '../../src/cli/install.mjs';

const here = path.join(root, 'tests/bench');
const [word = '', ...rest] = process.argv[2]?.startsWith('--') ? ['', ...process.argv.slice(2)] : process.argv.slice(2);
/** A study that docs/solve.md rests on takes minutes: it runs when it is named. */
const STUDY = 'most-twist';
const find = (ending) =>
  readdirSync(here)
    .filter((name) => name.endsWith(ending) && name.includes(word) && (word !== '' || !name.startsWith(STUDY)))
    .map((name) => `tests/bench/${name}`)
    .sort();

function run(args, env = {}) {
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  return done.status === 0;
}

ensureInstalled();
const inNode = find('.bench.ts');
const inBrowser = find('.browser.mjs');
let isFine = inNode.length + inBrowser.length > 0;
if (!isFine) console.error(`No benchmark in tests/bench has "${word}" in its name.`);
if (inNode.length > 0) {
  // one file at a time: two would measure each other
  const vitest = ['node_modules/vitest/vitest.mjs', 'bench', '--run', '--no-file-parallelism'];
  isFine = run([...vitest, ...inNode]) && isFine;
}
if (inBrowser.length > 0) {
  const { ensureBrowser } = await import('../browser/find-browser.mjs');
  const { ensureAppBuilt } = await import('../../src/cli/build-app.mjs');
  ensureAppBuilt();
  const env = { SHAPEFLIGHT_BROWSER: await ensureBrowser() };
  for (const file of inBrowser) isFine = run([file, ...rest], env) && isFine;
}
process.exitCode = isFine ? 0 : 1;
