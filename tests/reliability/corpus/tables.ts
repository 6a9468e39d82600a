// Tables: samples of a skill as CSV, the table of a class, a recording as CSV or TSV; each is given to every door that takes a table.
import { athletes, shapes, skills } from '../../../presets/index.ts';
import {
  asRead,
  calcClassTable,
  distances,
  formatClassCsv,
  formatSamples,
  formatWorksheet,
  loadEstimate,
  parseSamples,
  parseSkill,
  readClass,
  StudyRunner,
  usualStudy,
} from '../../../sim/index.ts';
import { CSV } from '../../recording/hostile/samples.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { checkShared, hold, type Outcome, tryRead } from './law.ts';
import { ODD_TEXTS } from './odd-values.ts';
import type { Random } from './random.ts';
import { runRecording } from './recordings.ts';
import { WORKSHEETS } from './sound.ts';

const runner = new StudyRunner(usualStudy(parseSkill(skills['back-tuck'], { athletes, shapes })));
const { study } = runner;
const table = runner.samples(0, 6);
const SAMPLES = formatSamples(study, table, distances(study.window, table), {});

const by = await loadEstimate();
const [shown] = readClass(WORKSHEETS.map((one, i) => ({ name: `${i}.json`, text: formatWorksheet(one) }))).classes;
const { questions } = shown.worksheet;
const CLASS = formatClassCsv(
  calcClassTable(
    shown,
    questions.map(() => undefined),
    shown.handed.map(({ worksheet }) => by.readLockedAnswers(questions, worksheet.answers)),
  ),
  {},
);

const SOUND_TABLES = [
  ['samples.csv', SAMPLES],
  ['class.csv', CLASS],
  ['recording.csv', CSV],
  ['recording.tsv', CSV.replace(/,/g, '\t')],
] as const;
const ODD_CELLS = [
  '',
  'NaN',
  'Infinity',
  '1e400',
  '-0',
  '0x10',
  '1,5',
  '"',
  '""',
  '"open',
  '=1+1',
  '#',
  '1e308',
  ' 1',
  '1 ',
  '٣',
  '-1',
  '1.5',
  '9'.repeat(400),
];

function damageCells(text: string, r: Random): { text: string; what: string } {
  const rows = text.split('\n').map((row) => row.split(/([,\t])/));
  const at = r.int(rows.length);
  const row = rows[at];
  const cell = 2 * r.int(Math.ceil(row.length / 2));
  const way = r.int(7);
  if (way <= 2) row[cell] = r.isHit(0.7) ? r.of(ODD_CELLS) : r.of(ODD_TEXTS);
  else if (way === 3) row.splice(cell, 2);
  else if (way === 4) row.splice(cell, 0, 'x', ',');
  else if (way === 5) rows.splice(at, 0, [...row]);
  else rows.reverse();
  return {
    text: rows.map((one) => one.join('')).join('\n'),
    what: ['a cell', 'a cell', 'a cell', 'a cell lost', 'a cell more', 'a row twice', 'turned round'][way],
  };
}

export const tablesKind: CorpusKind = {
  name: 'tables',
  make: (r) => {
    const [file, text] = r.of(SOUND_TABLES);
    if (r.isHit(0.7)) {
      const damaged = damageCells(text, r);
      return { file, bytes: utf8(damaged.text), what: `${file}: ${damaged.what}` };
    }
    const { bytes, what } = damageBytes(utf8(text), r, true);
    return { file, bytes, what: `${file}: ${what}` };
  },
  run: (input): Outcome =>
    checkShared(() => {
      const text = textOf(input);
      const found = [runRecording(input)];
      if (text !== undefined) {
        found.push(runSamples(input.file, text));
        const { refused } = readClass([{ name: input.file, text }]);
        hold(refused.length === 1, 'a table is taken for answers');
      }
      return found.includes('read') ? 'read' : 'refused';
    }),
};

function runSamples(name: string, text: string): Outcome {
  const read = tryRead(() => parseSamples(study, [{ name, text }]), text);
  if (!('value' in read)) return 'refused';
  const { n, values, from } = read.value;
  hold(values.length === n * study.spread.parts.length, 'a sample has not every value');
  if (from !== 0) return 'read';
  const again = formatSamples(study, read.value, distances(study.window, read.value), {});
  const back = parseSamples(study, [{ name, text: again }]);
  hold(
    JSON.stringify([...back.values]) === JSON.stringify([...asRead(study, read.value).values]),
    'written and read again it is another',
  );
  return 'read';
}
