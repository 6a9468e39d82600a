// npm run fuzz -- --for 60s [--seed N] [--kind skills] [--case N]: damaged inputs of new seeds under the laws of tests/reliability/corpus, for as long as is asked.
// Each is run on a thread with a limit: what does not end is found too. What is found is written to fuzz-out; --seed and --case run one again.
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { build } from 'vite';
import { ensureInstalled, root } from '../../src/cli/install.mjs';

const out = path.join(root, 'tests/reliability/fuzz-out');
/** s; a flight at the limit of its steps takes some, on a slow machine more */
const LONGEST = 180;
const SAY_EVERY = 5000;
const usage = 'npm run fuzz -- [--for 60s|10m|2h] [--seed N] [--kind NAME] [--case N]';

function fail(why) {
  console.error(`fuzz: ${why}\n${usage}`);
  process.exit(2);
}

function readArgs() {
  let values;
  try {
    const text = { type: 'string' };
    ({ values } = parseArgs({ options: { for: text, seed: text, kind: text, case: text } }));
  } catch (error) {
    fail(error.message);
  }
  const whole = (name) => {
    if (values[name] === undefined) return undefined;
    if (!/^\d{1,9}$/.test(values[name])) fail(`--${name} ${values[name]}: a whole number from 0 to 999999999`);
    return Number(values[name]);
  };
  const [, count, unit] = /^(\d{1,6})([smh])$/.exec(values.for ?? '60s') ?? [];
  if (count === undefined) fail(`--for ${values.for}: a time as 60s, 10m or 2h`);
  return {
    ms: Number(count) * { s: 1000, m: 60_000, h: 3_600_000 }[unit],
    seed: whole('seed') ?? Date.now() % 1e9,
    only: whole('case'),
    kind: values.kind,
  };
}

async function bundle() {
  const folder = mkdtempSync(path.join(tmpdir(), 'shapeflight-fuzz-'));
  symlinkSync(path.join(root, 'node_modules'), path.join(folder, 'node_modules'));
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      target: 'es2023',
      ssr: true,
      outDir: folder,
      emptyOutDir: false,
      copyPublicDir: false,
      rolldownOptions: {
        input: { thread: 'tests/reliability/fuzz-thread.ts' },
        output: { entryFileNames: '[name].mjs' },
      },
    },
  });
  return folder;
}

ensureInstalled();
const { ms, seed, only, kind } = readArgs();
const folder = await bundle();
const started = performance.now();
const counts = new Map();
const found = [];
/** the longest so far: [s, kind, number, what] */
let slowest = [0];
let isOver = false;
let current;

function keep({ name, number, input, why }) {
  mkdirSync(out, { recursive: true });
  const stem = `${name}-${seed}-${number}`;
  if (input) writeFileSync(path.join(out, `${stem}-${input.file}`), input.bytes);
  const again = `npm run fuzz -- --seed ${seed} --kind ${name} --case ${number}`;
  writeFileSync(path.join(out, `${stem}.txt`), `${input?.what ?? ''}\n${why}\n${again}\n`);
  found.push(stem);
  console.log(`\nFOUND ${name} ${number}: ${input?.what ?? ''}\n  ${why}\n  ${again}`);
}

function progress() {
  const seconds = ((performance.now() - started) / 1000).toFixed(0);
  const kinds = [...counts].map(([name, { read, refused }]) => `${name} ${read + refused} (${read} read)`).join(', ');
  console.log(`${seconds} s: ${kinds || 'beginning'}; found ${found.length}`);
}

/** One thread until the time is over or it does not answer. Resolves with the case to go on with. */
function runThread(from) {
  return new Promise((resolve) => {
    const thread = new Worker(path.join(folder, 'thread.mjs'), { workerData: { seed, kind, from, only } });
    let next = from;
    let watch;
    let isEnded = false;
    let begun = 0;
    const end = (to) => {
      isEnded = true;
      clearTimeout(watch);
      void thread.terminate().then(() => resolve(to));
    };
    const await_ = (name, number, input) => {
      clearTimeout(watch);
      watch = setTimeout(() => {
        keep({ name, number, input, why: `it did not end within ${LONGEST} s` });
        end(only === undefined ? number + 1 : undefined);
      }, LONGEST * 1000);
    };
    current = () => end(undefined);
    thread.on('message', (message) => {
      // what it had said already as it was stopped
      if (isEnded) return;
      if (message.kind === 'begin') {
        begun = performance.now();
        await_(message.name, message.number, message.input);
      }
      if (message.kind === 'end') {
        const took = (performance.now() - begun) / 1000;
        if (took > slowest[0]) slowest = [took, message.name, message.number];
        const count = counts.get(message.name) ?? { read: 0, refused: 0 };
        counts.set(message.name, count);
        if (message.why) keep(message);
        else count[message.outcome]++;
        next = message.number + 1;
        if (isOver || performance.now() - started > ms) end(undefined);
      }
      if (message.kind === 'done') end(undefined);
      if (message.kind === 'none') {
        clearTimeout(watch);
        void thread.terminate();
        rmSync(folder, { recursive: true, force: true });
        fail(`--kind ${kind}: one of ${message.names.join(', ')}`);
      }
    });
    thread.on('error', (error) => {
      keep({ name: kind ?? 'any', number: next, why: `the thread ended: ${error.message}` });
      end(only === undefined ? next + 1 : undefined);
    });
  });
}

const timer = setInterval(progress, SAY_EVERY);
process.once('SIGINT', () => {
  isOver = true;
  current?.();
});
console.log(`seed ${seed}`);
let from = only ?? 0;
while (from !== undefined && !isOver && performance.now() - started < ms) from = await runThread(from);
clearInterval(timer);
rmSync(folder, { recursive: true, force: true });
progress();
if (slowest.length > 1)
  console.log(`slowest: ${slowest[0].toFixed(1)} s, --seed ${seed} --kind ${slowest[1]} --case ${slowest[2]}`);
console.log(found.length > 0 ? `${found.length} found, in tests/reliability/fuzz-out` : 'nothing found');
process.exitCode = found.length > 0 ? 1 : 0;
