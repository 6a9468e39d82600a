// Estimate sheets, as JSON and as text.
import {
  formatSheet,
  loadEstimate,
  parseJson,
  parseSheet,
  readAnySheet,
  readLinks,
  type SheetFile,
} from '../../../sim/index.ts';
import { damageJson } from './damage-json.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { checkSentence, checkShared, hold, type Outcome, tryRead } from './law.ts';
import { ODD_TEXTS } from './odd-values.ts';
import type { Random } from './random.ts';
import { checkSomeShell } from './shell-law.ts';
import { SHEETS } from './sound.ts';

const { computeSheet, formatSheetCsv, formatSheetPage } = await loadEstimate();

const asText = ({ title, lines }: SheetFile): string => [`# ${title}`, ...lines].join('\n');

/** What formulas are made of, in any order. */
const WORDS =
  '+ - * / ^ ( ) , . = : ; [ ] { } " \' ! % & | < > to vs if +- ± in mod and not # draw rod ball for about lateral at pi m kg s J N ft rev deg x y z mass constructor __proto__ import evaluate sqrt sin ln min {air time} {mass} {nowhere} {__proto__} 1e308 1e-308 1e999 0 1 2 0x9 ∞ ² é'.split(
    ' ',
  );
const formula = (r: Random): string =>
  Array.from({ length: 1 + r.int(16) }, () => r.of(WORDS)).join(r.of(['', ' ', '  ']));

function damageLines(lines: readonly string[], r: Random): string[] {
  const out = [...lines];
  const at = r.int(out.length);
  const line = out[at] ?? '';
  out[at] = r.of([
    () => `x = ${formula(r)}`,
    () => `${line} ${formula(r)}`,
    () => line.replace(/\d+(\.\d+)?/, r.of(['1e400', '0', '-1', 'NaN', '1e308', '99999999999999999999', '1,5', ''])),
    () => line.replace(/[a-zA-Z]\w*/, r.of(['__proto__', 'constructor', 'x', 'import', 'e', 'i'])),
    () => line.slice(r.int(line.length + 1)),
    () => line.repeat(1 + r.int(30)),
    () => r.of(ODD_TEXTS),
    () => `x = ${'('.repeat(r.int(200))}1`,
    () => `x = x + 1`,
    () => `${line.split('=')[0]} = ${lines[r.int(lines.length)]?.split('=')[0] ?? 'y'}`,
  ])();
  return out;
}

export const sheetsKind: CorpusKind = {
  name: 'sheets',
  make: (r) => {
    const [from, sound] = r.of(SHEETS);
    const lines = { ...sound, lines: damageLines(sound.lines, r) };
    const way = r.next();
    if (way < 0.3) return { file: 'sheet.json', bytes: utf8(JSON.stringify(lines)), what: `${from}: a line damaged` };
    if (way < 0.5)
      return { file: 'sheet.txt', bytes: utf8(asText(lines)), what: `${from}: a line of its text damaged` };
    if (way < 0.8) {
      const { text, what } = damageJson(sound, r);
      return { file: 'sheet.json', bytes: utf8(text), what: `${from}: ${what}` };
    }
    const isJson = r.isHit(0.5);
    const { bytes, what } = damageBytes(utf8(isJson ? JSON.stringify(sound, null, 2) : asText(sound)), r, true);
    return { file: isJson ? 'sheet.json' : 'sheet.txt', bytes, what: `${from}: ${what}` };
  },
  run: async (input): Promise<Outcome> => {
    const text = textOf(input);
    await checkSomeShell(
      [
        ['sheet', 'IN', '--csv', 'OUT.csv'],
        ['sheet', 'IN', '--page', 'OUT.html'],
      ],
      5,
      input,
    );
    return text === undefined ? 'refused' : checkShared(() => runText(text, input.file));
  },
};

function runText(text: string, name: string): Outcome {
  const read = tryRead(() => readAnySheet(text, name), text);
  if (!('value' in read)) return 'refused';
  const { sheet } = read.value;
  const written = formatSheet(sheet);
  hold(formatSheet(parseSheet(parseJson(written))) === written, 'written and read again it is another');
  const { lines } = sheet;
  const result = computeSheet(lines, readLinks(lines, undefined));
  hold(result.lines.length === lines.length, 'a line is lost');
  for (const line of result.lines)
    if (line.kind === 'fault') checkSentence(line.message, text);
    else if (line.kind === 'quantity') hold(Number.isFinite(line.value), 'a value is no number');
  const page = formatSheetPage(
    { title: sheet.title, caution: 'A model.', ...(sheet.lesson ? { lesson: sheet.lesson } : {}) },
    lines,
    result,
  );
  hold(!/<(script|img|iframe|object|embed|link )/i.test(page), 'a page of it holds more than words');
  hold(!/\son\w+=/.test(page.replace(/>[^<]*</g, '><')), 'a page of it holds a script');
  const csv = formatSheetCsv(lines, result);
  hold(!/(^|,)"?[=@+]/m.test(csv.replace(/^.*\n/, '')), 'a cell of its CSV is a formula');
  return 'read';
}
