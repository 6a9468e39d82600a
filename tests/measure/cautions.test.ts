// Cautions say which joint, when, by how much; a flight within its limits has none.

import { expect, test } from 'vitest';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import { type Body, calcCautions, calcCautionsAt, calcFrames, flySkill, frameTimes } from '../../sim/index.ts';
import { flightIn } from '../files/parts.ts';
import { emptyShelf, sampleSkill } from '../files/sample-skill.ts';
import { launchedOf, launchedWith } from '../skill/load.ts';

const DEG = Math.PI / 180;

type Keys = { angle: string; at: { anchor: 'takeoff'; s: number }; deg: number }[];
const key = (angle: string, s: number, deg: number): Keys[number] => ({ angle, at: { anchor: 'takeoff', s }, deg });

/** A body that hangs and turns on nothing, moved by the keys alone. */
const hanging = (keys: Keys) =>
  parseSkill(
    {
      ...sampleSkill,
      shapes: { hang: { title: 'Hanging', word: 'hang', angles: {} } },
      phases: [
        {
          ...flightIn(sampleSkill),
          takeoff: { ...flightIn(sampleSkill).takeoff, momentum: { straightSomersaults: 0 } },
          end: { durationS: 0.6 },
          schedule: { base: 'hang', keys },
        },
      ],
    },
    emptyShelf,
  );

function judge(keys: Keys, change: (body: Body) => Body = (body) => body) {
  const skill = launchedOf(hanging(keys));
  const flight = flySkill(launchedWith({ ...skill, body: change(skill.body) }));
  const frames = calcFrames(flight, frameTimes(flight.duration, 240));
  return calcCautions(flight.body, frames).map((c) => ({ ...c, name: flight.body.angles[c.angle].name }));
}

test('a body that keeps still is within everything', () => {
  expect(judge([])).toEqual([]);
});

test('a knee bent 10 deg beyond its range is named with the angle it came to', () => {
  const [first, ...others] = judge([key('kneeFlexionR', 0, 153), key('kneeFlexionR', 1, 153)]);
  expect(first).toMatchObject({ kind: 'range', name: 'kneeFlexionR' });
  expect(first.value).toBeCloseTo(153 * DEG, 9);
  expect(first.limit).toBeCloseTo(143 * DEG, 9);
  expect(others).toEqual([]);
});

test('a span of minimum jerk is fastest in its middle, at 15/8 of its mean speed', () => {
  const found = judge([key('kneeFlexionR', 0.1, 0), key('kneeFlexionR', 0.3, 140)]).filter((c) => c.kind === 'speed');
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ name: 'kneeFlexionR', limit: 17 });
  expect(found[0].t).toBeCloseTo(0.2, 2);
  expect(found[0].value / ((15 / 8) * ((140 * DEG) / 0.2))).toBeCloseTo(1, 4);
});

test('the speed of a shoulder is that of the arm, not of one coordinate: plane and spin cancel for a hanging arm', () => {
  const swept = [key('shoulderPlaneR', 0.1, 0), key('shoulderPlaneR', 0.2, 120)];
  expect(judge(swept).filter((c) => c.kind === 'speed')).toEqual([]);
  const raised = [key('shoulderElevationR', 0, 90), key('shoulderElevationR', 1, 90), ...swept];
  const [found] = judge(raised).filter((c) => c.kind === 'speed');
  expect(found.name).toMatch(/^shoulder(Plane|Turn)R$/);
});

test('torque is held against the limit of its own direction', () => {
  const move = [key('kneeFlexionR', 0.1, 0), key('kneeFlexionR', 0.5, 60)];
  expect(judge(move).filter((c) => c.kind === 'torque')).toEqual([]);
  const weak =
    (positive: number, negative: number) =>
    (body: Body): Body => ({
      ...body,
      angles: body.angles.map((a) => (a.name === 'kneeFlexionR' ? { ...a, torqueLimit: [positive, negative] } : a)),
    });
  const found = (limit: [number, number]) => judge(move, weak(...limit)).filter((c) => c.kind === 'torque');
  expect(found([1, 1e9]).map((c) => [c.name, c.value > 0, c.limit])).toEqual([['kneeFlexionR', true, 1]]);
  expect(found([1e9, 1]).map((c) => [c.name, c.value < 0, c.limit])).toEqual([['kneeFlexionR', true, 1]]);
});

test('of one frame: only what is beyond in that frame', () => {
  const flight = flySkill(launchedOf(hanging([key('kneeFlexionR', 0, 0), key('kneeFlexionR', 0.6, 153)])));
  const frames = calcFrames(flight, frameTimes(flight.duration, 240));
  const kinds = (row: number) => calcCautionsAt(flight.body, frames, row).map((c) => c.kind);
  expect(kinds(0)).toEqual([]);
  expect(kinds(frames.n - 1)).toEqual(['range']);
  // every caution of the whole flight is one of the frame that it names
  for (const c of calcCautions(flight.body, frames)) {
    const row = frames.t.indexOf(c.t);
    expect(calcCautionsAt(flight.body, frames, row)).toContainEqual(c);
  }
});
