// Cautions say which joint, when, by how much; a flight within its limits has none.

import { expect, test } from 'vitest';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import { type Body, calcCautions, calcCautionsAt, calcFrames, flySkill, frameTimes } from '../../sim/index.ts';
import { wordCaution } from '../../sim/measure/caution-words.ts';
import { listLoads } from '../../sim/measure/joint-loads.ts';
import { flightIn } from '../files/parts.ts';
import { emptyShelf, sampleSkill } from '../files/sample-skill.ts';
import { launchedOf, launchedWith, preset } from '../skill/load.ts';

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
  // the gymnast's zero-torque speed of a bending knee
  expect(found[0].name).toBe('kneeFlexionR');
  expect(found[0].limit / DEG).toBeCloseTo(953, 0);
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

/** A body whose right knee has other strengths, as shares of its own. */
const weak =
  (bending: number, stretching: number) =>
  (body: Body): Body => ({
    ...body,
    angles: body.angles.map((a) => {
      if (a.name !== 'kneeFlexionR' || !a.strength) return a;
      const [s, t] = a.strength.map((own, i) => {
        const share = i === 0 ? bending : stretching;
        const { adults, single } = own;
        return {
          ...own,
          still: own.still * share,
          ...(adults ? { adults: { ...adults, still: adults.still * share } } : {}),
          single: { ...single, still: single.still * share },
        };
      });
      return { ...a, strength: [s, t] as const };
    }),
  });

test('torque is held against the strength of its own sense', () => {
  const move = [key('kneeFlexionR', 0.1, 0), key('kneeFlexionR', 0.5, 60)];
  expect(judge(move).filter((c) => c.kind === 'torque')).toEqual([]);
  const found = (...shares: [number, number]) => judge(move, weak(...shares)).filter((c) => c.kind === 'torque');
  expect(found(0.01, 1).map((c) => [c.name, c.value > 0])).toEqual([['kneeFlexionR', true]]);
  expect(found(1, 0.01).map((c) => [c.name, c.value < 0])).toEqual([['kneeFlexionR', true]]);
});

test('a slow torque is judged at each instant: warned of from 1.3 times the strength there', () => {
  const move = [key('kneeFlexionR', 0, 0), key('kneeFlexionR', 0.6, 60)];
  const [caution] = judge(move, weak(0.01, 1));
  const at = (share: number) => judge(move, weak(0.01 * share, 1)).filter((c) => c.kind === 'torque');
  const times = caution.value / caution.limit;
  expect(times).toBeGreaterThan(1.3);
  expect(caution.over).toBeUndefined();
  // only the strength changes: 1.6 times it is warned of, 1.25 times not
  expect(at(times / 1.6).length).toBe(1);
  expect(at(times / 1.25)).toEqual([]);
});

test('a fast drive is judged as a whole: means of torque and strength from its start to the fastest instant', () => {
  const flight = flySkill(launchedOf(hanging([key('kneeFlexionR', 0.1, 0), key('kneeFlexionR', 0.35, 120)])));
  const frames = calcFrames(flight, frameTimes(flight.duration, 240));
  const { body } = flight;
  const drives = listLoads(body, frames, 0).filter(
    (l) => l.to > l.from && body.angles[l.hinge.angle].name === 'kneeFlexionR',
  );
  const [drive, ...others] = drives;
  expect(others).toEqual([]);
  expect(frames.t[drive.from]).toBeCloseTo(0.1, 1);
  // braked from the middle on, where the span is fastest, by a torque against the motion
  expect(Math.abs(frames.t[drive.to] - 0.225)).toBeLessThan(0.02);
  const hinge = body.segments.flatMap((s) => s.hinges).findIndex((h) => h.name === 'kneeFlexionR');
  const n = drive.to - drive.from + 1;
  const nq = frames.tau.length / frames.n;
  const sum = Array.from({ length: n }, (_, i) => frames.tau[nq * (drive.from + i) + hinge]).reduce((a, b) => a + b, 0);
  expect(drive.torque).toBeCloseTo(sum / n, 9);
});

test('nobody is judged by strength or speed at an age that nothing was measured at', () => {
  const hasty = [key('kneeFlexionR', 0.1, 0), key('kneeFlexionR', 0.2, 153)];
  const kinds = (age?: number) =>
    new Set(judge(hasty, (body) => ({ ...body, ...(age === undefined ? {} : { age }) })).map((c) => c.kind));
  for (const age of [undefined, 18, 25, 40]) expect(kinds(age).has('speed'), String(age)).toBe(true);
  for (const age of [6, 11, 14, 17.9, 41, 70]) expect([...kinds(age)], String(age)).toEqual(['range']);
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

test('a knee or hip that bends on into a tuck says what the hands carry there; one that bends alone does not', () => {
  const wordsOf = (id: string) => {
    const flight = flySkill(preset(id));
    const frames = calcFrames(flight, frameTimes(flight.duration, 240));
    return calcCautions(flight.body, frames).map((c) => ({ ...c, said: wordCaution(flight.body, c) }));
  };
  const tucked = wordsOf('floor-double-tuck').filter((c) => c.kind === 'torque');
  expect(tucked.length).toBeGreaterThan(0);
  for (const { inTuck, said } of tucked) {
    expect(inTuck).toBe(true);
    expect(said.detail).toMatch(/In a tuck the hands on the shins carry part of this/);
  }
  const alone = judge([key('kneeFlexionR', 0.1, 0), key('kneeFlexionR', 0.2, 140)]).filter((c) => c.kind !== 'range');
  expect(alone.length).toBeGreaterThan(0);
  for (const { inTuck } of alone) expect(inTuck).toBeUndefined();
});
