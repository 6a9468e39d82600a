// Which room may import which, and why. Data first: an arrow is changed here, with its reason.
import type { Edge, SourceFile } from './graph.ts';

export interface Break {
  where: string;
  reason: string;
}

interface Room {
  /** rooms whose values (and types) may be imported; math and the own room always may */
  values: string[];
  /** rooms of which only types may be imported */
  types?: string[];
  reason: string;
}

const physicsRooms = 'body schedule motion flight contact measure skill search'.split(' ').map((name) => `sim/${name}`);
const paperRooms = [
  'sim/notation',
  'sim/files',
  'sim/estimate',
  'sim/handing',
  'sim/worksheet',
  'sim/recording',
  'sim/fit',
  'sim/filming',
  'sim/clip',
];

const sources = ['sim/motion', 'sim/body', 'sim/schedule'];

// what a verdict is called: texts made of plain data, the same on a shell and on a page
const words = 'sim/words';
const features =
  'takeoff ruler joints instant shelf print pose compare why air ask estimate fix try read hand class film'.split(' ');
const feature = {
  values: ['src/app', 'src/document', 'src/commands', 'src/ui', words],
  types: 'engine jobs scene pictures moving-picture clip paper'
    .split(' ')
    .map((name) => `src/${name}`)
    .concat('sim/index'),
  reason: 'features do not import each other: what two need lies in src/app or src/ui',
};

export const rooms: Record<string, Room> = {
  'sim/math': {
    values: [],
    reason:
      'math knows vectors, units, anchored times, names of sides and phases by their kind, and nothing of physics',
  },
  'sim/body': { values: [], reason: 'a body is data; it needs math alone' },
  'sim/schedule': {
    values: [],
    // a compiled schedule fills the hinges of one body, in that body's order
    types: ['sim/body'],
    reason: 'a schedule is a function of time for the joints a body names',
  },
  'sim/motion': { values: ['sim/body', 'sim/schedule'], reason: 'motion joins body and schedule, and knows no flight' },
  'sim/flight': { values: sources, reason: 'flight knows motion; it knows neither swing nor landing nor measures' },
  'sim/contact': { values: sources, reason: 'contact knows motion; it knows no flight' },
  'sim/measure': {
    values: sources,
    types: ['sim/flight'],
    reason: 'measures read a flight that is handed to them; they fly nothing',
  },
  'sim/skill': {
    values: ['sim/flight', 'sim/measure', ...sources],
    types: ['sim/contact'],
    reason: 'a skill composes the phases; contact is passed in, so that the page starts without its engine',
  },
  'sim/search': {
    values: ['sim/skill', 'sim/measure'],
    // a skill's parts have the types of the rooms beneath
    types: ['sim/flight', ...sources],
    reason: 'search flies whole skills and measures them; it reaches for nothing beneath',
  },
  'sim/recording': {
    values: [...sources, 'sim/measure', 'sim/files'],
    types: ['sim/flight'],
    reason: 'a recording is read, mapped and measured; nothing is flown',
  },
  'sim/fit': {
    values: ['sim/recording', 'sim/skill', 'sim/measure', 'sim/flight', 'sim/files', ...sources],
    reason: 'a fit flies what was recorded, and sets the flight beside it',
  },
  'sim/filming': {
    values: ['sim/fit', 'sim/recording', 'sim/skill', 'sim/measure', 'sim/flight', 'sim/files', ...sources],
    reason: 'a plan looks at a flight through a camera, and reads it back as a recording',
  },
  'sim/clip': {
    values: ['sim/filming', 'sim/fit', 'sim/skill', 'sim/measure', 'sim/flight', 'sim/files', ...sources],
    reason: 'instants and poses that were marked in a clip become times, a camera and a skill; pictures are not here',
  },
  'sim/estimate': {
    values: [],
    types: [...physicsRooms, 'sim/files'],
    reason: 'an estimate names results, and computes without them',
  },
  'sim/notation': { values: [], types: physicsRooms, reason: 'a code is read and written without any physics' },
  'sim/files': {
    values: [],
    types: [...physicsRooms, 'sim/notation'],
    reason: 'files turn text into data; they run nothing',
  },
  'sim/handing': {
    values: ['sim/files', 'sim/body'],
    reason: 'what is handed on is a file: packed, unpacked and checked, never flown',
  },
  'sim/worksheet': {
    values: ['sim/files'],
    types: ['sim/estimate'],
    reason: 'a worksheet is a file: locks and tables of it, with values that are handed in',
  },
  [words]: {
    values: [],
    types: [...physicsRooms, 'sim/worksheet', 'sim/recording', 'sim/fit', 'sim/filming', 'sim/clip'],
    reason: 'words are made of plain data; they compute nothing',
  },
  'sim/index': {
    values: [words, ...physicsRooms, ...paperRooms, 'sim/math'],
    reason: 'the only door opens on every room of sim',
  },

  'src/jobs': {
    values: ['sim/index'],
    reason: 'jobs run calls of sim beside the thread that asks; they show nothing and read no file',
  },
  'src/cli': {
    values: ['sim/index', 'presets', 'src/jobs', 'src/paper'],
    reason: 'the command line is thin over the door of sim, and over what is printed',
  },
  'src/offline': { values: [], reason: 'keeping the built files has nothing to do with what they hold' },
  'src/document': {
    values: ['presets'],
    types: ['sim/index'],
    reason: 'a document is plain data: no physics, no view',
  },
  'src/engine': {
    values: ['sim/index', 'presets', 'src/jobs'],
    types: ['src/document'],
    reason: 'the engine alone calls the physics; it shows nothing',
  },
  'src/scene': {
    values: [],
    types: ['src/document', 'sim/index'],
    reason: 'a scene is a pure list made of a document and a flight',
  },
  'src/render': { values: [], types: ['src/scene'], reason: 'a renderer draws a list and knows not what it means' },
  'src/commands': {
    values: ['src/document'],
    types: ['src/engine', 'sim/index'],
    reason: 'a command edits the document; keys and menus are projections of the table',
  },
  'src/pictures': {
    values: ['src/engine', 'src/scene', 'src/render', 'src/clip', 'src/ui'],
    types: ['src/jobs', 'sim/index'],
    reason: 'pictures join engine, scene, render and the clip under them; who shows them is nothing to them',
  },
  'src/moving-picture': {
    values: ['src/engine', 'src/scene', 'src/render', 'src/pictures', 'src/clip', 'sim/index'],
    reason:
      'a moving picture is pictures in a row: engine, scene and render make them, this room times and writes them, a turn of the page each, as a clip is',
  },
  'src/clip': {
    values: [],
    reason: 'a clip is decoded frame by frame and handed out as pictures; what they show is nothing to it',
  },
  'src/paper': {
    values: ['src/engine', 'src/scene', 'src/pictures', 'sim/index', words],
    reason: 'paper is made of a flight and of words that it is handed: no page, no clock, no file',
  },
  'src/ui': { values: [], reason: 'the kit has no knowledge of a skill' },
  'src/app': {
    values: ['src/document', 'src/commands', 'src/ui', words, 'docs/glossary'],
    types: 'engine jobs scene pictures moving-picture clip paper'
      .split(' ')
      .map((name) => `src/${name}`)
      .concat('sim/index'),
    reason:
      'the app holds what features share; what computes and what draws is handed to it, and it knows no feature; special words are explained from the one glossary',
  },
  ...Object.fromEntries(features.map((name) => [`src/features/${name}`, feature])),
  'src/features/read': {
    ...feature,
    values: [...feature.values, 'docs/glossary', 'docs/lessons'],
    reason: 'lessons and glossary are written once, in the docs, and read beside the bench from there',
  },
  'src/app/layout': {
    values: ['src/app', ...feature.values, ...features.map((name) => `src/features/${name}`)],
    types: feature.types,
    reason: 'a layout puts features in their places, and holds no physics',
  },
  'src/app/main': {
    values: 'document engine pictures moving-picture clip paper offline app app/layout'
      .split(' ')
      .map((name) => `src/${name}`)
      .concat('presets'),
    types: ['sim/index', 'src/jobs'],
    reason: 'the start of the page joins its rooms and holds no physics',
  },
};

/** Packages that only one room may import. */
export const housed: Record<string, string[]> = {
  '@noble/hashes': ['sim/math'],
  'planck-js': ['sim/contact'],
  fflate: ['sim/handing'],
  mathjs: ['sim/estimate'],
  'pixi.js': ['src/render'],
  mediabunny: ['src/moving-picture', 'src/clip'],
  valibot: ['sim/files'],
  '@valibot/to-json-schema': ['sim/files'],
  'idb-keyval': ['src/document'],
};

/** Files beside browser files that run in Node alone. */
const nodeFiles = ['src/jobs/node-port.ts', 'src/jobs/node-entry.ts'];

/** The room of a file, or null for what is neither of sim nor of src nor of presets. */
export function getRoom(file: string): string | null {
  const parts = file.split('/');
  const [top, second, third] = parts;
  if (top === 'presets') return 'presets';
  if (file === 'docs/glossary.md') return 'docs/glossary';
  if (file.startsWith('docs/lessons/')) return 'docs/lessons';
  if (top !== 'sim' && top !== 'src') return null;
  if (file === 'sim/index.ts') return 'sim/index';
  if (third === undefined) return null;
  if (second === 'features') return parts.slice(0, 3).join('/');
  if (file === 'src/app/main.tsx') return 'src/app/main';
  return second === 'app' && third === 'layout' ? 'src/app/layout' : `${top}/${second}`;
}

const packageOf = (name: string) =>
  name
    .split('/')
    .slice(0, name.startsWith('@') ? 2 : 1)
    .join('/');

export function checkEdge(edge: Edge): Break | null {
  const where = `${edge.from}:${edge.line} imports ${edge.isType ? 'types of ' : ''}${edge.to}`;
  const from = getRoom(edge.from);
  const room = from ? rooms[from] : undefined;
  if (!from || !room) return { where, reason: `${edge.from} is in no room of the house` };
  if (edge.to === 'src/ui/units.ts' && !edge.isType && isDrawing(edge.from)) {
    return { where, reason: 'what draws is handed the units, and reads no setting by itself' };
  }
  const isOfProject = /^(sim|src|presets|tests|docs)\//.test(edge.to);
  return isOfProject ? checkRoom(edge, from, room, where) : checkPackage(edge, from, where);
}

/** Files that draw: pictures, and the rows of plots. */
const isDrawing = (file: string): boolean => /^src\/pictures\/|^src\/app\/plot\/[^/]*\.ts$/.test(file);

function checkRoom(edge: Edge, from: string, room: Room, where: string): Break | null {
  const to = getRoom(edge.to);
  if (to === from || to === 'sim/math') return null;
  if (to && (room.values.includes(to) || (edge.isType && room.types?.includes(to)))) return null;
  if (to && room.types?.includes(to)) return { where, reason: `only types may be imported here: ${room.reason}` };
  if (from.startsWith('src/') && to?.startsWith('sim/')) {
    return { where, reason: `sim/index.ts is the only door, and not for every room: ${room.reason}` };
  }
  return { where, reason: room.reason };
}

function checkPackage(edge: Edge, from: string, where: string): Break | null {
  const name = packageOf(edge.to);
  const home = housed[name];
  if (home) return home.includes(from) ? null : { where, reason: `${name} is imported in ${home.join(', ')} only` };
  if (['src/scene', 'src/render', 'src/pictures', 'src/commands'].includes(from) && name.startsWith('solid')) {
    return { where, reason: `${from} is plain TypeScript, without the view library` };
  }
  if (from.startsWith('sim/'))
    return { where, reason: 'sim is pure: no package, no Node, but in the rooms made for one' };
  if (edge.to.startsWith('node:') && from !== 'src/cli' && from !== 'src/offline' && !nodeFiles.includes(edge.from)) {
    return { where, reason: 'only the command line and the build run in Node' };
  }
  return null;
}

export function checkPlace(file: SourceFile): Break[] {
  const room = getRoom(file.path);
  const found: Break[] = [];
  if (/(^|\/)(utils?|helpers?)(\/|\.)/.test(file.path)) {
    found.push({ where: file.path, reason: 'a file is named for its one noun, not utils or helpers' });
  }
  if (file.path.endsWith('.tsx') && !/^src\/(app|features|ui)\//.test(file.path)) {
    found.push({ where: file.path, reason: 'JSX lies in app, features and ui only' });
  }
  for (const fault of file.faults) found.push({ where: `${file.path}:${fault.line}`, reason: fault.what });
  if (room?.startsWith('sim/') || room === 'src/scene' || room === 'src/paper') {
    const reason = 'is impure: no DOM, no clock, no unseeded chance, no I/O here';
    for (const use of file.impure) found.push({ where: `${file.path}:${use.line}`, reason: `${use.what} ${reason}` });
  }
  return found;
}

/** Each circle once, as the files along it. Types count: a circle of types is a circle of meaning. */
export function findCycles(edges: Edge[]): string[][] {
  const next = new Map<string, string[]>();
  for (const { from, to } of edges) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set<string>();
  const trail: string[] = [];
  const cycles: string[][] = [];

  function walk(file: string): void {
    const at = trail.indexOf(file);
    if (at >= 0) {
      cycles.push([...trail.slice(at), file]);
      return;
    }
    if (done.has(file)) return;
    trail.push(file);
    for (const to of next.get(file) ?? []) walk(to);
    trail.pop();
    done.add(file);
  }

  for (const file of next.keys()) walk(file);
  return cycles;
}
