// Worksheets as they go out and answers of a class as they come back, one or several files at once.
import {
  calcClassTable,
  digestOfWorksheet,
  formatClassCsv,
  formatWorksheet,
  type GivenFile,
  loadEstimate,
  parseJson,
  parseWorksheet,
  readClass,
  type Worksheet,
} from '../../../sim/index.ts';
import { damageJson } from './damage-json.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { checkSentence, checkShared, hold, type Outcome, tryRead } from './law.ts';
import { checkSomeShell } from './shell-law.ts';
import { WORKSHEETS } from './sound.ts';

const by = await loadEstimate();

export const worksheetsKind: CorpusKind = {
  name: 'worksheets',
  make: (r) => {
    const sound: unknown = JSON.parse(formatWorksheet(r.of(WORKSHEETS)));
    if (r.isHit(0.8)) {
      const { text, what } = damageJson(sound, r);
      return { file: 'answers.json', bytes: utf8(text), what };
    }
    const { bytes, what } = damageBytes(utf8(JSON.stringify(sound, null, 2)), r, true);
    return { file: 'answers.json', bytes, what };
  },
  run: async (input): Promise<Outcome> => {
    await checkSomeShell([['class', 'IN', '--csv', 'OUT.csv']], 12, input);
    return checkShared(() => runOne(textOf(input), input.file));
  },
};

function runOne(text: string | undefined, name: string): Outcome {
  if (text === undefined) return 'refused';
  const read = tryRead(() => parseWorksheet(parseJson(text)), text);
  runClass(
    [
      { name, text },
      { name: 'sound.json', text: formatWorksheet(WORKSHEETS[WORKSHEETS.length - 1]) },
      { name: 'again.json', text },
    ],
    text,
  );
  if (!('value' in read)) return 'refused';
  const written = formatWorksheet(read.value);
  const again = tryRead(() => parseWorksheet(parseJson(written)), written);
  hold('value' in again, `what is written of it is refused: ${'refused' in again ? again.refused.message : ''}`);
  if ('value' in again) {
    hold(formatWorksheet(again.value) === written, 'written and read again it is another');
    hold(digestOfWorksheet(again.value) === digestOfWorksheet(read.value), 'its digest is another');
  }
  return 'read';
}

/** Among others, it spoils none of theirs. */
function runClass(files: readonly GivenFile[], input: string): void {
  const { classes, blank, refused } = readClass(files);
  hold(
    classes.reduce((n, { handed }) => n + handed.length, 0) + blank.length + refused.length === files.length,
    'a file of the class is lost',
  );
  hold(
    classes.some(({ handed }) => handed.some(({ file }) => file === 'sound.json')),
    'the sound answers of another are lost',
  );
  for (const { reason } of [...blank, ...refused]) checkSentence(reason, input);
  for (const one of classes) {
    const { questions } = one.worksheet;
    const answers = one.handed.map(({ worksheet }: { readonly worksheet: Worksheet }) =>
      by.readLockedAnswers(questions, worksheet.answers),
    );
    const table = calcClassTable(
      one,
      questions.map(() => undefined),
      answers,
    );
    const csv = formatClassCsv(table, {});
    hold(!/undefined|\[object/.test(csv) || /undefined|\[object/.test(input), 'a cell of the table is no word');
    hold(!/(^|,)"?[=@]/m.test(csv), 'a cell of the table is a formula');
  }
}
