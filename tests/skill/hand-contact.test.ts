// Hands that stay on the legs while hips and knees move: measured along the flight, between the solver's own instants too.

import { describe, expect, test } from 'vitest';
import { shapes } from '../../presets/index.ts';
import {
  calcFrames,
  calcHandGaps,
  calcOverlaps,
  calcShapeMotion,
  compileSkillSchedule,
  type FileSchedule,
  type Flight,
  flySkill,
  frameTimes,
  getModel,
  makeShapeMotion,
  parseSkill,
  type SkillFile,
} from '../../sim/index.ts';
import { flightIn } from '../files/parts.ts';
import { sampleSkill } from '../files/sample-skill.ts';
import { launchedOf } from './load.ts';

const shelf = { athletes: {}, shapes };
const at = (s: number, anchor: 'takeoff' | 'touchdown' = 'takeoff') => ({ anchor, s });
type Schedule = NonNullable<ReturnType<typeof flightIn>['schedule']>;
/** From arms overhead into a shape that the hands hold, and back. */
const holding = (blocks: NonNullable<Schedule['blocks']>, contacts: Schedule['contacts']): SkillFile => ({
  ...sampleSkill,
  phases: [
    {
      ...flightIn(sampleSkill),
      schedule: {
        base: 'armsOverhead',
        blocks: [
          { shape: 'armsOverhead', from: at(-0.1), to: at(0), arms: 'front' },
          ...blocks,
          { shape: 'armsOverhead', from: at(-0.02, 'touchdown'), to: at(0.2, 'touchdown'), arms: 'front' },
        ],
        contacts,
      },
    },
  ],
});
const tuck = holding(
  [
    { shape: 'tuck', from: at(0.3), to: at(0.4), arms: 'front' },
    { shape: 'tuck', from: at(0.6), to: at(0.62), adjustDeg: { hipFlexion: 112, kneeFlexion: 118, elbowFlexion: 40 } },
  ],
  [{ hand: 'both', on: 'shin', from: at(0.3), to: at(0.6) }],
);
const pike = holding(
  [
    { shape: 'pike', from: at(0.3), to: at(0.35), arms: 'front' },
    { shape: 'pike', from: at(0.55), to: at(0.56), arms: 'front', adjustDeg: { hipFlexion: 100, kneeFlexion: 10 } },
  ],
  [{ hand: 'both', on: 'behindKnee', from: at(0.3), to: at(0.55) }],
);
const build = (file: SkillFile) => launchedOf(parseSkill(file, shelf));
type Block = NonNullable<Schedule['blocks']>[number];
type AdjustDeg = NonNullable<Block['adjustDeg']>;
/** The tuck with those of its shapes that `which` names adjusted further. */
const adjusted = (which: (b: Block) => boolean, more: AdjustDeg): SkillFile => ({
  ...tuck,
  phases: [
    {
      ...flightIn(tuck),
      schedule: {
        ...flightIn(tuck).schedule,
        blocks: flightIn(tuck).schedule.blocks?.map((b) =>
          which(b) ? { ...b, adjustDeg: { ...b.adjustDeg, ...more } } : b,
        ),
      },
    },
  ],
});
/** Sides are distinguished by one angle, so that each hand is solved by itself. */
const lopsided = adjusted((b) => b.shape === 'tuck', { hipFlexionL: 115 });

/** The hand in the frame of a segment of the leg, by the engine's kinematics. */
function handIn(flight: Flight, side: string, segmentName: string, t: number): number[] {
  const { body } = flight;
  const sm = makeShapeMotion(getModel(body));
  flight.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
  calcShapeMotion(sm);
  const index = (name: string): number => body.segments.findIndex((s) => s.name === name);
  const knuckle = body.contacts.find((c) => c.name === `knuckle${side}`)?.p_BoC_B ?? [0, 0, 0];
  const [h, l] = [index(`hand${side}`), index(segmentName)];
  const p = [0, 1, 2].map(
    (k) =>
      sm.p_BoSo_B[3 * h + k] -
      sm.p_BoSo_B[3 * l + k] +
      [0, 1, 2].reduce((s, j) => s + sm.R_BS[9 * h + 3 * k + j] * knuckle[j], 0),
  );
  return [0, 1, 2].map((k) => [0, 1, 2].reduce((s, j) => s + sm.R_BS[9 * l + 3 * j + k] * p[j], 0));
}
const gap = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((x, i) => x - b[i]));

function mostDrift(flight: Flight, side: string, segment: string, from: number, to: number): number {
  const place = handIn(flight, side, segment, from);
  let most = 0;
  for (let i = 0; i <= 997; i++)
    most = Math.max(most, gap(place, handIn(flight, side, segment, from + ((to - from) * i) / 997)));
  return most;
}

describe('within 5 mm of its place (measured: 0.014 mm on the shin, 0.043 mm behind the knee)', () => {
  for (const side of ['L', 'R']) {
    test(`the hand on the shin while a tuck opens, ${side}`, () => {
      const without = flySkill(
        build({ ...tuck, phases: [{ ...flightIn(tuck), schedule: { ...flightIn(tuck).schedule, contacts: [] } }] }),
      );
      expect(mostDrift(without, side, `shank${side}`, 0.3, 0.6)).toBeGreaterThan(0.03);
      for (const file of [tuck, lopsided])
        expect(mostDrift(flySkill(build(file)), side, `shank${side}`, 0.3, 0.6)).toBeLessThan(0.005);
    });
    test(`the hand behind the knee while a pike closes, ${side}`, () => {
      expect(mostDrift(flySkill(build(pike)), side, `thigh${side}`, 0.3, 0.55)).toBeLessThan(0.005);
    });
  }
});

test('the hand lies on the drawn surface, not in it', () => {
  const flight = flySkill(build(tuck));
  const [x, y, z] = handIn(flight, 'R', 'shankR', 0.4);
  expect(Math.hypot(x, z)).toBeGreaterThan(0.06);
  expect(Math.hypot(x, z)).toBeLessThan(0.1);
  expect(y).toBeLessThan(0);
});

test('on the way in, while they hold and on the way out the arms pass through nothing', () => {
  for (const file of [tuck, pike, lopsided]) {
    const flight = flySkill(build(file));
    const frames = calcFrames(flight, frameTimes(flight.duration, 120));
    const shown = calcOverlaps(flight, frames).map((o) => [
      flight.body.segments[o.segmentA].name,
      flight.body.segments[o.segmentB].name,
      o,
    ]);
    expect(shown).toEqual([]);
  }
});

test('angles, their rates and second derivatives are continuous, at both ends of the contact too', () => {
  const { schedule } = flySkill(build(tuck));
  const n = schedule.hinges;
  const at3 = (t: number) => {
    const out = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
    schedule.evalInto(t, out[0], out[1], out[2]);
    return out;
  };
  const eps = 1e-9;
  for (const t of [...schedule.breaks, ...Array.from({ length: 73 }, (_, i) => 0.3 + i / 240)]) {
    // the arm passes overhead at take-off, where plane and turn may jump by convention
    if (t < 0.02) continue;
    const [a, b] = [at3(t - eps), at3(t + eps)];
    for (let k = 0; k < n; k++) {
      expect(Math.abs(a[0][k] - b[0][k])).toBeLessThan(1e-6);
      expect(Math.abs(a[1][k] - b[1][k])).toBeLessThan(1e-4);
      expect(Math.abs(a[2][k] - b[2][k])).toBeLessThan(0.1);
    }
  }
});

test('outside the contact and its leads the arms do as scheduled', () => {
  const anchors = { apex: 0.43, touchdown: 1 };
  const skill = build(tuck);
  const held = compileSkillSchedule(skill, anchors);
  const free = compileSkillSchedule({ ...skill, contacts: [] }, anchors);
  const n = skill.body.angles.length;
  for (const t of [-0.1, 0, 0.05, 0.099, 0.85, 0.98, 1.1]) {
    const [a, b] = [new Float64Array(n), new Float64Array(n)];
    held.anglesInto(t, a, new Float64Array(n));
    free.anglesInto(t, b, new Float64Array(n));
    expect(gap([...a], [...b])).toBeLessThan(1e-12);
  }
});

test('a hand that cannot follow says how far it stays behind', () => {
  const anchors = { apex: 0.43, touchdown: 1 };
  const far = build({
    ...tuck,
    phases: [
      {
        ...flightIn(tuck),
        schedule: { ...flightIn(tuck).schedule, contacts: [{ hand: 'L', on: 'shin', from: at(0.3), to: at(0.95) }] },
      },
    ],
  });
  const [one, ...others] = calcHandGaps(far, anchors);
  expect(others).toEqual([]);
  expect(one).toMatchObject({ contact: 0, side: 'L' });
  expect(one.gap).toBeGreaterThan(0.1);
  for (const g of calcHandGaps(build(tuck), anchors)) expect(g.gap).toBeLessThan(1e-4);
});

test('a contact that ends before it starts, and contacts of one hand that overlap, are named', () => {
  const of = (contacts: FileSchedule['contacts']) => () =>
    flySkill(build({ ...tuck, phases: [{ ...flightIn(tuck), schedule: { ...flightIn(tuck).schedule, contacts } }] }));
  expect(of([{ hand: 'L', on: 'shin', from: at(0.5), to: at(0.4) }])).toThrow(/hand contact 1/);
  expect(
    of([
      { hand: 'L', on: 'shin', from: at(0.3), to: at(0.5) },
      { hand: 'both', on: 'shin', from: at(0.45), to: at(0.6) },
    ]),
  ).toThrow(/hand contact 1.*hand contact 2/);
});

test('the same at every call, whatever was asked before', () => {
  const anchors = { apex: 0.43, touchdown: 1 };
  const angles = (file: SkillFile): Float64Array => {
    const skill = build(file);
    const out = new Float64Array(skill.body.angles.length);
    compileSkillSchedule(skill, anchors).anglesInto(0.45, out, new Float64Array(out.length));
    return out;
  };
  const first = angles(tuck);
  const dragged = (i: number): SkillFile => adjusted((b) => b.adjustDeg !== undefined, { hipFlexion: 112 - 0.5 * i });
  for (let i = 1; i < 20; i++) expect(angles(dragged(i))).not.toEqual(first);
  expect(angles(tuck)).toEqual(first);
});
