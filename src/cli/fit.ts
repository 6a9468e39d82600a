/** The command "fit": recordings read, judged, the model tested on them, and the take-off that fits them best. */
import { athletes } from '../../presets/index.ts';
import {
  type Athlete,
  BEST_PUBLISHED,
  BEST_SOURCE,
  CAUTION,
  DEFAULT_TOLERANCE,
  FIT_SEED,
  type FittedValue,
  fitTakeoffSteps,
  formatBvh,
  formatMap,
  formatRecorded,
  formatSkill,
  formatStudyJson,
  formatTrc,
  type HumanAthlete,
  isNoiseRepeating,
  type ModelTest,
  ONE_RECORDING,
  type PreparedRecording,
  parseJson,
  parseMap,
  prepareRecording,
  provenance,
  RECORDING_LIMITS,
  type RecordingStudy,
  type StudyOptions,
  sha256,
  studyOf,
  type TakeoffFit,
  wordRecordingVerdict,
  writeRecordedSkill,
} from '../../sim/index.ts';
import { nameOf, wordCall } from './call.ts';
import { CommandError, NothingFlownError } from './command-error.ts';
import type { FitCommand } from './fit-args.ts';
import type { CommandOutput } from './interrupt.ts';
import { makeProgressLine } from './progress-line.ts';
import { readBytes } from './read-file.ts';
import { about, readAthleteRef, readText } from './read-input.ts';
import { runSteps } from './run-steps.ts';
import { formatTable } from './table.ts';
import { checkApart, type Output, writeFiles } from './write-files.ts';

const USUAL_ATHLETE = 'ilse-marrow';
const DEG = 180 / Math.PI;
const REV = 2 * Math.PI;

interface Studied {
  readonly prepared: PreparedRecording;
  readonly study: RecordingStudy;
  readonly sha256: string;
}

export async function runFit(command: FitCommand, args: readonly string[]): Promise<string | CommandOutput> {
  const { recordings, map, athlete: given = USUAL_ATHLETE } = command;
  const { athlete, inputs } = readAthleteRef(given);
  const wanted = (['out', 'report', 'mapOut', 'bvh', 'trc', 'csv'] as const).flatMap((name) => {
    const file = command[name];
    return file === undefined ? [] : [{ name, option: name === 'mapOut' ? '--map-out' : `--${name}`, file }];
  });
  checkApart(wanted, [...inputs, ...recordings, ...(map === undefined ? [] : [map])]);
  const options = optionsOf(command);
  const human = checkHuman(athlete, given);
  const studied: Studied[] = [];
  for (const file of recordings) {
    const read = await studyFile(file, human, options);
    if (!read) return { out: '', interrupted: 'interrupted: nothing is written' };
    studied.push(read);
  }
  const usable = studied.flatMap(({ prepared: { flight } }) =>
    flight && flight.quality.refusals.length === 0 ? [flight] : [],
  );
  const isWhole = usable.length === studied.length;
  const fitted = isWhole
    ? await runSteps(
        fitTakeoffSteps(usable, { isShared: command.masses }),
        ({ phase, done, of }) => [phase === 'search' ? done : of / 4 + done, of + of / 4],
        makeProgressLine('fit'),
      )
    : undefined;
  if (fitted?.isInterrupted) return { out: '', interrupted: 'interrupted: nothing is written' };
  const fits = fitted?.result ?? [];
  const outputs: Output[] = wanted.flatMap(({ name, ...to }): Output[] => {
    const [{ prepared, study }] = studied;
    if (name === 'report') {
      const from = provenance({
        call: wordCall('fit', args),
        inputs: studied.map((s) => ({ name: s.study.name, sha256: s.sha256, ready: null })),
        tolerance: DEFAULT_TOLERANCE,
        seed: FIT_SEED,
      });
      return [
        {
          ...to,
          pieces: [
            formatStudyJson(
              studied.map((s, k) => ({ study: s.study, fit: fits[k] })),
              from,
            ),
          ],
        },
      ];
    }
    if (name === 'out') {
      const flight = prepared.flight;
      if (!flight || !fits[0]) return [];
      const title = `Recording: ${study.name}`.slice(0, 200);
      const file = writeRecordedSkill(flight.motion, fits[0].start, {
        title,
        athlete: prepared.posed.athlete,
        file: study.name,
        note: 'Joint angles as recorded; the take-off fitted to the recording.',
      });
      return [{ ...to, pieces: [formatSkill(file)] }];
    }
    if (name === 'mapOut') return [{ ...to, pieces: [formatMap(prepared.posed.map)] }];
    const { posed } = prepared.posed;
    const pieces =
      name === 'bvh' ? formatBvh(posed) : name === 'trc' ? formatTrc(posed, nameOf(to.file)) : formatRecorded(posed);
    return [{ ...to, pieces }];
  });
  writeFiles(outputs);
  const texts = studied.map(({ study }, k) => formatStudy(study, fits[k]));
  const text = `${texts.join('\n\n')}\n\n${ONE_RECORDING}\nCaution. ${CAUTION}\n`;
  if (!isWhole && command.out !== undefined)
    throw new NothingFlownError(
      `${texts.join('\n\n')}\n\nno take-off is fitted to what is no test; ${command.out} is not written`,
    );
  return text;
}

async function studyFile(file: string, athlete: HumanAthlete, options: StudyOptions): Promise<Studied | undefined> {
  const bytes = about(file, () => readBytes(file, RECORDING_LIMITS.bytes));
  const name = nameOf(file);
  const steps = prepareRecording({ name, bytes }, athlete, options);
  try {
    const { result, isInterrupted } = await runSteps(steps, ({ done }) => [done, 1], makeProgressLine(`read ${name}`));
    if (isInterrupted) return undefined;
    return { prepared: result, study: studyOf(name, result), sha256: sha256(bytes) };
  } catch (error) {
    return about(file, () => {
      throw error;
    });
  }
}

function optionsOf({ map, from, to, smoothing, longestGap, lengths }: FitCommand): StudyOptions {
  const edit = map === undefined ? undefined : about(map, () => parseMap(parseJson(readText(map, 'map', []))));
  return {
    smoothing,
    longestGap,
    lengths,
    ...(edit ? { map: edit } : {}),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
}

function checkHuman(athlete: Athlete, given: string): HumanAthlete {
  if (athlete.kind === 'human') return athlete;
  throw new CommandError(
    `--athlete: ${given} is a tree of segments; allowed: a human, as ${Object.keys(athletes).slice(0, 3).join(', ')}`,
  );
}

function formatStudy(study: RecordingStudy, fit: TakeoffFit | undefined): string {
  const { quality, span, test } = study;
  const lines = [
    plain(study.name),
    `${study.frames} rows, ${number(study.rateHz)} a second, ${study.seconds.toFixed(2)} s; ${wordHolds(study)}; up is ${study.map.up.toUpperCase()}`,
    ...(study.missingRows > 0 ? [`${study.missingRows} rows in which something is missing`] : []),
    ...study.notes.map(plain),
    ...(study.unused.length > 0 ? [`not used: ${study.unused.slice(0, 20).map(plain).join(', ')}`] : []),
  ];
  if (!span || !quality)
    return [
      ...lines,
      'no flight is found: nowhere is the mass centre on a parabola for long enough (--from, --to)',
    ].join('\n');
  lines.push(
    `in the air ${span.start.toFixed(3)} to ${span.end.toFixed(3)} s${study.spans.length > 1 ? `, the first choice of ${study.spans.length} (--from, --to for another)` : ''}`,
    `fitted g ${quality.g.toFixed(2)} ± ${(2 * quality.gError).toFixed(2)} m/s2, ${(1000 * quality.offParabola).toFixed(1)} mm off the parabola; angular momentum ${Math.hypot(...quality.h_Scm_W).toFixed(1)} kg m2/s, changes by ${(100 * quality.momentumSpread).toFixed(1)} %`,
    wordRecordingVerdict(quality),
  );
  if (isNoiseRepeating(study) && study.smoothing.some(({ by }) => by.kind === 'gcv'))
    lines.push(
      'Caution. The noise repeats from row to row: smoothing by the data itself leaves much of it in, and joint torques come out far too large; state the noise or a cut-off (--smooth).',
    );
  if (test)
    lines.push(
      formatTest(test, 'flown with the measured angles from the measured start'),
      'Noise in the first row alone goes on through the flight, most of all as twist: how far, docs/recording-accuracy.md says.',
    );
  if (fit) lines.push(formatFit(fit), formatTest(fit.test, 'from the fitted start'));
  return lines.join('\n');
}

const wordHolds = ({ points, joints, map }: RecordingStudy): string =>
  joints > 0 ? `${joints} joints` : points > 0 ? `${points} points` : `${map.columns.length} columns`;

function formatTest({ worst, atEnd }: ModelTest, title: string): string {
  const row = (name: string, k: number, unit: string, scale: number, best: number): string[] => [
    name,
    (worst[k] * scale).toFixed(3),
    Number.isFinite(atEnd[k]) ? (atEnd[k] * scale).toFixed(3) : 'not defined',
    String(best),
    unit,
  ];
  const table = formatTable(
    ['', 'worst', 'at the end', 'best published', ''],
    [
      row('somersault', 0, 'rev', 1 / REV, BEST_PUBLISHED.somersaultRev),
      row('tilt', 1, 'deg', DEG, BEST_PUBLISHED.tiltDeg),
      row('twist', 2, 'rev', 1 / REV, BEST_PUBLISHED.twistRev),
    ],
    1,
  );
  return `computed minus measured, ${title} (best published: ${BEST_SOURCE})\n${table}`;
}

function formatFit({ values, leftAttitude, leftPlace }: TakeoffFit): string {
  const rows = values.map(({ name, unit, from, to, plusMinus }: FittedValue) => [
    name,
    number(from),
    number(to),
    wordWidth(plusMinus),
    unit.replace('·', ' ').replace('²', '2'),
  ]);
  const table = formatTable(['fitted', 'measured', 'fitted', '95 %', ''], rows, 1);
  return `${table}\nleft over: ${(leftAttitude * DEG).toFixed(2)} deg of attitude, ${(1000 * leftPlace).toFixed(1)} mm of place; 95 % is of noise alone: a body that is not the athlete's and skin that slides are not in it`;
}

/** 0: an end that was set, or where the recording ends. */
const wordWidth = (plusMinus: number): string =>
  plusMinus === 0 ? 'as set' : Number.isFinite(plusMinus) ? `± ${number(plusMinus)}` : 'not known';

/** What rounding leaves of nothing is nothing. */
const number = (x: number): string => (Math.abs(x) < 1e-9 ? '0' : String(Number(x.toPrecision(4))));
/** A name is one line. */
const plain = (text: string): string => text.replace(/[\s\p{Cc}]+/gu, ' ').slice(0, 300);
