/** The command "margin": how far a skill forgives errors, one at a time and together. */
import {
  asRead,
  type Bar,
  type BarEnd,
  checkDrawn,
  checkFlown,
  contactFor,
  distanceIn,
  distances,
  type ErrorSetting,
  errorSources,
  formatMarginJson,
  formatSamples,
  joinTables,
  type MarginStudy,
  OUT_UNITS,
  type OutUnit,
  openStudy,
  parseSamples,
  pickSamples,
  provenance,
  type SampleTable,
  type SkillSpec,
  STUDY_TOLERANCE,
  type Study,
  type StudyRequest,
  StudyRunner,
  studyMargin,
  usualStudy,
  wordBalance,
  wordCoarseTwist,
  wordTogether,
} from '../../sim/index.ts';
import type { StudyPiece } from '../jobs/kinds/study-job.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import type { CommandOutput } from './interrupt.ts';
import { cutSpans, runPieces } from './jobs.ts';
import { type MarginCommand, readBound, readCorrelation, readVary } from './margin-args.ts';
import { about, readSkill, readText } from './read-input.ts';
import { formatReflexRange, runReflexRange } from './reflex-range.ts';
import { formatTable } from './table.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runMargin(command: MarginCommand, args: readonly string[]): Promise<string | CommandOutput> {
  const { spec, inputs, origin } = await readSkill(command.skill);
  const wanted = outputsOf(command);
  checkApart(wanted, [...inputs, ...command.read]);
  const contact = await contactFor(spec);
  const { errors } = command;
  const usual = usualStudy(spec, command.seed, contact, errors);
  const vary = command.vary.flatMap((v) => (v === 'usual' ? usual.vary : [readVary(spec, v, errors)]));
  const request: StudyRequest = {
    spec,
    // one named again takes the place of the usual one
    vary:
      command.vary.length === 0
        ? usual.vary
        : vary.filter((v, i) => !vary.some((w, j) => j > i && w.input === v.input)),
    correlations: command.correlate.length === 0 ? usual.correlations : command.correlate.map(readCorrelation),
    window: command.window.length === 0 ? usual.window : command.window.map(readBound),
    seed: command.seed,
    errors,
    ...(command.balance ? { balance: command.balance } : {}),
  };
  const study = openStudy(request, contact);
  const runner = new StudyRunner(request, contact);
  const now = runner.now();
  const bars: StudyPiece[] = command.bars ? study.spread.parts.map((_, index) => ({ kind: 'bar', index })) : [];
  const read = readSamples(runner, command.read, command.verify);
  const pieces = [...(read ? [] : cutSpans(command.from, command.to, command.jobs)), ...bars];
  const { results, isInterrupted } = await runPieces('study', request, pieces, command.jobs);
  if (results.length === 0 && isInterrupted) return { out: '', interrupted: NOTHING_KEPT };
  // what is read again comes to the same, bit for bit
  const flown = joinTables(results.flatMap((r) => (r.kind === 'samples' ? [r.table] : [])));
  const table = read?.table ?? asRead(study, flown);
  const barList = results.flatMap((r) => (r.kind === 'bar' ? [r.bar] : []));
  const result = studyMargin(table, study.spread, study.window);
  const range =
    command.isBalanceGiven || isInterrupted ? undefined : await runReflexRange(request, table, command.jobs);
  const balance = wordBalance(command.balance);
  const from = provenance({
    call: wordCall('margin', args),
    inputs: [origin],
    tolerance: STUDY_TOLERANCE,
    seed: command.seed,
  });
  writeFiles(
    wanted.map((output) => ({
      ...output,
      pieces: [
        output.option === '--csv'
          ? formatSamples(study, flown, distances(study.window, table), { from, isNumeric: command.isNumeric })
          : formatMarginJson({
              title: spec.title,
              provenance: from,
              study,
              balance,
              from: table.from,
              to: table.from + table.n,
              now,
              bars: barList,
              result,
              errors,
              ...(range ? { range } : {}),
              together: wordTogether(study.spread.correlations),
              sources: errorSources(study.spread.parts, errors),
            }),
      ],
    })),
  );
  const out = [
    `${spec.title}; ${balance}`,
    formatWindow(study, spec, now),
    ...(barList.length > 0 ? [formatBars(study, barList)] : []),
    formatSources(study, errors),
    ...(range ? [formatReflexRange(range)] : []),
    formatShare(table.from, command.seed, result, range ? ' in an open loop' : '') +
      (read ? `\n  read from files; ${read.verified} of ${table.n} were flown again and came out the same` : ''),
    ...(result.influences.length > 0 ? [formatInfluences(study, result)] : []),
    CLOSING,
  ]
    .join('\n\n')
    .concat('\n');
  if (!isInterrupted) return out;
  return { out, interrupted: wordKept(command, flown.n, barList.length, bars.length) };
}

export const NOTHING_KEPT = 'interrupted before the first results; nothing was written';

function wordKept({ from, to, read }: MarginCommand, n: number, bars: number, allBars: number): string {
  const next = from + n;
  if (read.length > 0 || next >= to) return `interrupted: all samples and ${bars} of ${allBars} bars are kept`;
  return `interrupted: ${n} of ${to - from} samples are kept, number ${from} to ${next - 1}; --from ${next} --to ${to} flies the others`;
}

/** Some samples are flown again, to see that the rows are of this skill: its inputs that do not vary are not in the CSV. */
function readSamples(
  runner: StudyRunner,
  files: readonly string[],
  verify: number,
): { table: SampleTable; verified: number } | undefined {
  if (files.length === 0) return undefined;
  const { study } = runner;
  const texts = files.map((name) => ({ name, text: about(name, () => readText(name, 'CSV of samples', [])) }));
  const table = parseSamples(study, texts);
  checkDrawn(study, table);
  const picked = pickSamples(table, study.seed, verify);
  for (const i of picked) checkFlown(study, table, runner.samples(i, i + 1));
  return { table, verified: picked.length };
}

export const outputsOf = (command: {
  readonly csv?: string;
  readonly json?: string;
}): { option: string; file: string }[] => [
  ...(command.csv === undefined ? [] : [{ option: '--csv', file: command.csv }]),
  ...(command.json === undefined ? [] : [{ option: '--json', file: command.json }]),
];

/** With as many decimals as its size needs: times to 0.1 ms, since a late hand's half millisecond shows. */
export function wordNumber(x: number, { scale, suffix }: OutUnit): string {
  const v = x * scale;
  if (!Number.isFinite(v)) return '-';
  const size = Math.abs(v);
  return v.toFixed(suffix === 's' ? 4 : size >= 100 ? 1 : size >= 10 ? 2 : 3);
}

function formatWindow({ window }: Study, spec: SkillSpec, now: readonly number[]): string {
  const rows = window.map(({ result, low, high }, k) => {
    const unit = OUT_UNITS[result.unit];
    return [result.id, ...[low, high, now[k]].map((x) => wordNumber(x, unit)), unit.word];
  });
  const { distance } = distanceIn(window, now);
  const verdict =
    distance <= 1
      ? ''
      : `\nThe skill as it is ${spec.catch ? 'is outside' : 'lands outside'} the window: bars have no length; solve for it first.`;
  const held = window.some(({ result }) => result.id === 'reach')
    ? '\nA landing is held (stands, a hop or a small step) as the landing model has it for this surface; what may be held is run where the skill states a landing; what turns too fast to be judged goes by the band of that model. What touches rail, table or board is not held.'
    : '';
  const caught = spec.catch
    ? '\nA try is caught where its farther hand comes as near to the rail as the catch asks, no faster along the arms than it asks (on either side of 0 the same); what is outside is missed or too fast, or what comes before it could not be flown.'
    : '';
  const coarse = spec.start.kind === 'swing' && spec.start.swing.lateHand ? `\n${wordCoarseTwist()}` : '';
  return `Window of the ${spec.catch ? 'catch' : 'landing'}\n${formatTable(['result', 'from', 'to', 'as it is', 'unit'], rows, 1)}${held}${caught}${coarse}${verdict}`;
}

function formatBars(study: Study, bars: readonly Bar[]): string {
  const end = ({ by, ends, result, fault }: BarEnd, unit: OutUnit): string[] => {
    const sign = by > 0 ? '+' : '';
    const why = { window: result ?? '', range: 'range ends', flight: fault ? 'no flight' : '', never: 'and more' }[
      ends
    ];
    return [`${sign}${wordNumber(by, unit)}`, why];
  };
  const rows = [...bars]
    .sort((a, b) => a.forgives - b.forgives)
    .map((b) => {
      const part = study.spread.parts.find((p) => p.input.id === b.input);
      if (!part) throw new CommandError(`no input ${b.input}`);
      const unit = OUT_UNITS[part.input.unit];
      return [
        b.input,
        ...end(b.low, unit),
        ...end(b.high, unit),
        unit.word,
        wordNumber(b.spread, unit),
        b.forgives.toFixed(1),
      ];
    });
  const head = ['input', 'less by', 'leaves', 'more by', 'leaves', 'unit', 'usual error', 'forgives'];
  return `One at a time: how far each input may be off, the others as they are, narrowest first\n${formatTable(head, rows, 1)}`;
}

const formatSources = ({ spread }: Study, errors: ErrorSetting): string =>
  [
    `Where the errors are from (${errors.level} level, times ${errors.factor})`,
    ...errorSources(spread.parts, errors).map(({ source, inputs }) => `  ${inputs.join(', ')}: ${source}`),
    `  What goes together: ${wordTogether(spread.correlations)}`,
  ].join('\n');

const percent = (x: number): string => `${(100 * x).toFixed(1)} %`;

function formatShare(from: number, seed: number, { now, formerly, settled, faults }: MarginStudy, how: string): string {
  const word = (s: typeof now): string =>
    `${percent(s.share)} in the window (${percent(s.interval[0])} to ${percent(s.interval[1])})`;
  const lines = [
    `All together${how}: ${now.n} samples (number ${from} to ${from + now.n - 1}, seed ${seed}), ${word(now)}`,
    ...(formerly
      ? [
          `  by the window that was usual before (10 deg short or past in place of the landing) ${percent(formerly.share)}: another question, so no progress`,
        ]
      : []),
    ...(faults > 0 ? [`  ${faults} could not be flown and count as outside`] : []),
    ...settled.slice(0, -1).map((s) => `  after ${s.n}: ${word(s)}`),
  ];
  return lines.join('\n');
}

function formatInfluences({ spread, window }: Study, { influences, linear }: MarginStudy): string {
  const rows = influences.map((i) => [
    spread.parts[i.part].input.id,
    percent(i.share),
    ...i.effects.map((e) => e.toFixed(2)),
    ...i.ranks.map((r) => r.toFixed(2)),
  ]);
  const names = window.map((b) => b.result.id);
  const head = ['input', 'share', ...names.map((n) => `on ${n}`), ...names.map((n) => `rank ${n}`)];
  const straight = names
    .map((n, k) => (Number.isNaN(linear[k]) ? `${n} does not vary` : `${n} ${percent(linear[k])}`))
    .join(', ');
  return `What matters most: share of the variance of the distance from the window's middle; effects in standard deviations\n${formatTable(head, rows, 1)}\nExplained by straight lines: ${straight}`;
}
