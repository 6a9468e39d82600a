/** A study of recordings, and what was fitted, as JSON in the units people type: deg, rev, m, s, kg m2/s. Fields: docs/recording.md. */
import type { Provenance } from '../files/provenance.ts';
import { DEG, REV } from '../math/angles.ts';
import type { Smoothing, SmoothingReport } from '../recording/conditioned.ts';
import type { ModelTest, RecordingStudy, TakeoffFit } from './recording-study.ts';

interface StudiedRecording {
  readonly study: RecordingStudy;
  readonly fit?: TakeoffFit | undefined;
}

const known = (x: number): number | null => (Number.isFinite(x) ? x : null);
const list = (x: Float64Array, scale = 1): (number | null)[] => Array.from(x, (v) => known(v * scale));

/** As the text of its file. */
export function formatStudyJson(recordings: readonly StudiedRecording[], provenance: Provenance): string {
  const file = {
    format: 'shapeflight-recording-report',
    version: 1,
    recordings: recordings.map(({ study, fit }) => ({ ...studyOf(study), fit: fit ? fitOf(fit) : null })),
    provenance,
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

function studyOf(study: RecordingStudy): object {
  const { span, quality, test, athlete } = study;
  return {
    file: study.name,
    kind: study.kind,
    rows: study.frames,
    rateHz: study.rateHz,
    seconds: study.seconds,
    missingRows: study.missingRows,
    unitM: study.map.unitM,
    up: study.map.up,
    statureM: athlete?.statureM ?? null,
    map: {
      joints: study.map.joints,
      points: study.map.points.map(({ from, segment, basis }) => ({ from, segment, basis })),
      unused: study.unused,
    },
    notes: study.notes,
    flights: study.spans.map((s) => ({ fromS: s.start, toS: s.end, gMPerS2: s.g, gError: s.gError })),
    span: span
      ? {
          fromS: span.start,
          fromErrorS: span.startError,
          toS: span.end,
          toErrorS: span.endError,
          gMPerS2: span.g,
          gError: span.gError,
          offParabolaM: span.offParabola,
        }
      : null,
    quality: quality
      ? {
          isTest: quality.refusals.length === 0,
          refusals: quality.refusals,
          momentumKgM2PerS: quality.h_Scm_W,
          momentumSpread: quality.momentumSpread,
          momentumWorst: quality.momentumWorst,
        }
      : null,
    smoothing: study.angleNames.flatMap((angle, k) =>
      study.isSeen[k] && study.smoothing[k] ? [{ angle, ...smoothingOf(study.smoothing[k]), gaps: study.gaps[k] }] : [],
    ),
    test: test ? testOf(test, study.t) : null,
  };
}

function smoothingOf({ by, weight, cutoffHz, residual, correlation, isCorrelated }: SmoothingReport): object {
  return { by: byOf(by), weight, cutoffHz: known(cutoffHz), residualDeg: residual * DEG, correlation, isCorrelated };
}

function byOf(by: Smoothing): object {
  if (by.kind === 'noise') return { kind: by.kind, rmsDeg: by.rms * DEG };
  return by;
}

const apart = ([somersault, tilt, twist]: readonly [number, number, number]): object => ({
  somersaultRev: known(somersault / REV),
  tiltDeg: known(tilt * DEG),
  twistRev: known(twist / REV),
});

function testOf({ measured, computed, worst, atEnd }: ModelTest, t: Float64Array): object {
  const course = (c: ModelTest['measured']): object => ({
    somersaultRev: list(c.somersault, 1 / REV),
    tiltDeg: list(c.tilt, DEG),
    twistRev: list(c.twist, 1 / REV),
  });
  return {
    worst: apart(worst),
    atEnd: apart(atEnd),
    atS: list(t),
    measured: course(measured),
    computed: course(computed),
  };
}

function fitOf({ values, leftAttitude, leftPlace, rounds, test }: TakeoffFit): object {
  return {
    values,
    leftAttitudeDeg: leftAttitude * DEG,
    leftPlaceM: leftPlace,
    rounds,
    worst: apart(test.worst),
    atEnd: apart(test.atEnd),
  };
}
