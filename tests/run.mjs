// npm test: installs what is missing, runs every check whatever the others say, and ends with the one line
// "N passed, N failed". With --whole (npm run test:all) large corpora run whole (tests/corpus.ts). Each static check and the build count as one; tests count one each.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensureInstalled, root } from '../src/cli/install.mjs';
import { ensureBrowser } from './browser/find-browser.mjs';
import { countPlaywright, countVitest } from './run-counts.mjs';

const minute = 60_000;
const graceMs = 5_000;
const reports = mkdtempSync(path.join(tmpdir(), 'shapeflight-test-'));
const bin = (file) => path.join(root, 'node_modules', file);
const total = { passed: 0, failed: 0 };
const table = [];

const running = new Set();

function signal(child, name) {
  try {
    process.kill(-child.pid, name);
  } catch {
    child.kill(name);
  }
}

/** Asks first: Playwright ends the server and the browsers it started. */
function stop(children, then = () => undefined) {
  for (const child of children) signal(child, 'SIGTERM');
  setTimeout(() => {
    for (const child of children) if (running.has(child)) signal(child, 'SIGKILL');
    then();
  }, graceMs);
}

/** With `sink`, what the child says is kept there, to be said in one piece. */
function run(file, args, { env = {}, limit = 5 * minute, sink = null } = {}) {
  return new Promise((resolve) => {
    // a group of its own, so that a step over its limit goes with all its children
    const child = spawn(process.execPath, [file, ...args], {
      cwd: root,
      stdio: sink ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, ...env },
      detached: process.platform !== 'win32',
    });
    running.add(child);
    for (const stream of sink ? [child.stdout, child.stderr] : []) stream.on('data', (piece) => sink.push(piece));
    const timer = setTimeout(() => {
      console.error(`Stopped after ${limit / minute} minutes.`);
      stop([child]);
    }, limit);
    const end = (code) => {
      clearTimeout(timer);
      running.delete(child);
      resolve(code ?? 1);
    };
    child.on('error', (error) => {
      console.error(error.message);
      end(1);
    });
    child.on('close', end);
  });
}

async function step(name, work, sink = null) {
  if (!sink) console.log(`\n--- ${name}`);
  const start = performance.now();
  let count;
  try {
    count = await work();
  } catch (error) {
    console.error(error.message);
    count = { passed: 0, failed: 1 };
  }
  if (sink) process.stdout.write(Buffer.concat([Buffer.from(`\n--- ${name}\n`), ...sink]));
  total.passed += count.passed;
  total.failed += count.failed;
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const skipped = count.skipped ? `, ${count.skipped} skipped` : '';
  table.push(`${name.padEnd(18)} ${count.passed} passed, ${count.failed} failed${skipped} (${seconds} s)`);
  return count.failed === 0;
}

const asOne = async (...call) => ((await run(...call)) === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 });

/** One check beside others: it says what it has to say when it ends. */
function aside(name, file, args) {
  const sink = [];
  return step(name, () => asOne(file, args, { sink }), sink);
}

/** The checker of types uses one processor; the two that read form, one after the other, the next. The page is built beside them. */
async function checkSources() {
  const form = async () => {
    await aside('lint and format', bin('@biomejs/biome/bin/biome'), [
      'ci',
      '--error-on-warnings',
      `--colors=${process.stdout.isTTY ? 'force' : 'off'}`,
      '.',
    ]);
    await aside('reactivity lint', bin('eslint/bin/eslint.js'), ['--max-warnings', '0', '.']);
    return aside('build', 'src/cli/build-app.mjs', ['--always']);
  };
  const [built] = await Promise.all([form(), aside('types', bin('typescript/bin/tsc'), ['--pretty', 'false'])]);
  return built;
}

const whole = process.argv.includes('--whole') ? { SHAPEFLIGHT_WHOLE: '1' } : {};

async function unit() {
  const report = path.join(reports, 'unit.json');
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  return countVitest(report, await run(bin('vitest/vitest.mjs'), args, { env: whole, limit: 20 * minute }));
}

async function browser() {
  const report = path.join(reports, 'browser.json');
  const env = { ...whole, SHAPEFLIGHT_BROWSER: await ensureBrowser(), PLAYWRIGHT_JSON_OUTPUT_NAME: report };
  const args = ['test', '-c', 'tests/playwright.config.ts', '--reporter=list,json'];
  return countPlaywright(report, await run(bin('@playwright/test/cli.js'), args, { env, limit: 40 * minute }));
}

async function main() {
  const ready = await step('install', () => {
    ensureInstalled();
    return { passed: 0, failed: 0 };
  });
  if (ready) {
    const built = await checkSources();
    await step('unit', unit);
    // an old dist/ must not answer for sources that do not build
    await step('browser', () => (built ? browser() : Promise.reject(new Error('No browser test: the build failed.'))));
  }
  rmSync(reports, { recursive: true, force: true });
  if (total.passed + total.failed === 0) total.failed = 1;
  console.log(`\n${table.join('\n')}\n`);
  // through the callback: a pipe that is slow must still get the last line
  process.stdout.write(`${total.passed} passed, ${total.failed} failed\n`, () => process.exit(total.failed ? 1 : 0));
}

for (const name of ['SIGINT', 'SIGTERM']) process.once(name, () => stop(running, () => process.exit(1)));
await main();
