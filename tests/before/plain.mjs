// What every command wrote before its outputs said where they are from: SHA-256 of each, in plain.json. `node tests/before/plain.mjs`
// writes them anew without what was added since, and names those that differ; `--freeze` keeps what there is.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const here = path.dirname(fileURLToPath(import.meta.url));
const cli = path.resolve(here, '../../src/cli/shapeflight.mjs');
const kept = path.join(here, 'plain.json');
const dir = mkdtempSync(path.join(tmpdir(), 'plain-'));

const grid = ['--x', 'takeoff.h.z', '--y', 'takeoff.speedUp', '--grid', '3x3', '--jobs', '1'];
const calls = [
  ...['back-straight-full', 'giant-double-straight', 'trampoline-jump-tuck-full#2'].flatMap((skill) => [
    ['fly', skill, '--rate', '20', '--frames', 'frames.csv', '--summary', 'summary.json'],
    ['body', skill.split('#')[0], '--mjcf', 'body.xml'],
  ]),
  ['fly', 'trampoline-jump-tuck-full', '--summary', 'chain.json'],
  ['margin', 'back-tuck', '--samples', '20', '--jobs', '1', '--csv', 'samples.csv', '--json', 'margin.json'],
  ['map', 'back-tuck', ...grid, '--csv', 'map.csv', '--json', 'map.json'],
  [
    'solve',
    'back-tuck',
    '--vary',
    'takeoff.h.z',
    '--tries',
    '10',
    '--fits',
    '2',
    '--json',
    'solve.json',
    '--out',
    'skill.json',
  ],
  ['sheet', 'energy-of-spin', '--skill', 'back-tuck', '--csv', 'sheet.csv', '--page', 'sheet.html'],
  ['export', 'back-tuck', '--as', '1', '--out', 'one.json'],
];

/** An output without what says where it is from, its name and version where it had none. */
function plain(name, text) {
  if (name.endsWith('.csv')) return text.replace(/^(#[^\n]*\n)+/, '');
  if (name.endsWith('.xml')) return text.replace(/ {2}<custom>\n[\s\S]*?<\/custom>\n/, '');
  if (name.endsWith('.html')) return text.replace(/<p class="small origin">[^\n]*\n/, '');
  if (!name.endsWith('.json')) return text;
  const { provenance, ...file } = JSON.parse(text);
  if (name === 'solve.json') {
    delete file.format;
    delete file.version;
  }
  // the map is one line, every other indented
  return `${JSON.stringify(file, null, name === 'map.json' ? 0 : 2)}\n`;
}

const found = {};
try {
  for (const args of calls) {
    const id = args.slice(0, 2).join(' ');
    const stdout = execFileSync(process.execPath, [cli, ...args], {
      cwd: dir,
      maxBuffer: 1e8,
      stdio: ['ignore', 'pipe', 2],
    });
    found[`${id} stdout`] = stdout.toString();
    for (const name of args.filter((a) => /\.(csv|json|xml|html)$/.test(a)))
      found[`${id} ${name}`] = plain(name, readFileSync(path.join(dir, name), 'utf8'));
  }
} finally {
  rmSync(dir, { recursive: true, force: true });
}
const digests = Object.fromEntries(
  Object.entries(found).map(([id, text]) => [id, createHash('sha256').update(text).digest('hex')]),
);
if (process.argv.includes('--freeze')) writeFileSync(kept, `${JSON.stringify(digests, null, 2)}\n`);
else {
  const before = JSON.parse(readFileSync(kept, 'utf8'));
  const other = Object.keys({ ...before, ...digests }).filter((id) => before[id] !== digests[id]);
  console.log(other.length === 0 ? `${Object.keys(digests).length} outputs as before` : `differ: ${other.join(', ')}`);
  process.exitCode = other.length === 0 ? 0 : 1;
}
