// Whole recordings of a ready flight, in which numbers are damaged: read, laid over a body, searched for the flight, set beside the model.
import { athletes, skills } from '../../../presets/index.ts';
import {
  buildSkill,
  flySkill,
  formatBvh,
  formatRecorded,
  formatStudyJson,
  formatTrc,
  type HumanAthlete,
  launch,
  parseSkill,
  posedOfFlight,
  provenance,
  type RecordingStudy,
  studyRecording,
} from '../../../sim/index.ts';
import { utf8 } from './damage-text.ts';
import type { CorpusKind } from './kind.ts';
import { checkSentence, checkShared, hold, LawBroken, type Outcome, tryRead } from './law.ts';
import type { Random } from './random.ts';
import { shelf } from './sound.ts';

const RATE_HZ = 100;
const athlete = athletes['ilse-marrow'] as HumanAthlete;
const flight = flySkill(launch(buildSkill(parseSkill(skills['back-tuck'], shelf))));
const rows = Math.floor(flight.duration * RATE_HZ);
const posed = posedOfFlight(
  flight,
  Float64Array.from({ length: rows }, (_, k) => k / RATE_HZ),
);
const FILES: readonly (readonly [string, string])[] = [
  ['jump.bvh', [...formatBvh(posed)].join('')],
  ['jump.trc', [...formatTrc(posed, 'jump.trc')].join('')],
  ['jump.csv', [...formatRecorded(posed)].join('')],
];

interface CaptureRule {
  readonly name: string;
  /** rows of numbers, each as its cells */
  readonly apply: (rows: string[][], r: Random) => void;
}
const cellOf = (rows: string[][], r: Random): readonly [string[], number] => {
  const row = r.of(rows);
  return [row, r.int(row.length)];
};
const columnOf = (rows: string[][], r: Random): number => r.int(rows[0].length);
const eachRow = (rows: string[][], change: (row: string[], k: number) => void): void => rows.forEach(change);
/** But those of number and time, where it has them. */
const eachCell = (rows: string[][], change: (row: string[], k: number) => void): void =>
  eachRow(rows, (row) => {
    for (let k = 2; k < row.length; k++) change(row, k);
  });

const CAPTURE_RULES: readonly CaptureRule[] = [
  {
    name: 'a number is another',
    apply: (all, r) => setCell(cellOf(all, r), r.of(['0', '1e6', '-1e6', '1e-9', '720', '-0'])),
  },
  { name: 'a number is missing', apply: (all, r) => setCell(cellOf(all, r), r.of(['NaN', ''])) },
  {
    name: 'a column rests',
    apply: (all, r) => {
      const k = columnOf(all, r);
      eachRow(all, (row) => setCell([row, k], all[0][k]));
    },
  },
  {
    name: 'a column is noise',
    apply: (all, r) => {
      const k = columnOf(all, r);
      eachRow(all, (row) => setCell([row, k], String(1000 * (r.next() - 0.5))));
    },
  },
  {
    name: 'two columns exchanged',
    apply: (all, r) => {
      const [a, b] = [columnOf(all, r), columnOf(all, r)];
      eachRow(all, (row) => row.splice(a, 1, row.splice(b, 1, row[a])[0]));
    },
  },
  {
    name: 'all in another unit',
    apply: (all, r) => {
      const by = r.of([1000, 0.001, 25.4, 1e-12, 1e9]);
      eachCell(all, (row, k) => setCell([row, k], String(Number(row[k]) * by)));
    },
  },
  { name: 'rows lost', apply: (all, r) => void all.splice(r.int(all.length), 1 + r.int(all.length - 1)) },
  { name: 'rows turned round', apply: (all) => void all.reverse() },
  { name: 'a row twice', apply: (all, r) => void all.splice(r.int(all.length), 0, [...r.of(all)]) },
  {
    name: 'all at rest',
    apply: (all) => eachCell(all, (row, k) => setCell([row, k], all[0][k])),
  },
  {
    name: 'all at one place',
    apply: (all) => eachCell(all, (row, k) => setCell([row, k], '0')),
  },
];

function setCell([row, k]: readonly [string[], number], to: string): void {
  row[k] = to;
}

/** The rows at the end of the file that are numbers alone. */
function damageRows(text: string, r: Random): { readonly text: string; readonly what: string } {
  const gap = /,/.test(text.trim().split('\n').at(-1) ?? '') ? ',' : /\t/.test(text) ? '\t' : ' ';
  const lines = text.trimEnd().split('\n');
  const first = lines.findLastIndex((line) => !/^\s*[-\d.][-\d.e\s,+]*$/i.test(line)) + 1;
  const all = lines.slice(first).map((line) => line.split(gap));
  const said = Array.from({ length: 1 + r.int(3) }, () => {
    const rule = r.of(CAPTURE_RULES);
    if (all.length > 1) rule.apply(all, r);
    return rule.name;
  });
  return { text: [...lines.slice(0, first), ...all.map((row) => row.join(gap)), ''].join('\n'), what: said.join(', ') };
}

export const capturesKind: CorpusKind = {
  name: 'captures',
  make: (r) => {
    const [file, text] = r.of(FILES);
    const damaged = damageRows(text, r);
    return { file, bytes: utf8(damaged.text), what: `${file}: ${damaged.what}` };
  },
  run: ({ file, bytes }): Outcome =>
    checkShared(() => {
      const read = tryRead(() => study(file, bytes), new TextDecoder().decode(bytes));
      if (!('value' in read)) return 'refused';
      const from = provenance({ call: 'shapeflight fit', inputs: [], tolerance: null, seed: null });
      const report = formatStudyJson([{ study: read.value }], from);
      hold(!/NaN|Infinity|undefined/.test(report), 'the report has what is no number');
      JSON.parse(report);
      for (const line of [...read.value.notes]) checkSentence(line, '');
      return 'read';
    }),
};

/** Pauses of a study of one second; measured some hundred. */
const MOST_PAUSES = 20_000;

function study(name: string, bytes: Uint8Array): RecordingStudy {
  const steps = studyRecording({ name, bytes }, athlete, { smoothing: { kind: 'gcv' }, longestGap: 0.1 });
  for (let k = 0; k < MOST_PAUSES; k++) {
    const step = steps.next();
    if (step.done) return step.value;
  }
  throw new LawBroken('it is studied without end');
}
