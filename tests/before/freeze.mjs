// Freezes what the command line says of every preset, so that a rebuilt engine can be held against what it said before.
// node tests/before/freeze.mjs OUT [CHECKOUT]: runs the command line of CHECKOUT (this one) and writes one folder a preset.
import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const here = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const out = path.resolve(process.argv[2]);
const from = path.resolve(process.argv[3] ?? here);
const run = promisify(execFile);
const names = (folder) => readdirSync(path.join(from, 'presets', folder)).map((file) => file.replace(/\.json$/, ''));
const sheets = names('sheets');

async function call(args, file) {
  const cli = path.join(from, 'src/cli/shapeflight.mjs');
  const { code, stdout, stderr } = await run(process.execPath, [cli, ...args], { maxBuffer: 1e8 }).then(
    (done) => ({ code: 0, ...done }),
    (error) => ({ code: error.code, stdout: error.stdout, stderr: error.stderr }),
  );
  writeFileSync(file, code === 0 ? stdout : `${stdout}exit ${code}: ${stderr}`);
}

for (const skill of names('skills')) {
  const dir = path.join(out, skill);
  rmSync(dir, { recursive: true, force: true });
  mkdirSync(dir, { recursive: true });
  const at = (name) => path.join(dir, name);
  await call(['fly', skill, '--summary', at('fly.json')], at('fly.txt'));
  await call(['margin', skill, '--samples', '60', '--jobs', '1', '--json', at('margin.json')], at('margin.txt'));
  const grid = ['--x', 'takeoff.h.z', '--y', 'takeoff.speedUp', '--grid', '5x5', '--jobs', '1'];
  await call(['map', skill, ...grid, '--json', at('map.json')], at('map.txt'));
  const vary = ['--vary', 'takeoff.h.z', '--tries', '20', '--fits', '4'];
  await call(['solve', skill, ...vary, '--json', at('solve.json')], at('solve.txt'));
  for (const sheet of sheets) await call(['sheet', sheet, '--skill', skill], at(`sheet-${sheet}.txt`));
  console.log(skill);
}
