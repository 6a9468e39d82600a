/** A recording studied from its file to the test of the model: read, mapped, posed, its flight found, smoothed, judged, flown. */
import type { HumanAthlete } from '../files/athlete-schema.ts';
import { FieldError } from '../math/field-error.ts';
import { norm } from '../math/vec3.ts';
import { findAirSpans, spanBetween } from '../recording/air-span.ts';
import { conditionMotion } from '../recording/condition.ts';
import type { AirSpan, ConditionedMotion } from '../recording/conditioned.ts';
import { fitParabola } from '../recording/parabola.ts';
import { type PosedRecording, poseRecording } from '../recording/pose-recording.ts';
import { readRecordingSteps } from '../recording/read-recording.ts';
import { calcRecordedMomentum, type RecordedMomentum } from '../recording/recorded-momentum.ts';
import type { Recording } from '../recording/recording.ts';
import { testModel } from './model-test.ts';
import { judgeRecording } from './quality.ts';
import { GRAVITY, measuredStart } from './recorded-flight.ts';
import type { RecordedStart, RecordingQuality, RecordingStudy, StudyOptions } from './recording-study.ts';
import { turnMotion, turnToFlight } from './turn-to-flight.ts';

interface StudyProgress {
  /** 0 to 1 */
  readonly done: number;
  readonly what: 'reading' | 'posing' | 'finding the flight' | 'flying';
}

interface RecordingFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What a study, a fit and a skill of a recording all begin with. */
export interface PreparedRecording {
  readonly recording: Recording;
  readonly posed: PosedRecording;
  readonly spans: readonly AirSpan[];
  /** undefined: no flight was found, or it has too few rows */
  readonly flight: PreparedFlight | undefined;
}

export interface PreparedFlight {
  readonly motion: ConditionedMotion;
  readonly momentum: RecordedMomentum;
  readonly quality: RecordingQuality;
  readonly start: RecordedStart;
}

/** Shares of the work, by what is done. */
const READ = 0.25;
const POSED = 0.8;
const FOUND = 0.9;

/** Throws a FieldError for a file that cannot be read, or not be laid over a body. */
export function* prepareRecording(
  { name, bytes }: RecordingFile,
  athlete: HumanAthlete,
  options: StudyOptions,
): Generator<StudyProgress, PreparedRecording> {
  const reading = readRecordingSteps(name, bytes);
  let recording: Recording | undefined;
  while (!recording) {
    const step = reading.next();
    if (step.done) recording = step.value;
    else yield { done: READ * step.value.done, what: 'reading' };
  }
  const posing = poseRecording(recording, athlete, options.map ?? {}, options.lengths ?? 'recording');
  let posed: PosedRecording | undefined;
  while (!posed) {
    const step = posing.next();
    if (step.done) posed = step.value;
    else yield { done: READ + (POSED - READ) * step.value, what: 'posing' };
  }
  yield { done: POSED, what: 'finding the flight' };
  const spans = likelyFirst(findAirSpans(posed.posed));
  yield { done: FOUND, what: 'finding the flight' };
  const span = chosenSpan(posed, spans, options);
  return { recording, posed, spans, flight: span && prepareFlight(posed, span, options) };
}

/** Share of 9.81 within which a fitted g is that of a flight in real time. */
const LIKELY = 0.1;

/** Flights by their g before slow sinkings and quick swings, each the longest first. */
function likelyFirst(spans: readonly AirSpan[]): AirSpan[] {
  const isLikely = ({ g, gError }: AirSpan): boolean => Math.abs(g - GRAVITY) < LIKELY * GRAVITY + 2 * gError;
  return [...spans.filter(isLikely), ...spans.filter((span) => !isLikely(span))];
}

function chosenSpan(
  { posed }: PosedRecording,
  spans: readonly AirSpan[],
  { from, to }: StudyOptions,
): AirSpan | undefined {
  if (from === undefined && to === undefined) return spans[0];
  const first = from ?? spans[0]?.start ?? posed.t[0];
  const last = to ?? spans[0]?.end ?? posed.t[posed.n - 1];
  if (!(last > first)) throw new FieldError('to', last, `later than the start of the flight, ${first} s`);
  return spanBetween(posed, first, last);
}

function prepareFlight(
  { posed, map }: PosedRecording,
  span: AirSpan,
  options: StudyOptions,
): PreparedFlight | undefined {
  if (span.last - span.first + 1 < FEWEST) return undefined;
  const found = conditionMotion(posed, span, options);
  // an attitude in the words of our conventions has its axes already
  const isNamed = map.columns.some(({ means }) => means.kind === 'attitude');
  const motion = isNamed ? found : turnMotion(found, turnToFlight(found, calcRecordedMomentum(found).mean));
  const momentum = calcRecordedMomentum(motion);
  return {
    motion,
    momentum,
    quality: judgeRecording(motion, momentum, options.longestGap),
    start: measuredStart(motion, momentum),
  };
}

/** Rows that a spline and a parabola need. */
const FEWEST = 8;

/** From the bytes of a file to everything that is said of it. Throws a FieldError for a file that cannot be read, or not be laid over a body. */
export function* studyRecording(
  file: RecordingFile,
  athlete: HumanAthlete,
  options: StudyOptions,
): Generator<StudyProgress, RecordingStudy> {
  const prepared = yield* prepareRecording(file, athlete, options);
  yield { done: FOUND, what: 'flying' };
  return studyOf(file.name, prepared);
}

/** What is said of a recording that is prepared, the test of the model with it. */
export function studyOf(name: string, { recording, posed, spans, flight }: PreparedRecording): RecordingStudy {
  const { body } = posed;
  const common = {
    name,
    kind: recording.kind,
    frames: recording.frames,
    rateHz: recording.rateHz,
    seconds: recording.times[recording.frames - 1] - recording.times[0],
    points: recording.points.length,
    joints: recording.joints.length,
    missingRows: posed.missingRows,
    map: posed.map,
    unused: posed.unused,
    notes: posed.notes,
    spans,
    body,
    athlete: posed.athlete,
    angleNames: body.angles.map((a) => a.name),
    isSeen: posed.posed.isSeen,
  };
  const none = new Float64Array(0);
  if (!flight)
    return {
      ...common,
      span: undefined,
      start: undefined,
      t: none,
      parabola: none,
      heightOff: none,
      momentum: none,
      rawAngles: none,
      angles: none,
      smoothing: [],
      gaps: [],
      quality: undefined,
      test: undefined,
      measuredRoot: undefined,
      computedRoot: undefined,
    };
  const { motion, momentum, quality, start } = flight;
  const { n, t, p_WScm_W } = motion;
  const path = fitParabola(t, p_WScm_W, 0, n - 1);
  const parabola = new Float64Array(3 * n);
  const heightOff = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const s = t[i] - (path?.t0 ?? 0);
    for (let k = 0; k < 3; k++)
      parabola[3 * i + k] = path ? path.p[k] + path.v[k] * s - (k === 1 ? (path.g * s * s) / 2 : 0) : Number.NaN;
    heightOff[i] = p_WScm_W[3 * i + 1] - parabola[3 * i + 1];
  }
  // what is no test of the model is not flown as one
  const tested = quality.refusals.length === 0 ? testModel(motion, start) : undefined;
  return {
    ...common,
    span: motion.span,
    start,
    t,
    parabola,
    heightOff,
    momentum: Float64Array.from({ length: n }, (_, i) =>
      norm([momentum.h_Scm_W[3 * i], momentum.h_Scm_W[3 * i + 1], momentum.h_Scm_W[3 * i + 2]]),
    ),
    rawAngles: motion.rawAngles,
    angles: motion.angles,
    smoothing: motion.reports,
    gaps: motion.gaps,
    quality,
    test: tested?.test,
    measuredRoot: { p_WBo_W: rootOf(motion), quat_WB: motion.quat_WB },
    computedRoot: tested?.root,
  };
}

/** Mid-hip in the rows of the span, as recorded. */
const rootOf = ({ posed, span, n }: ConditionedMotion): Float64Array =>
  posed.p_WBo_W.slice(3 * span.first, 3 * (span.first + n));
