// Which column is what, by its name in any usual spelling; what is not complete or not known is ignored.
import { describe, expect, test } from 'vitest';
import { calcFrames, calcSegmentFrames, formatFrames, formatSegments } from '../../sim/index.ts';
import { wordFrames } from '../../sim/measure/words.ts';
import { guessColumns } from '../../sim/recording/column-meanings.ts';
import { pointsOfTable } from '../../sim/recording/points-of-table.ts';
import type { ColumnMeaning } from '../../sim/recording/recording-map.ts';
import { runSteps } from '../../sim/recording/steps.ts';
import { evenTimes, flight, flown } from './flown.ts';
import { readText } from './parts.ts';

const { body } = flight;

/** Meanings of columns that all hold the same values. */
function meaningsOf(names: readonly string[], value = 1): ColumnMeaning[] {
  const row = names.map(() => value).join(',');
  const recording = readText('a.csv', `t,${names.join(',')}\n0,${row}\n1,${row}\n`);
  return guessColumns(recording, body).map(({ means }) => means);
}

describe('a joint angle', () => {
  test.each([
    ['kneeFlexionL', 'kneeFlexionL'],
    ['knee_flexion_l', 'kneeFlexionL'],
    ['left knee flexion', 'kneeFlexionL'],
    ['Knee Flexion Right', 'kneeFlexionR'],
    ['KNEE_FLEXION_LEFT', 'kneeFlexionL'],
    ['LKneeFlexion', 'kneeFlexionL'],
    ['lkneeflexion', 'kneeFlexionL'],
    ['flexion of the left knee', 'kneeFlexionL'],
    ['right ankle plantarflexion', 'anklePlantarFlexionR'],
    ['q_hipAbductionR', 'hipAbductionR'],
    ['angle_shoulderElevationL_rad', 'shoulderElevationL'],
    ['lumbar side bend', 'lumbarSideBend'],
    ['neckTurn', 'neckTurn'],
  ])('%s', (name, angle) => expect(meaningsOf([name])).toEqual([{ kind: 'angle', angle, inRadians: true }]));

  test.each([
    'kneeFlexion',
    'knee',
    'angle_rate_kneeFlexionL_rad_s',
    'qd_kneeFlexionL',
    'kneeFlexionL [deg/s]',
    '__proto__',
    'constructor',
  ])('%s is none', (name) => expect(meaningsOf([name])).toEqual([{ kind: 'ignored' }]));

  test('its unit is the stated one; where none is stated, degrees from 7 on', () => {
    const units = (names: string[], value: number): unknown[] =>
      meaningsOf(names, value).map((m) => (m.kind === 'angle' ? m.inRadians : m.kind));
    expect(units(['kneeFlexionL [deg]', 'hipFlexionL [rad]', 'elbowFlexionL'], 1)).toEqual([false, true, true]);
    expect(units(['kneeFlexionL', 'hipFlexionL_rad', 'q_elbowFlexionL'], 90)).toEqual([false, true, true]);
  });

  test('of two columns of one angle the first is taken', () => {
    expect(meaningsOf(['kneeFlexionL', 'left knee flexion']).map(({ kind }) => kind)).toEqual(['angle', 'ignored']);
  });
});

describe('a point', () => {
  test.each([
    [['LELB x', 'LELB y', 'LELB z'], 'LELB'],
    [['LELB_X', 'LELB_Y', 'LELB_Z'], 'LELB'],
    [['LELB.x', 'LELB.y', 'LELB.z'], 'LELB'],
    [['LELB:X', 'LELB:Y', 'LELB:Z'], 'LELB'],
    [['LELB (x)', 'LELB (y)', 'LELB (z)'], 'LELB'],
    [['X1', 'Y1', 'Z1'], '1'],
    [['px', 'py', 'pz'], 'pelvis.o'],
    [['thighL_px', 'thighL_py', 'thighL_pz'], 'thighL.o'],
  ])('%s', (names, point) =>
    expect(meaningsOf(names)).toEqual([0, 1, 2].map((axis) => ({ kind: 'point', point, axis, unitM: 1 }))),
  );

  test('has the unit that its columns state; where none is stated, its reach says it', () => {
    const unit = (names: readonly string[], value: number): unknown[] =>
      meaningsOf(names, value).map((m) => (m.kind === 'point' ? m.unitM : m.kind));
    expect(unit(['toe x [mm]', 'toe y [mm]', 'toe z [mm]'], 1)).toEqual([0.001, 0.001, 0.001]);
    expect(unit(['toe_x_cm', 'toe_y_cm', 'toe_z_cm'], 1)).toEqual([0.01, 0.01, 0.01]);
    expect(unit(['toe x', 'toe y', 'toe z'], 3)).toEqual([1, 1, 1]);
    expect(unit(['toe x', 'toe y', 'toe z'], 150)).toEqual([0.01, 0.01, 0.01]);
    expect(unit(['toe x', 'toe y', 'toe z'], 1500)).toEqual([0.001, 0.001, 0.001]);
  });

  test.each([
    [['toe x', 'toe y']],
    [['vx', 'vy', 'vz']],
    [['hx', 'hy', 'hz']],
    [['toe x [N]', 'toe y [N]', 'toe z [N]']],
  ])('%s is none', (names) => expect(meaningsOf(names).every(({ kind }) => kind === 'ignored')).toBe(true));
});

describe('an attitude', () => {
  test('quaternions of the body frame, the root, the trunk, a segment', () => {
    const of = (prefix: string): unknown[] =>
      meaningsOf(['w', 'x', 'y', 'z'].map((k) => `${prefix}${k}`)).map((m) =>
        m.kind === 'quaternion' ? [m.of, m.part] : m.kind,
      );
    expect(of('q')).toEqual([0, 1, 2, 3].map((part) => ['pelvis', part]));
    expect(of('frame_q')).toEqual([0, 1, 2, 3].map((part) => ['F', part]));
    expect(of('trunk q')).toEqual([0, 1, 2, 3].map((part) => ['trunk', part]));
    expect(of('upper_arm_l_q')).toEqual([0, 1, 2, 3].map((part) => ['upperArmL', part]));
    expect(meaningsOf(['qw', 'qx', 'qy']).map(({ kind }) => kind)).toEqual(['ignored', 'ignored', 'ignored']);
  });

  test('matrices, counted from 1 or from 0', () => {
    const from = (first: number, prefix: string): string[] =>
      [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => `${prefix}r${i + first}${j + first}`));
    for (const names of [from(1, 'upperArmL '), from(0, 'upperArmL_')])
      expect(meaningsOf(names)).toEqual(
        Array.from({ length: 9 }, (_, part) => ({ kind: 'matrix', of: 'upperArmL', part })),
      );
    expect(meaningsOf(from(1, ''))[3]).toEqual({ kind: 'matrix', of: 'pelvis', part: 3 });
  });

  test('somersault, tilt and twist', () => {
    expect(meaningsOf(['Somersault [deg]', 'Tilt [deg]', 'Twist [deg]'])).toEqual(
      ['somersault', 'tilt', 'twist'].map((part) => ({ kind: 'attitude', of: 'F', part, inRadians: false })),
    );
    expect(meaningsOf(['pelvis somersault', 'pelvis tilt', 'pelvis twist'], 0)[2]).toEqual({
      kind: 'attitude',
      of: 'pelvis',
      part: 'twist',
      inRadians: true,
    });
  });
});

test('the frames of a flight are read back: all angles, the root, F, somersault; no rate and no force is taken for more', () => {
  const frames = calcFrames(flight, evenTimes(30));
  const text = [...formatFrames(frames, body, wordFrames(frames))].join('');
  const recording = readText('frames.csv', text);
  const columns = guessColumns(recording, body);
  const sets = new Set(
    columns.map(({ means: m }) =>
      m.kind === 'angle' ? 'angle' : 'of' in m ? `${m.kind} ${m.of}` : m.kind === 'point' ? m.point : m.kind,
    ),
  );
  expect([...sets].sort()).toEqual([
    'angle',
    'attitude F',
    'ignored',
    'mass centre',
    'pelvis.o',
    'quaternion F',
    'quaternion pelvis',
  ]);
  expect(columns.filter(({ means }) => means.kind === 'angle').length).toBe(body.angles.length);
  const [point] = runSteps(pointsOfTable(recording, columns, 1));
  expect([point.name, [...point.p]]).toEqual(['pelvis.o', [...frames.p_WBo_W]]);
});

test('so are the segments of a flight: origin and mass centre of each, its attitude, the points of contact', () => {
  const times = evenTimes(30);
  const made = calcSegmentFrames(flight, times);
  const recording = readText('segments.csv', [...formatSegments(made, body)].join(''));
  const columns = guessColumns(recording, body);
  const points = runSteps(pointsOfTable(recording, columns, 0.001));
  expect(points.length).toBe(1 + 2 * body.segments.length + body.contacts.length);
  const foot = body.segments.findIndex(({ name }) => name === 'footR');
  const p = points.find(({ name }) => name === 'footR.o')?.p ?? [];
  for (let k = 0; k < 3; k++) expect(p[k]).toBeCloseTo(1000 * made.p_WBo_W[3 * foot + k], 9);
  const turned = columns.flatMap(({ means }) => (means.kind === 'quaternion' && means.part === 0 ? [means.of] : []));
  expect(turned.length).toBe(body.segments.length);
  expect(flown(30).n).toBe(times.length);
});
