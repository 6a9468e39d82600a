// A body laid among markers stuck on it: where it is and how it is bent, against the flight they were made from.
import { expect, test } from 'vitest';
import type { HumanAthlete } from '../../sim/files/athlete-schema.ts';
import type { SegmentFrames } from '../../sim/measure/segment-frames.ts';
import { type PosedRecording, poseRecording } from '../../sim/recording/pose-recording.ts';
import type { Recording } from '../../sim/recording/recording.ts';
import { athleteOfReady, drain, film, flyReady } from './filmed.ts';

const flight = flyReady('back-straight-full');
const athlete = athleteOfReady('back-straight-full') as HumanAthlete;
const ns = flight.body.segments.length;
const RATE = 50;

interface Case {
  readonly recording: Recording;
  readonly truth: SegmentFrames;
}

function filmed(noise: number, off: number, change = (p: Float64Array): Float64Array => p, unitM = 1): Case {
  const { frames, points } = film(flight, { rateHz: RATE, noise, off, seed: 5 });
  return {
    truth: frames,
    recording: {
      kind: 'trc',
      frames: frames.n,
      times: frames.t,
      rateHz: RATE,
      unitM,
      points: points.map(({ name, p }) => ({ name, p: change(p) })),
      joints: [],
      columns: [],
      notes: [],
    },
  };
}

/** rad of the root's attitude and m of its origin, at worst */
function errors({ posed }: PosedRecording, truth: SegmentFrames): { attitude: number; place: number } {
  let attitude = 0;
  let place = 0;
  for (let i = 0; i < truth.n; i++) {
    let dot = 0;
    for (let k = 0; k < 4; k++) dot += posed.quat_WB[4 * i + k] * truth.quat_WB[4 * ns * i + k];
    attitude = Math.max(attitude, 2 * Math.acos(Math.min(1, Math.abs(dot))));
    for (let k = 0; k < 3; k++)
      place = Math.max(place, Math.abs(posed.p_WBo_W[3 * i + k] - truth.p_WBo_W[3 * ns * i + k]));
  }
  return { attitude, place };
}

test('with markers where they usually are and no noise the body is found to a degree and a millimetre', () => {
  // no marker on the loin: the spine is taken to bend alike in both of its joints; measured 1.06 deg, 0.6 mm
  const { recording, truth } = filmed(0, 0);
  const { attitude, place } = errors(drain(poseRecording(recording, athlete, {}, 'recording')), truth);
  expect(attitude).toBeLessThan(0.022);
  expect(place).toBeLessThan(0.001);
});

test('3 mm of noise and markers 1 cm off: the pelvis to 7 degrees at worst in one row, its place to 6 mm', () => {
  // four markers some 10 cm from its middle; most of it is one constant turn, that of the misplaced markers
  const { recording, truth } = filmed(0.003, 0.01);
  const posed = drain(poseRecording(recording, athlete, {}, 'recording'));
  const { attitude, place } = errors(posed, truth);
  expect(attitude).toBeLessThan(0.12);
  expect(place).toBeLessThan(0.006);
  expect(posed.unused).toEqual([]);
});

test('Z up, millimetres, and the file of an athlete 13 cm taller: axes, unit and size are found', () => {
  const turned = (p: Float64Array): Float64Array => p.map((_, i) => 1000 * [p[i], -p[i + 1], p[i - 1]][i % 3]);
  const { recording, truth } = filmed(0.003, 0.01, turned, 0.001);
  const tall = { ...athlete, statureM: athlete.statureM + 0.13 };
  const posed = drain(poseRecording(recording, tall, {}, 'recording'));
  expect(posed.map.up).toBe('+z');
  expect(Math.abs(posed.athlete.statureM - athlete.statureM)).toBeLessThan(0.01);
  const { attitude, place } = errors(posed, truth);
  expect(attitude).toBeLessThan(0.12);
  expect(place).toBeLessThan(0.008);
});

test('a marker that is lost for some rows is counted, and the others hold the body', () => {
  const { recording, truth } = filmed(0, 0);
  const points = recording.points.map((point) =>
    point.name === 'LKNE' ? { ...point, p: point.p.map((v, i) => (i > 30 && i < 60 ? Number.NaN : v)) } : point,
  );
  const posed = drain(poseRecording({ ...recording, points }, athlete, {}, 'recording'));
  expect(posed.missingRows).toBe(10);
  expect(errors(posed, truth).place).toBeLessThan(0.001);
});

test('points that no name places are said to be unused, and too few of them are refused with what is missing', () => {
  const { recording } = filmed(0, 0);
  const renamed = recording.points.map((p, i) => (p.name.startsWith('L') ? { ...p, name: `*${i}` } : p));
  expect(() => drain(poseRecording({ ...recording, points: renamed }, athlete, {}, 'recording'))).toThrow(/upperArmL/);
});

test('two markers whose names are exchanged for some rows are left out of those, said, and bend nothing', () => {
  const { recording, truth } = filmed(0, 0);
  const of = (name: string): Float64Array => recording.points.find((p) => p.name === name)?.p ?? new Float64Array();
  const swapped = (own: Float64Array, other: Float64Array): Float64Array =>
    own.map((v, i) => (i >= 30 && i < 60 ? other[i] : v));
  const points = recording.points.map((point) =>
    point.name === 'LANK'
      ? { ...point, p: swapped(point.p, of('RFIN')) }
      : point.name === 'RFIN'
        ? { ...point, p: swapped(point.p, of('LANK')) }
        : point,
  );
  const posed = drain(poseRecording({ ...recording, points }, athlete, {}, 'recording'));
  const { attitude, place } = errors(posed, truth);
  // measured 1.7 deg, 1.1 mm; with both of them in 9.7 deg, 27 mm
  expect(attitude).toBeLessThan(0.035);
  expect(place).toBeLessThan(0.0015);
  const said = posed.notes.filter((note) => note.includes('left out'));
  expect(said.length).toBe(2);
  for (const name of ['LANK', 'RFIN'])
    expect(said.join()).toContain(`"${name}" is left out of 10 rows from 0.20 to 0.38 s`);
});

test('centimetres that are said of millimetres make no body, and are refused', () => {
  const { recording } = filmed(0, 0, undefined, 10);
  expect(() => drain(poseRecording(recording, athlete, {}, 'recording'))).toThrow(
    /points: "1\d\.\d m apart in one row by the unit of the file".*0\.35 to 3\.5 m/,
  );
});

test('left and right exchanged: many points are far from where their names put them, and it is asked', () => {
  const { recording } = filmed(0, 0);
  const other = (name: string): string => (/^[LR]/.test(name) ? (name[0] === 'L' ? 'R' : 'L') + name.slice(1) : name);
  const points = recording.points.map(({ name, p }) => ({ name: other(name), p }));
  const asked = /points sit more than 0\.09 m from .*left and right/s;
  expect(drain(poseRecording({ ...recording, points }, athlete, {}, 'recording')).notes.join(' ')).toMatch(asked);
  expect(drain(poseRecording(recording, athlete, {}, 'recording')).notes.join(' ')).not.toMatch(/points sit/);
});
