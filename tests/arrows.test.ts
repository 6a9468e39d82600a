// The borders of the house, read from the code. A border is moved in tests/arrows/rules.ts, with its reason.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { findSources, parseSource, readSource } from './arrows/graph.ts';
import { type Break, checkEdge, checkPlace, findCycles, rooms } from './arrows/rules.ts';

const root = path.resolve(import.meta.dirname, '..');
const lookTwiceLines = 300;
const files = findSources(root, ['sim', 'src']).map((file) => readSource(root, file));
const edges = files.flatMap((file) => file.edges);
const say = (breaks: (Break | null)[]) => breaks.filter((b) => b !== null).map((b) => `${b.where} -- ${b.reason}`);

describe('the house', () => {
  test('the graph was read: there are files, and imports between them', () => {
    expect(files.length).toBeGreaterThan(5);
    expect(edges.length).toBeGreaterThan(5);
  });

  test('every relative import names a file that exists, with its extension', () => {
    const own = edges.filter((edge) => /^(sim|src|presets|tests|docs)\//.test(edge.to));
    expect(own.filter((e) => !existsSync(path.join(root, e.to))).map((e) => `${e.from}:${e.line} ${e.to}`)).toEqual([]);
  });

  test('every import follows an arrow', () => expect(say(edges.map(checkEdge))).toEqual([]));
  test('no circle of imports, types included', () => expect(findCycles(edges)).toEqual([]));
  test('no default export, no any, no utils, JSX and impurity in their places', () =>
    expect(say(files.flatMap(checkPlace))).toEqual([]));

  test('swing and push are launched without the engine of the landing', () => {
    const reached = new Set(['sim/contact/start-room.ts']);
    for (const from of reached) for (const e of edges) if (e.from === from && !e.isType) reached.add(e.to);
    expect(reached).toContain('sim/contact/swing-stepper.ts');
    expect(reached).not.toContain('sim/contact/planck.ts');
    expect([...reached].filter((to) => to.startsWith('planck'))).toEqual([]);
  });

  test('the arrows between rooms have no circle themselves', () => {
    const arrows = Object.entries(rooms).flatMap(([from, room]) =>
      [...room.values, ...(room.types ?? [])].map((to) => ({ from, to, isType: false, line: 0 })),
    );
    expect(findCycles(arrows)).toEqual([]);
  });

  test('long files are looked at twice (a list, not a failure)', () => {
    const long = files.filter((file) => file.lines > lookTwiceLines);
    if (long.length > 0)
      console.warn(`over ${lookTwiceLines} lines: ${long.map((f) => `${f.path} ${f.lines}`).join(', ')}`);
  });
});

describe('the check itself can fail', () => {
  const broken = (file: string, text: string) => {
    const source = parseSource(file, text);
    return say([...source.edges.map(checkEdge), ...checkPlace(source)]);
  };

  test.each([
    ['sim/math/vec3.ts', "import type { Body } from '../body/body.ts';"],
    ['sim/measure/words.ts', "import { fly } from '../flight/flight.ts';"],
    ['sim/skill/skill.ts', "import { swing } from '../contact/swing.ts';"],
    ['sim/files/read.ts', "import { fly } from '../flight/flight.ts';"],
    ['sim/search/solve.ts', "export { fly } from '../flight/flight.ts';"],
    ['sim/flight/flight.ts', "const late = await import('../contact/swing.ts');"],
    ['sim/flight/flight.ts', "import { World } from 'planck-js';"],
    ['sim/skill/skill.ts', "import { unit } from 'mathjs/number';"],
    ['sim/files/read.ts', "import { readFileSync } from 'node:fs';"],
    ['src/app/layout/stage/stage.tsx', "import { Graphics } from 'pixi.js';"],
    ['src/features/pose/hand.ts', "import { fly } from '../../../sim/index.ts';"],
    ['src/features/pose/hand.ts', "import { makeEngine } from '../../engine/engine.ts';"],
    ['src/features/pose/hand.ts', "import { shapeTexts } from '../ruler/words.ts';"],
    ['src/features/pose/hand.ts', "import type { LaneList } from '../joints/lane-list.ts';"],
    ['src/features/pose/hand.ts', "import { Ground } from '../../app/layout/ground.tsx';"],
    ['src/features/lost/view.tsx', "import { For } from 'solid-js';"],
    ['src/app/page.ts', "import { joints } from '../features/joints/words.ts';"],
    ['src/app/page.ts', "import { bar } from './layout/bar.tsx';"],
    ['src/app/layout/bar.tsx', "import { fly } from '../../../sim/index.ts';"],
    ['src/ui/drag.ts', "import type { Lane } from '../document/lanes.ts';"],
    ['src/ui/units.ts', "import { texts } from '../app/words.ts';"],
    ['src/pictures/stage.ts', "import type { Page } from '../app/page.ts';"],
    ['src/commands/table.ts', "import { texts } from '../app/words.ts';"],
    ['src/pictures/stage.ts', "import { say } from '../ui/units.ts';"],
    ['src/pictures/stage.ts', "import { createSignal } from 'solid-js';"],
    ['src/app/plot/rows.ts', "import { toShown } from '../../ui/units.ts';"],
    ['src/panels/stage.tsx', "import { For } from 'solid-js';"],
    ['src/scene/figure.ts', "import type { Flight } from '../../sim/flight/flight.ts';"],
    ['src/scene/figure.ts', "type F = import('../render/stage.ts').Stage;"],
    ['src/engine/engine.ts', "new Worker(new URL('../app/worker.ts', import.meta.url));"],
    ['src/jobs/pool.ts', "import { Worker } from 'node:worker_threads';"],
    ['src/jobs/kinds/map-job.ts', "import { makeEngine } from '../../engine/engine.ts';"],
    ['src/app/services.ts', "import { makePool } from '../jobs/pool.ts';"],
    ['src/document/document.tsx', 'export const a = 1;'],
    ['sim/lost.ts', "import { a } from './math/vec3.ts';"],
    ['sim/math/utils.ts', 'export const a = 1;'],
    ['sim/math/vec3.ts', 'export default 1;'],
    ['sim/math/vec3.ts', 'export default function f() {}'],
    ['sim/math/vec3.ts', 'const a = 1; export { a as default };'],
    ['sim/math/vec3.ts', 'export const a = (b: any) => b;'],
    ['sim/flight/flight.ts', 'const a = Math.random();'],
    ['sim/flight/flight.ts', 'const a = performance.now() + Date.now();'],
    ['src/scene/figure.ts', "document.title = 'a';"],
  ])('%s: %s', (file, text) => expect(broken(file, text)).not.toEqual([]));

  test.each([
    ['sim/flight/flight.ts', "import type { Body } from '../body/body.ts'; import { dot } from '../math/vec3.ts';"],
    ['sim/skill/skill.ts', "import { type Swing } from '../contact/swing.ts';"],
    ['sim/contact/swing.ts', "import { World } from 'planck-js';"],
    ['sim/measure/words.ts', 'export function f(a: number) { switch (a) { default: return { window: a, Date: 1 }; } }'],
    ['src/engine/engine.ts', "import { fly } from '../../sim/index.ts';"],
    ['src/app/layout/stage/stage.tsx', "import { For } from 'solid-js'; import './stage.css';"],
    ['src/app/layout/sheets.tsx', "import { ShapeList } from '../../features/ruler/shape-list.tsx';"],
    [
      'src/features/pose/hand.ts',
      "import { useFlight } from '../../app/page.ts'; import { drag } from '../../ui/drag.ts';",
    ],
    ['src/pictures/stage.ts', "import { flightScene } from '../scene/flight-scene.ts';"],
    ['src/app/plot/rows.ts', "import type { UnitSystem } from '../../ui/units.ts';"],
    ['src/app/plot/plot-canvas.tsx', "import { unitSystem } from '../../ui/units.ts';"],
  ])('%s: %s is let through', (file, text) => expect(broken(file, text)).toEqual([]));

  test('a circle through types is found', () => {
    const circle = [
      parseSource('sim/body/a.ts', "import type { B } from './b.ts';"),
      parseSource('sim/body/b.ts', "import type { C } from './c.ts';"),
      parseSource('sim/body/c.ts', "import type { A } from './a.ts';"),
    ];
    expect(findCycles(circle.flatMap((file) => file.edges))).toHaveLength(1);
  });
});
