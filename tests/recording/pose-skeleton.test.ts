// Skeletons of other makers laid over the body: the angles and attitudes that the flight had.
import { expect, test } from 'vitest';
import type { HumanAthlete } from '../../sim/files/athlete-schema.ts';
import { calcSegmentFrames } from '../../sim/index.ts';
import { mulInto, mulTInto } from '../../sim/math/rot.ts';
import { poseRecording } from '../../sim/recording/pose-recording.ts';
import { athleteOfReady, drain, evenTimes, flyReady } from './filmed.ts';
import { foreignSkeleton } from './foreign-skeleton.ts';

const flight = flyReady('back-straight-full');
const { body } = flight;
const athlete = athleteOfReady('back-straight-full') as HumanAthlete;
const frames = calcSegmentFrames(flight, evenTimes(0, flight.duration, 60));
const ns = body.segments.length;
const na = body.angles.length;

const CASES = [
  {
    title: 'Y up, centimetres, arms out',
    turn: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    perM: 100,
    armsAtRest: 90,
    up: '+y',
    unitM: 0.01,
  },
  {
    title: 'Z up, inches, arms down',
    turn: [1, 0, 0, 0, 0, -1, 0, 1, 0],
    perM: 1 / 0.0254,
    armsAtRest: 0,
    up: '+z',
    unitM: 0.0254,
  },
  {
    title: 'X up, metres, arms at 45 deg',
    turn: [0, 1, 0, -1, 0, 0, 0, 0, 1],
    perM: 1,
    armsAtRest: 45,
    up: '+x',
    unitM: 1,
  },
] as const;

for (const { title, up, unitM, ...how } of CASES)
  test(`${title}: axes and unit are found, and every angle and attitude is that of the flight`, () => {
    const { posed, map, notes } = drain(
      poseRecording(foreignSkeleton(body, frames, 60, how), athlete, {}, 'recording'),
    );
    expect([map.up, map.unitM]).toEqual([up, unitM]);
    let attitude = 0;
    let place = 0;
    let angle = 0;
    for (let i = 0; i < frames.n; i++) {
      let dot = 0;
      for (let k = 0; k < 4; k++) dot += posed.quat_WB[4 * i + k] * frames.quat_WB[4 * ns * i + k];
      attitude = Math.max(attitude, 2 * Math.acos(Math.min(1, Math.abs(dot))));
      for (let k = 0; k < 3; k++)
        place = Math.max(place, Math.abs(posed.p_WBo_W[3 * i + k] - frames.p_WBo_W[3 * ns * i + k]));
      for (let a = 0; a < na; a++)
        angle = Math.max(angle, Math.abs(posed.angles[na * i + a] - frames.angles[na * i + a]));
    }
    // measured: 4e-8 (acos near 1), 4e-16, 1e-7
    expect(attitude).toBeLessThan(1e-6);
    expect(place).toBeLessThan(1e-12);
    expect(angle).toBeLessThan(1e-6);
    // only the unit is guessed, and that is said
    expect(notes).toHaveLength(1);
  });

test('a leg that no name tells is refused with what is missing', () => {
  const recording = foreignSkeleton(body, frames, 60, CASES[0]);
  const joints = recording.joints.map((j) => ({ ...j, name: j.name.replace(/Left(Leg|Foot|UpLeg)/, 'bone$1') }));
  expect(() => drain(poseRecording({ ...recording, joints }, athlete, {}, 'recording'))).toThrow(/two legs/);
});

test('a knee that bends about another axis of the skeleton is found by the plane it bends in', () => {
  const tuck = flyReady('back-tuck');
  const seen = calcSegmentFrames(tuck, evenTimes(0, tuck.duration, 60));
  const recording = foreignSkeleton(tuck.body, seen, 60, CASES[0]);
  const spin = 0.6;
  const c = Math.cos(spin);
  const s = Math.sin(spin);
  const S = [c, 0, s, 0, 1, 0, -s, 0, c];
  const spun = recording.joints.map((j) => {
    if (j.name !== 'RightUpLeg' && j.name !== 'RightLeg') return j;
    const R = new Float64Array(j.R.length);
    const A = new Float64Array(9);
    for (let i = 0; i < recording.frames; i++) {
      // thigh's axes spun about the bone: R S of the thigh, S^T R S of the shank
      if (j.name === 'RightLeg') {
        mulTInto(S, 0, j.R, 9 * i, A, 0);
        mulInto(A, 0, S, 0, R, 9 * i);
      } else mulInto(j.R, 9 * i, S, 0, R, 9 * i);
    }
    return { ...j, R };
  });
  const { posed } = drain(
    poseRecording({ ...recording, joints: spun }, athleteOfReady('back-tuck') as HumanAthlete, {}, 'recording'),
  );
  const knee = tuck.body.angles.findIndex((a) => a.name === 'kneeFlexionR');
  let worst = 0;
  for (let i = 0; i < seen.n; i++)
    worst = Math.max(worst, Math.abs(posed.angles[na * i + knee] - seen.angles[na * i + knee]));
  expect(worst).toBeLessThan(0.02);
});
