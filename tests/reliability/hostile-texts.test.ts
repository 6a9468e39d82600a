// Titles and names from files reach a terminal, a table program, a picture, a page and a file system as text alone.
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkSkillFile, formatSkill, parseJson } from '../../sim/index.ts';
import { safeName } from '../../src/app/file-door.ts';
import { makeProgressLine } from '../../src/cli/progress-line.ts';
import { fileInWords } from '../../src/features/film/file-in-words.ts';
import { makeFolder, run, still } from '../cli/run.ts';
import { hostileTexts } from './hostile-texts.ts';

/** All but ends of lines, tabs and two joiners that letters have. */
const RAW = /[^\P{Cc}\n\t]|(?![\u200c\u200d])\p{Cf}|[\u2028\u2029]|\p{Cs}/u;

const athlete = { kind: 'human', name: 'Mara Quill', sex: 'female', massKg: 52, statureM: 1.6 };
const skillOf = (text: string) => ({
  ...still,
  title: text,
  note: text,
  athlete: { ...athlete, name: text.slice(0, 80) },
});
const sheetOf = (text: string) => ({
  format: 'shapeflight-sheet',
  version: 1,
  title: text,
  lines: [`a = 1 # ${text}`, `# ${text}`, text],
});

describe.each(hostileTexts)('$name', ({ text }) => {
  const made = makeFolder({ 'skill.json': skillOf(text), 'sheet.json': sheetOf(text) });
  const at = made.at;
  test('to a terminal', async () => {
    for (const argv of [
      ['body', at('skill.json')],
      ['link', at('skill.json'), '--name'],
      ['sheet', at('sheet.json')],
      ['fly', `${at('skill.json')}${text.replaceAll('\0', '')}`],
      ['fly', at('skill.json'), `--${text.replaceAll('\0', '')}`],
    ]) {
      const { out, err } = await run(...argv);
      expect(`${out}${err}`, argv[0]).not.toMatch(RAW);
      expect(err.split('\n').length, argv[0]).toBeLessThan(3);
    }
  });
  test('in a file of JSON, which reads back the same', () => {
    const written = formatSkill(checkSkillFile(skillOf(text)));
    expect(written.replace(/[\u00ad\u{e0001}-\u{e007f}]/gu, '')).not.toMatch(RAW);
    expect(checkSkillFile(parseJson(written))).toEqual(checkSkillFile(skillOf(text)));
  });
  test('in a page and in cells of CSV', async () => {
    expect((await run('sheet', at('sheet.json'), '--csv', at('s.csv'), '--page', at('s.html'))).err).toBe('');
    expect(made.read('s.html').replace(/<style>[\s\S]*?<\/style>/g, '')).not.toMatch(
      /<img|<script|\son\w+\s*=\s*["']?window|href="javascript/i,
    );
    for (const line of made.read('s.csv').split('\n')) {
      // cells as a table program parts them, by commas and by semicolons
      for (const [, cell] of line.matchAll(/(?:^|[,;])("(?:[^"]|"")*"|[^",;]*)/g))
        expect(cell.replace(/^"/, '')).not.toMatch(/^\s*[=+@＝＋＠]/);
    }
  });
  test('as the name of a file', () => {
    for (const ending of ['.json', '.v1.json', '.csv', '.svg']) {
      const name = safeName(`${text}${ending}`);
      expect(name).not.toMatch(/[\p{C}<>:"/\\|?*]/u);
      expect(name).not.toMatch(/^[.\s-]|[.\s]$|^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i);
      expect(name.endsWith(ending)).toBe(true);
      expect(Buffer.byteLength(name)).toBeLessThan(250);
    }
  });
});

test.each(hostileTexts)('a clip or a recording named by $name, in a sentence', ({ text }) => {
  const said = fileInWords(`${text}.mp4`);
  // kept apart it lies between two marks of its own
  expect(said.replace(/^\u2068(.*)\u2069$/u, '$1')).not.toMatch(RAW);
  expect(said).not.toContain('\n');
  expect(Array.from(said).length).toBeLessThanOrEqual(42);
});

test('a name in a line of progress is one line, and short', () => {
  const written: string[] = [];
  let now = 0;
  const line = makeProgressLine(`read ${hostileTexts.map(({ text }) => text).join('')}`, {
    isTerminal: true,
    write: (text) => void written.push(text),
    clock: () => (now += 2000),
  });
  line.show(1, 2);
  expect(written).toHaveLength(1);
  expect(written[0].slice(1)).not.toMatch(RAW);
  expect(written[0].length).toBeLessThan(80);
});

test('an output does not replace a file elsewhere through a link', async () => {
  const other = makeFolder({ 'kept.json': 'kept' });
  const made = makeFolder({ 'skill.json': still });
  symlinkSync(other.at('kept.json'), made.at('out.json'));
  const { code, err } = await run('export', made.at('skill.json'), '--as', '1', '--out', made.at('out.json'));
  expect([code, err]).toEqual([
    2,
    expect.stringContaining(`is a link out of its folder; name the file itself: ${other.at('kept.json')}`),
  ]);
  expect(other.read('kept.json')).toBe('kept');
  // a folder that is a link is where the person is
  symlinkSync(other.folder, made.at('folder'), 'dir');
  expect((await run('export', made.at('skill.json'), '--as', '1', '--out', made.at('folder/out.json'))).code).toBe(0);
  mkdirSync(made.at('sub'));
  writeFileSync(made.at('sub/x'), '');
  expect(readFileSync(other.at('out.json'), 'utf8')).toContain('shapeflight-skill');
});

test('a name as long as the system allows is written', async () => {
  const made = makeFolder({ 'skill.json': still });
  const name = `${'n'.repeat(250)}.json`;
  expect((await run('export', made.at('skill.json'), '--as', '1', '--out', made.at(name))).code).toBe(0);
});
