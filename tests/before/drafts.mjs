// Freezes what an engine makes of the list of drafts, so that a new one can be held against it.
// node tests/before/drafts.mjs OUT CHECKOUT: CHECKOUT is a worktree of the tag before-issue-13, whose engine took a code and nothing of a place.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const here = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const [, , out, from] = process.argv;
const root = path.resolve(from);
const dir = mkdtempSync(path.join(tmpdir(), 'drafts-'));
await build({
  root,
  configFile: false,
  logLevel: 'error',
  ssr: { noExternal: true },
  build: {
    target: 'es2023',
    ssr: true,
    outDir: dir,
    copyPublicDir: false,
    rolldownOptions: { input: { sim: 'sim/index.ts' }, output: { entryFileNames: '[name].mjs' } },
  },
});
const sim = await import(pathToFileURL(path.join(dir, 'sim.mjs')));
const read = (file) => JSON.parse(readFileSync(path.join(root, 'presets', file), 'utf8'));
const shapes = Object.fromEntries(
  Object.entries(read('shapes.json')).map(([id, shape]) => [id, sim.shapeInRadians(shape)]),
);
const list = JSON.parse(readFileSync(path.join(here, 'tests/drafts/list.json'), 'utf8'));
const to = (x, digits) => Number(x.toFixed(digits));
const rows = list.drafts.map(({ text, meaning, direction, athlete, place }) => {
  const id = { text, place, direction, athlete };
  try {
    const spec = sim.draftOfCode(meaning ?? text, direction);
    const { reached, falls, flights } = sim.draftSkill(spec, {
      athlete: sim.readAthlete(read(`athletes/${athlete}.json`)),
      shapes,
    });
    const { somersaults, twists, tilt, duration } = reached;
    return {
      ...id,
      somersaults: to(somersaults, 3),
      twists: to(twists, 3),
      tiltDeg: to((tilt * 180) / Math.PI, 1),
      airTimeS: to(duration, 3),
      falls,
      flights,
    };
  } catch (error) {
    return { ...id, error: error.message };
  }
});
rmSync(dir, { recursive: true });
writeFileSync(path.resolve(out), `${JSON.stringify(rows, null, 2)}\n`);
