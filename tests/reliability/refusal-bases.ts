/** Sound files to make wrong, and how page and command line read each kind. */
import { athletes, shapes, skills } from '../../presets/index.ts';
import { buildChain, parseChain, parseMap, parseSheet, parseWorksheet } from '../../sim/index.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { GONE, type Refusal } from './refusal.ts';

const engine = makeEngine({ athletes, shapes });
const still = skills['back-tuck'];

const sheet = { format: 'shapeflight-sheet', version: 1, title: 'Air', lines: ['a = 1 s'] };
const rod = { massKg: 1, centreM: [0, 0, 0], inertiaKgM2: [1, 1, 1, 0, 0, 0] };

export const bases: Readonly<Record<string, unknown>> = {
  tuck: still,
  bar: skills['giant-double-straight'],
  vault: skills['vault-handspring-half'],
  human: { kind: 'human', name: 'Mara Quill', sex: 'female', massKg: 52, statureM: 1.6 },
  tree: {
    kind: 'tree',
    name: 'Rods',
    segments: [
      { name: 'base', ...rod },
      { name: 'arm', parent: 'base', hinges: [{ name: 'bend', axis: [0, 0, 1] }], ...rod },
    ],
  },
  sheet,
  ws: {
    format: 'shapeflight-worksheet',
    version: 1,
    title: 'Air',
    order: 'free',
    sheet: { title: '', lines: [] },
    questions: [{ kind: 'number', ask: 'How long?', unit: 's', simulated: '{air time}' }],
    skill: still,
  },
  map: {
    format: 'shapeflight-recording-map',
    version: 1,
    joints: [{ from: 'Hips', segment: 'pelvis' }],
    points: [{ from: 'LASI', segment: 'pelvis' }],
    columns: [{ from: 'k', means: { kind: 'angle', angle: 'kneeFlexionL', unit: 'deg' } }],
  },
};

const readSkill = (json: unknown): unknown => buildChain(parseChain(engine.readFile(json), { athletes, shapes }));

/** As the page reads what is given it; the command line in its place for each kind. */
export const readers: Readonly<
  Record<string, { page(json: unknown): unknown; shell(file: string): readonly string[] }>
> = {
  skill: { page: readSkill, shell: (file) => ['export', file, '--as', '1', '--out', `${file}.out`] },
  athlete: { page: engine.readAthlete, shell: (file) => ['body', file] },
  sheet: { page: parseSheet, shell: (file) => ['sheet', file] },
  ws: { page: parseWorksheet, shell: (file) => ['class', file] },
  map: { page: parseMap, shell: () => [] },
};
export const kindOf = (base: string): keyof typeof readers =>
  base === 'human' || base === 'tree' ? 'athlete' : Object.hasOwn(readers, base) ? base : 'skill';

/** A text "RAW 1e400" is put in as it is. */
export function textOf([base, path, value]: Refusal): string {
  if (base === 'text') return String(value);
  if (path === '') return JSON.stringify(value);
  const whole = structuredClone(bases[base]);
  const keys = path.split('/');
  const last = keys.pop() ?? '';
  let at = whole as Record<string, unknown>;
  for (const key of keys) at = at[key] as Record<string, unknown>;
  if (value === GONE) delete at[last];
  // "__proto__" would be set otherwise, and not be there
  else Object.defineProperty(at, last, { value, enumerable: true, configurable: true });
  return JSON.stringify(whole, null, 2).replace(/"RAW ([^"]*)"/, '$1');
}
export const readJson = engine.readJson;
