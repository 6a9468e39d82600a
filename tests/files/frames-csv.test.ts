// The CSV holds exactly the columns that are promised, and every number reads back to the same bits.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import {
  type Body,
  CAUTION,
  calcFrames,
  type Frames,
  flySkill,
  formatFrames,
  formatMjcf,
  frameColumns,
  frameTimes,
  type SkillFile,
  wordFrames,
} from '../../sim/index.ts';
import { launchedOf } from '../skill/load.ts';
import { emptyShelf, sampleSkill } from './sample-skill.ts';

function fly(file: SkillFile, rateHz = 60): { body: Body; frames: Frames } {
  const flight = flySkill(launchedOf(parseSkill(file, emptyShelf)));
  return { body: flight.body, frames: calcFrames(flight, frameTimes(flight.duration, rateHz)) };
}

const cellsOf = (text: string): string[][] =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));

const { body, frames } = fly(sampleSkill);
const text = [...formatFrames(frames, body, wordFrames(frames))].join('');
const [head, ...rows] = cellsOf(text);
const column = (name: string): string[] => rows.map((row) => row[head.indexOf(name)]);

/** Two rods on a hinge, whose segments are not listed depth first. */
const bent: SkillFile = {
  ...sampleSkill,
  athlete: {
    kind: 'tree',
    name: 'Three plates',
    segments: ['middle', 'leftOne', 'rightOne', 'leftTwo'].map((name) => ({
      name,
      ...(name === 'middle' ? {} : { parent: name === 'leftTwo' ? 'leftOne' : 'middle' }),
      ...(name === 'middle' ? {} : { jointM: [0, 0, 0.3], hinges: [{ name: `bend-${name}`, axis: [0, 0, 1] }] }),
      massKg: 2,
      centreM: [0, 0.2, 0],
      inertiaKgM2: [0.3, 0.2, 0.4, 0, 0, 0],
    })),
  },
  phases: [
    {
      kind: 'flight' as const,
      takeoff: {
        massCentreHeightM: 3,
        velocityMPerS: { along: 0, up: 1 },
        attitudeDeg: { tilt: 70 },
        momentum: { vectorKgM2PerS: [9, 0, 1] },
      },
      end: { durationS: 0.5 },
      schedule: {},
    },
  ],
  shapes: {},
  target: undefined,
} as unknown as SkillFile;

/** What programs read by name, in this order; docs/frames.md says what each means. A change here is a change of the format. */
const ENERGIES = 'e_potential_J,e_rising_J,e_along_J,e_rotation_J,e_limbs_J,e_total_J,joint_power_W,joint_work_J';
const ANGLES =
  'somersault_rad,tilt_rad,twist_rad,somersault_rate_rad_s,tilt_rate_rad_s,twist_rate_rad_s,tilt_from_h_rad,' +
  'somersault_word,tilt_word,twist_word';
const MOMENTS =
  'moment_lateral_kg_m2,moment_front_back_kg_m2,moment_long_kg_m2,principal_1_kg_m2,principal_2_kg_m2,principal_3_kg_m2';
const FRAMES =
  'frame_qw,frame_qx,frame_qy,frame_qz,frame_w_front_back_rad_s,frame_w_long_rad_s,frame_w_lateral_rad_s,' +
  'body_wx_rad_s,body_wy_rad_s,body_wz_rad_s,com_vx_m_s,com_vy_m_s,com_vz_m_s,pelvis_turn_rad,shoulder_turn_rad';
const GROUPS = ['upper', 'arms', 'legs'];

test('the columns of a human are those that are promised, in this order', () => {
  const joints = [...formatMjcf(body, 9.81).matchAll(/<joint name="([^"]+)"/g)].map((m) => m[1]);
  expect(joints).toHaveLength(31);
  const momentum = (group: string, axes: string): string[] => axes.split(' ').map((a) => `h_${group}${a}_kg_m2_s`);
  const promised = [
    't,px,py,pz,qw,qx,qy,qz,vx,vy,vz,wx,wy,wz'.split(','),
    joints.flatMap((j) => [`q_${j}`, `qd_${j}`]),
    'comx,comy,comz,hx,hy,hz'.split(','),
    joints.map((j) => `tau_${j}`),
    [ENERGIES, ANGLES, MOMENTS].flatMap((names) => names.split(',')),
    momentum('', 'front_back long lateral'),
    GROUPS.flatMap((group) => momentum(`${group}_`, 'x y z')),
    GROUPS.flatMap((group) => momentum(`${group}_`, 'front_back long lateral')),
    FRAMES.split(','),
    body.angles.flatMap(({ name }) => [`angle_${name}_rad`, `angle_rate_${name}_rad_s`]),
  ].flat();
  expect(head).toEqual(promised);
});

test('docs/frames.md says what each of them means', () => {
  const page = readFileSync(path.resolve(import.meta.dirname, '../../docs/frames.md'), 'utf8');
  const names = [ENERGIES, ANGLES, MOMENTS, FRAMES].flatMap((list) => list.split(','));
  expect(names.filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
});

test('columns stand in the order of the MJCF joints where the segments do not', () => {
  const made = fly(bent);
  const joints = [...formatMjcf(made.body, 9.81).matchAll(/<joint name="([^"]+)"/g)].map((m) => m[1]);
  expect(joints).toEqual(['bend-leftOne', 'bend-leftTwo', 'bend-rightOne']);
  const names = frameColumns(made.frames, made.body, wordFrames(made.frames));
  expect(names.filter((n) => n.startsWith('q_'))).toEqual(joints.map((j) => `q_${j}`));
});

test('a column of a joint holds that joint, also where the orders differ', () => {
  const made = fly(bent);
  const numbered = { ...made.frames, q: Float64Array.from({ length: made.frames.q.length }, (_, i) => i) };
  const [names, first] = cellsOf([...formatFrames(numbered, made.body, wordFrames(numbered))].join(''));
  const hinges = made.body.segments.flatMap((s) => s.hinges.map((h) => h.name));
  for (const [k, name] of hinges.entries()) expect(first[names.indexOf(`q_${name}`)]).toBe(String(k));
});

test('every cell reads back to the number of the frame, to the bit', () => {
  expect(rows).toHaveLength(frames.n);
  expect(rows.every((row) => row.length === head.length)).toBe(true);
  const hinge = body.segments.flatMap((s) => s.hinges.map((h) => h.name)).indexOf('hipFlexionR');
  const hinges = frames.q.length / frames.n;
  for (let i = 0; i < frames.n; i++) {
    expect(Number(column('t')[i])).toBe(frames.t[i]);
    expect(Number(column('qz')[i])).toBe(frames.quat_WB[4 * i + 3]);
    expect(Number(column('q_hipFlexionR')[i])).toBe(frames.q[hinges * i + hinge]);
    expect(Number(column('tau_hipFlexionR')[i])).toBe(frames.tau[hinges * i + hinge]);
    expect(Number(column('e_total_J')[i])).toBe(frames.eTotal[i]);
    expect(Number(column('moment_long_kg_m2')[i])).toBe(frames.moments[3 * i + 2]);
    expect(Number(column('somersault_rad')[i])).toBe(frames.somersault[i]);
  }
});

test('words stand in their columns', () => {
  expect(column('somersault_word')[0]).toBe('');
  expect(column('somersault_word')[frames.n - 1]).toBe('backward');
});

test('what is not defined is an empty cell', () => {
  const made = fly(bent);
  expect(made.frames.undefinedFrom).toBeGreaterThan(0);
  const [names, ...lines] = cellsOf([...formatFrames(made.frames, made.body, wordFrames(made.frames))].join(''));
  const at = names.indexOf('somersault_rad');
  made.frames.t.forEach((t, i) => {
    expect(lines[i][at] === '').toBe(t >= (made.frames.undefinedFrom ?? 0));
  });
  expect(lines[lines.length - 1][names.indexOf('tilt_from_h_rad')]).not.toBe('');
});

test('the CSV is for machines: no caution, no second header, no NaN', () => {
  expect(text).not.toContain(CAUTION.slice(0, 20));
  expect(text).not.toContain('NaN');
  expect(text.match(/^t,/gm)).toHaveLength(1);
});

test('a long flight comes in pieces that join to whole lines', () => {
  const made = fly(sampleSkill, 1000);
  const pieces = [...formatFrames(made.frames, made.body, wordFrames(made.frames))];
  expect(pieces.length).toBeGreaterThan(3);
  expect(pieces.every((p) => p.endsWith('\n'))).toBe(true);
  expect(pieces.join('').trimEnd().split('\n')).toHaveLength(made.frames.n + 1);
});
