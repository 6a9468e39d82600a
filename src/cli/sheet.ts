/** The command "sheet": computes an estimate sheet, beside a skill if one is given; CSV and a page to print in files. */
import { shapes } from '../../presets/index.ts';
import { sheets } from '../../presets/sheet-shelf.ts';
import {
  CAUTION,
  COMPARED,
  DEFAULT_TOLERANCE,
  digestOf,
  type Estimate,
  type LineResult,
  loadEstimate,
  provenance,
  provenanceCsv,
  provenanceLine,
  readLinks,
  type SheetFile,
  type SheetResult,
  type Skill,
} from '../../sim/index.ts';
import { calcSkillResult } from '../jobs/kinds/sheet-skill.ts';
import { nameOf, wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import type { CommandCall } from './command-line.ts';
import { readSheetFile, readSkill } from './read-input.ts';
import { formatTable } from './table.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runSheet(command: CommandCall & { kind: 'sheet' }, args: readonly string[]): Promise<string> {
  const { sheet, inputs, isSkill } = readSheetFile(command.sheet, sheets);
  // a sheet kept with a skill is set against that skill
  const skillFile = command.skill ?? (isSkill ? command.sheet : undefined);
  const given = skillFile === undefined ? undefined : await readSkill(skillFile);
  const wanted = [
    ...(command.csv === undefined ? [] : [{ option: '--csv', file: command.csv }]),
    ...(command.page === undefined ? [] : [{ option: '--page', file: command.page }]),
  ];
  checkApart(wanted, [...inputs, ...(given?.inputs ?? [])]);
  const estimate = await loadEstimate();
  const result = estimate.computeSheet(
    sheet.lines,
    readLinks(sheet.lines, given && (await calcSkillResult(given.skill, shapes))),
  );
  const from = provenance({
    call: wordCall('sheet', args),
    inputs: [{ name: nameOf(command.sheet), sha256: digestOf(sheet), ready: null }, ...(given ? [given.origin] : [])],
    tolerance: given ? DEFAULT_TOLERANCE : null,
    seed: null,
  });
  const page = {
    title: sheet.title,
    ...(sheet.lesson === undefined ? {} : { lesson: sheet.lesson }),
    ...(given ? { skill: given.skill.title } : {}),
    caution: `${CAUTION} ${COMPARED}`,
    origin: provenanceLine(from),
  };
  writeFiles(
    wanted.map((output) => ({
      ...output,
      pieces: [
        output.option === '--csv'
          ? provenanceCsv(from) + estimate.formatSheetCsv(sheet.lines, result)
          : estimate.formatSheetPage(page, sheet.lines, result),
      ],
    })),
  );
  return `${formatReport(sheet, result, estimate, given?.skill)}\n${CLOSING}\n`;
}

function formatReport(sheet: SheetFile, result: SheetResult, estimate: Estimate, skill?: Skill): string {
  const { lines } = result;
  const quantities = lines.filter((l) => l.kind === 'quantity');
  const compared = quantities.some((q) => q.compared);
  const head = ['line', 'quantity', 'estimate', '+-', 'unit', ...(compared ? ['simulated', 'ratio'] : [])];
  const rows = quantities.map((q) => {
    const { value, plusMinus = '', unit } = estimate.figuresOf(q);
    const c = q.compared;
    const beside = [
      c?.simulated === undefined ? '' : estimate.figuresIn(c.simulated, q),
      c?.ratio === undefined ? '' : estimate.formatRatio(c.ratio),
    ];
    return [String(q.line + 1), q.name, value, plusMinus, unit, ...(compared ? beside : [])];
  });
  return [
    skill ? `${sheet.title}; simulated: ${skill.title}` : sheet.title,
    ...(sheet.lesson ? [sheet.lesson] : []),
    ...(rows.length > 0 ? [formatTable(head, rows, 2)] : []),
    ...listOf('Differences', lines, (l) => (l.kind === 'quantity' ? wordDifference(l, estimate) : undefined)),
    ...listOf('Plain bodies', lines, (l) => (l.kind === 'drawing' ? wordBody(l, estimate) : undefined)),
    ...listOf('Faults', lines, (l) => (l.kind === 'fault' ? `line ${l.line + 1}: ${l.message}` : undefined)),
    '',
  ].join('\n\n');
}

function listOf(
  title: string,
  lines: readonly LineResult[],
  wordOf: (line: LineResult) => string | undefined,
): string[] {
  const found = lines.flatMap((line) => wordOf(line) ?? []);
  return found.length === 0 ? [] : [`${title}\n${found.map((text) => `  ${text}`).join('\n')}`];
}

function wordDifference(
  { name, compared }: LineResult & { kind: 'quantity' },
  { bracedText }: Estimate,
): string | undefined {
  if (!compared) return undefined;
  const { text, missing, remark, sentence } = compared;
  return `${name} and ${bracedText(text)}: ${missing ?? [remark, sentence].filter(Boolean).join(' ')}`;
}

function wordBody({ body, of }: LineResult & { kind: 'drawing' }, { formatFigures }: Estimate): string {
  const size = body.kind === 'rod' ? 'length' : 'radius';
  return `${of} is that of a ${body.kind} of ${formatFigures(body.mass)} kg with ${size} ${formatFigures(body.size, 3)} m`;
}
