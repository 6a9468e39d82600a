// The package as another program gets it: packed, unpacked into an empty folder with what it depends on, imported, typed, bundled for a browser, run.
import { execFileSync, spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import pkg from '../../package.json' with { type: 'json' };
import * as door from '../../sim/index.ts';
import { isWhole } from '../corpus.ts';

const root = path.resolve(import.meta.dirname, '../..');
const home = mkdtempSync(path.join(tmpdir(), 'shapeflight-package-'));
const installed = path.join(home, 'node_modules/shapeflight');
const node = (args: string[], env = {}) =>
  spawnSync(process.execPath, args, { cwd: home, encoding: 'utf8', env: { ...process.env, ...env } });
const tool = (file: string): string => path.join(root, 'node_modules', file);

/** Its dependencies and theirs, as an installer would bring them. */
function linkDependencies(): void {
  const wanted = Object.keys(pkg.dependencies);
  for (let name = wanted.pop(); name !== undefined; name = wanted.pop()) {
    const to = path.join(home, 'node_modules', name);
    if (existsSync(to)) continue;
    mkdirSync(path.dirname(to), { recursive: true });
    symlinkSync(tool(name), to, 'dir');
    const manifest = JSON.parse(readFileSync(tool(`${name}/package.json`), 'utf8'));
    wanted.push(...Object.keys(manifest.dependencies ?? {}));
  }
}

beforeAll(() => {
  // npm test checks these types as a step of its own
  const env = isWhole ? process.env : { ...process.env, SHAPEFLIGHT_TYPES_CHECKED: '1' };
  const options = { cwd: root, encoding: 'utf8' as const, env };
  const npm = process.env.npm_execpath;
  const pack = ['pack', '--json', '--pack-destination', home];
  const out = npm?.endsWith('.js')
    ? execFileSync(process.execPath, [npm, ...pack], options)
    : execFileSync('npm', pack, { ...options, shell: process.platform === 'win32' });
  const [{ filename }] = JSON.parse(out.slice(out.indexOf('[')));
  mkdirSync(installed, { recursive: true });
  execFileSync('tar', ['-xzf', path.join(home, filename), '--strip-components', '1', '-C', installed]);
  linkDependencies();
  writeFileSync(path.join(home, 'package.json'), JSON.stringify({ name: 'other', type: 'module', private: true }));
}, 120_000);

test('holds library, types, presets and command, and nothing of the page or of the tests', () => {
  const files = readdirSync(installed, { recursive: true, encoding: 'utf8' }).map((name) => name.replaceAll('\\', '/'));
  const tops = [...new Set(files.map((name) => name.split('/')[0]))].sort();
  expect(tops).toEqual(['CITATION.cff', 'LICENSE', 'README.md', 'dist-package', 'package.json', 'presets', 'src']);
  expect(files.filter((name) => name.startsWith('src/') && /\.\w+$/.test(name))).toEqual(['src/cli/shapeflight.mjs']);
  expect(files.filter((name) => /\.(html|css|tsx|png|woff2)$|pixi|solid-js/.test(name))).toEqual([]);
  expect(files).toContain('presets/skills/back-tuck.json');
  expect(pkg).not.toHaveProperty('private');
});

test('has the names of the door, and the rooms that come late', () => {
  const code = `const m = await import('shapeflight'); const p = await import('shapeflight/presets');
    const contact = await m.loadContact(); const estimate = await m.loadEstimate();
    console.log(JSON.stringify({ names: Object.keys(m), presets: Object.keys(p), contact: Object.keys(contact).length, estimate: Object.keys(estimate).length }));`;
  const { stdout, stderr } = node(['--input-type=module', '-e', code]);
  expect(stderr).toBe('');
  const found = JSON.parse(stdout);
  expect(found.names.sort()).toEqual(Object.keys(door).sort());
  expect(found.presets).toEqual(expect.arrayContaining(['athletes', 'shapes', 'skills', 'chains']));
  expect(found.contact).toBeGreaterThan(0);
  expect(found.estimate).toBeGreaterThan(0);
});

test('the example runs in Node', () => {
  copyFileSync(path.join(root, 'docs/examples/fly.mjs'), path.join(home, 'fly.mjs'));
  const { status, stdout, stderr } = node(['fly.mjs']);
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toContain('Back somersault, tucked');
  expect(stdout).toMatch(/0\.9\d+ rev backward/);
});

describe('types', () => {
  test.each([['nodenext', 'nodenext'], ...(isWhole ? [['esnext', 'bundler']] : [])])(
    'compile strictly with module %s, resolution %s, and are not any',
    (module, moduleResolution) => {
      writeFileSync(
        path.join(home, 'use.ts'),
        `import { calcFrames, flySkill, type Flight, type Frames, loadContact, type SkillFile } from 'shapeflight';
import { skills } from 'shapeflight/presets';
const file: SkillFile = skills['back-tuck'];
export const rows = (flight: Flight): Frames => calcFrames(flight, [0, 1]);
export const title: string = file.title;
export const room = loadContact();
// @ts-expect-error a flight is no text
calcFrames('no flight', [0]);
// @ts-expect-error it wants a launched skill
flySkill(3);
`,
      );
      const options = [
        '--noEmit',
        '--strict',
        '--target',
        'es2023',
        '--module',
        module,
        '--moduleResolution',
        moduleResolution,
      ];
      const { stdout } = node([tool('typescript/bin/tsc'), ...options, '--skipLibCheck', 'use.ts']);
      expect(stdout).toBe('');
    },
  );
});

test('is bundled for a browser without anything of Node', () => {
  writeFileSync(
    path.join(home, 'page.js'),
    "import * as all from 'shapeflight'; globalThis.all = all; all.loadContact(); all.loadEstimate();",
  );
  const code = `import { build } from ${JSON.stringify(`file://${tool('vite/dist/node/index.js')}`)};
    await build({ root: ${JSON.stringify(home)}, configFile: false, logLevel: 'error', build: { target: 'es2023', minify: false, outDir: 'page', rolldownOptions: { input: 'page.js' } } });`;
  const { status, stderr } = node(['--input-type=module', '-e', code]);
  expect([status, stderr]).toEqual([0, '']);
  const made = readdirSync(path.join(home, 'page'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.js'),
  );
  const text = made.map((name) => readFileSync(path.join(home, 'page', name), 'utf8')).join('\n');
  expect(text.length).toBeGreaterThan(500_000);
  expect(text).not.toMatch(/(?:from|import\(|require\()\s*["'](?:node:|fs|path|url|crypto)/);
  expect(text).not.toMatch(/__vite-browser-external|process\.getBuiltinModule|externalized for browser/);
});

test('the command runs, threads and all, from the package', () => {
  const command = path.join(installed, 'src/cli/shapeflight.mjs');
  expect(node([command, '--version']).stdout).toBe(`${pkg.version}\n`);
  const margin = ['margin', 'back-tuck', '--samples', '4', '--no-bars', '--jobs', '2'];
  const { status, stderr, stdout } = node([command, ...margin]);
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toContain('4 samples');
  expect(pkg.bin.shapeflight).toBe('src/cli/shapeflight.mjs');
});

test('the example runs in Python, by the shell', (context) => {
  if (spawnSync('python3', ['--version']).status !== 0) return context.skip('there is no python3 on this machine');
  const command = path.join(installed, 'src/cli/shapeflight.mjs');
  const script = path.join(root, 'docs/examples/fly.py');
  const { status, stdout, stderr } = spawnSync('python3', [script, process.execPath, command], {
    cwd: home,
    encoding: 'utf8',
  });
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(new RegExp(`^Shapeflight ${pkg.version} \\d+ rows; highest \\d\\.\\d+ m\\n$`));
});
