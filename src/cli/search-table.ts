/** The commands that fly a skill many times, as rows of the table of commands. */
import { aside, type CommandRow, NUMERIC, type OptionRow } from './option-row.ts';

const INTERRUPTED = '130  interrupted (Ctrl+C), with what was flown so far kept';

const BALANCE: readonly OptionRow[] = [
  { name: 'balance', takes: 'BY', says: 'a reflex that keeps the tilt small: off, hips or arms', usual: 'off' },
  { name: 'delay', takes: 'S', says: 'its delay, with --balance', usual: '0.08 s' },
];
const seed = (says: string): OptionRow => ({ name: 'seed', takes: 'N', says, usual: '1' });
const WINDOW: OptionRow = {
  name: 'window',
  takes: 'RESULT=LOW..HIGH',
  says: 'what counts as inside, once for each result',
  usual: 'a held landing, or a catch',
};
const JOBS = aside('jobs', 'N', 'threads, 1 to 256; no number depends on it', '1');

export const SEARCH_COMMANDS = {
  solve: {
    usage: 'solve SKILL --vary INPUT[=A..B] ... [--target NAME=VALUE,... | --code CODE] [options]',
    does: 'finds values of the inputs with which the skill meets a target, and says what each answer costs; or the nearest miss and what prevents it',
    options: [
      { name: 'vary', takes: 'INPUT[=A..B]', says: 'what may change, once for each; needed', usual: 'its usual span' },
      {
        name: 'target',
        takes: 'LIST',
        says: 'somersaults, direction, twists, twistTo, landing (deg), tilt (deg), airTime (s), height (m)',
        usual: "the skill's own",
      },
      { name: 'code', takes: 'CODE', says: 'a trampoline code or dive number in place of --target' },
      {
        name: 'within',
        takes: 'LIST',
        says: 'tolerances: landing, tilt (deg), twists, twistsAfter (turns), airTime (s), height (m)',
        usual: '5 deg, 3 deg',
      },
      { name: 'surface', takes: 'KIND=HEIGHT', says: 'floor, mat, trampoline, water or other, m', usual: 'its own' },
      { name: 'end-shape', takes: 'ID', says: 'the shape it lands in', usual: 'its own' },
      {
        name: 'ending',
        takes: 'KIND',
        says: 'held: where it comes down on its feet it is held; any: its angle alone',
        usual: 'held',
      },
      { name: 'limits', takes: 'LIST', says: 'joint limits that must hold: range,speed,torque', usual: 'none' },
      { name: 'answers', takes: 'N', says: 'how many distinct answers, 1 to 20', usual: '3' },
      { name: 'fits', takes: 'N', says: 'how many starts at most, 1 to 1000', usual: '8' },
      seed('the same seed gives the same answers'),
      {
        name: 'tries',
        takes: 'N',
        says: 'flights with the usual errors behind the margin of each answer',
        usual: '200',
      },
      { name: 'forgiving', takes: 'N', says: 'moves on from the best answer in search of a wider margin', usual: '0' },
      ...BALANCE,
      aside('json', 'OUT.json', 'the answers as JSON'),
      aside('out', 'SKILL.json', 'the best answer, or the nearest miss, as a skill'),
    ],
    units: 'degrees, turns, seconds, metres, m/s, kg·m²/s',
    example: 'solve back-straight-double --vary takeoff.h.z --vary takeoff.speedUp --json answers.json',
    exits: ['3  nothing within the spans could be flown; nothing is written', INTERRUPTED],
    page: 'docs/solve.md',
  },
  margin: {
    usage: 'margin SKILL [options]',
    does: 'how far the inputs may be off before the landing leaves its window, one at a time and all together',
    options: [
      aside('samples', 'N', 'how many, 1 to 10,000,000', '1000'),
      seed('another seed, other samples'),
      aside('from', 'A', 'the first sample of a span', '0'),
      aside('to', 'B', 'the sample after its last', 'all'),
      JOBS,
      {
        name: 'vary',
        takes: 'INPUT[=BY[,uniform]]',
        says: 'what is off, and by how much (a standard deviation; uniform: half the width), once for each',
        usual: 'the usual errors',
      },
      { name: 'level', takes: 'LEVEL', says: 'whose usual errors: national, elite', usual: 'national' },
      { name: 'error-factor', takes: 'X', says: 'usual errors times X, 0.5 to 2', usual: '1' },
      { name: 'correlate', takes: 'A,B=R', says: 'what goes together, once for each pair', usual: 'as usual' },
      WINDOW,
      ...BALANCE,
      { name: 'no-bars', says: 'leaves out the inputs one at a time' },
      aside('read', 'FILE ...', 'CSVs of samples, read instead of flown'),
      aside('verify', 'N', 'of those read, so many are flown again', '50'),
      aside('csv', 'OUT.csv', 'every sample; spans put end to end are the whole'),
      NUMERIC,
      aside('json', 'OUT.json', 'the study'),
    ],
    units: 'degrees, turns, seconds, metres, m/s, kg·m²/s',
    example: 'margin back-straight-double --samples 2000 --jobs 2 --csv tries.csv --json margin.json',
    exits: [INTERRUPTED],
    page: 'docs/margin.md',
  },
  map: {
    usage: 'map SKILL --x INPUT[=FROM..TO] --y INPUT[=FROM..TO] [options]',
    does: 'two inputs against results, on a grid',
    options: [
      {
        name: 'x',
        takes: 'INPUT[=FROM..TO]',
        says: 'what changes along a row; needed',
        usual: 'five usual errors to each side',
      },
      { name: 'y', takes: 'INPUT[=FROM..TO]', says: 'what changes from row to row; needed', usual: 'the same' },
      { name: 'of', takes: 'RESULT,...', says: 'which results', usual: 'short,twists,tilt' },
      { name: 'grid', takes: 'COLUMNSxROWS', says: 'how many values of each, 2 to 2000', usual: '41x41' },
      WINDOW,
      ...BALANCE,
      aside('from', 'A', 'the first row of a span', '0'),
      aside('to', 'B', 'the row after its last', 'all'),
      JOBS,
      aside('seed', 'N', 'taken, without effect: nothing is drawn'),
      aside('csv', 'OUT.csv', 'every place of the grid; spans put end to end are the whole'),
      NUMERIC,
      aside('json', 'OUT.json', 'the map with its contours'),
    ],
    units: 'degrees, turns, seconds, metres, m/s, kg·m²/s',
    example: 'map back-straight-double --x takeoff.h.z=42..47 --y block:2.moveStart=0.01..0.06 --csv map.csv',
    exits: [INTERRUPTED],
    page: 'docs/margin.md',
  },
} as const satisfies Record<string, CommandRow>;
