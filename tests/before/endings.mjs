// What the command line concludes of every ready skill: its sentence, its cautions, how it lands as filed and on the two default surfaces,
// and its rate under the usual errors. To hold verdicts against what they were before.
// node tests/before/endings.mjs OUT.json [CHECKOUT]: runs the command line of CHECKOUT (this one).
import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const here = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const out = path.resolve(process.argv[2]);
const from = path.resolve(process.argv[3] ?? here);
const run = promisify(execFile);
const folder = path.join(from, 'presets/skills');
const work = mkdtempSync(path.join(tmpdir(), 'endings-'));
const SURFACES = ['competitionMat', 'floor'];
const LINES = /^(Swing|Release|Joints|Contact|Landing|Verdict|Result|Ending) /;

async function call(args) {
  const cli = path.join(from, 'src/cli/shapeflight.mjs');
  const { stdout, stderr, code } = await run(process.execPath, [cli, ...args], { maxBuffer: 1e8 }).then(
    (done) => ({ code: 0, ...done }),
    (error) => ({ code: error.code, stdout: error.stdout, stderr: error.stderr }),
  );
  return code === 0 ? stdout.split('\n') : [`exit ${code}: ${stderr.trim().split('\n').pop()}`];
}

/** Lines of the phases; a line that goes on is joined to the one above it. */
function phaseLines(lines) {
  const found = [];
  let isOn = false;
  for (const line of lines) {
    if (LINES.test(line)) {
      found.push(line.replace(/\s+/g, ' '));
      isOn = true;
    } else if (isOn && /^ {8,}\S/.test(line)) found[found.length - 1] += `; ${line.trim()}`;
    else isOn = false;
  }
  return found;
}

const table = {};
for (const file of readdirSync(folder).sort()) {
  const id = file.replace(/\.json$/, '');
  const skill = JSON.parse(readFileSync(path.join(folder, file), 'utf8'));
  const flown = await call(['fly', id]);
  const row = { sentence: flown[1] ?? flown[0] };
  const cautions = flown.findIndex((line) => line.startsWith('Beyond'));
  row.cautions = cautions < 0 ? [] : flown.slice(cautions + 1, flown.indexOf('', cautions)).map((line) => line.trim());
  row.phases = phaseLines(flown);
  const last = skill.phases[skill.phases.length - 1];
  for (const mat of SURFACES) {
    if (last.kind === 'landing') break;
    const copy = { ...skill, phases: [...skill.phases, { kind: 'landing', mat }] };
    const at = path.join(work, `${id}-${mat}.json`);
    writeFileSync(at, JSON.stringify(copy));
    const landed = await call(['fly', at]);
    const lines = phaseLines(landed).filter((line) => /^(Landing|Verdict|Result|Ending)/.test(line));
    row[mat] = lines.length > 0 ? lines : landed.slice(0, 2);
  }
  const margin = await call(['margin', id, '--samples', '60', '--jobs', '1']);
  row.margin = margin.filter((line) => /^All together|^exit/.test(line));
  table[id] = row;
  console.log(id, '|', row.sentence);
}
writeFileSync(out, `${JSON.stringify(table, null, 1)}\n`);
