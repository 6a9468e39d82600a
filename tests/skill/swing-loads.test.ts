// What a swing asks of its joints is held against known strength whatever strength it was swung with; no age without a source is judged.
import { expect, it } from 'vitest';
import { makeHuman } from '../../sim/body/human.ts';
import * as contact from '../../sim/contact/index.ts';
import { makeSwing } from '../../sim/contact/make-swing.ts';
import type { Swing } from '../../sim/contact/swing.ts';
import { phasesOf } from '../../sim/files/phases-json.ts';
import { calcSwingLoads } from '../../sim/skill/swing-loads.ts';
import { flyWhole } from '../../sim/skill/whole.ts';
import { formatWhole } from '../../sim/words/whole-words.ts';
import { STILL, timedGiant, twoGiants } from '../contact/swings.ts';
import { builtOf, fileOf } from './load.ts';

const driven = makeSwing(twoGiants);
const worst = (swing: Swing, name: string): number => {
  const joint = swing.joints.find((j) => j.name === name);
  return joint ? Math.max(...joint.needed.subarray(0, swing.shown).map(Math.abs)) : Number.NaN;
};

it('a giant driven whatever it takes: the shoulders ask for more than is known, both arms together', () => {
  const { cautions, said, largest } = calcSwingLoads(driven);
  expect(cautions.map((c) => driven.body.angles[c.angle].name)).toContain('shoulderElevationL');
  for (const c of cautions) expect(Math.abs(c.value) / c.limit).toBeGreaterThan(1.3);
  expect(said.map((s) => s.title).join(' ')).toMatch(/^Arm (raise|lowering) asks for/);
  for (const { joint, torque } of largest) expect(Math.abs(torque)).toBeCloseTo(worst(driven, joint), 9);
});

it('the same with three times the strength: the same cautions', () => {
  const strong = makeSwing({ ...twoGiants, strength: 3 });
  expect(calcSwingLoads(strong).said).toEqual(calcSwingLoads(driven).said);
});

it('hanging still asks for nothing beyond', () => {
  const still = makeSwing({ ...timedGiant, moves: STILL, start: { kind: 'cast', angle: -20 / 57.3 }, duration: 1 });
  expect(calcSwingLoads(still).cautions).toEqual([]);
});

it('at 14 years nothing is judged: torques are shown, a line says why', () => {
  const child = { ...makeHuman({ name: 'C', sex: 'male', mass: 60, stature: 1.66 }), age: 14 };
  const { cautions, notCompared, largest } = calcSwingLoads(makeSwing({ ...twoGiants, body: child }));
  expect(cautions).toEqual([]);
  expect(notCompared?.title).toBe('14 years old: inertia known to 15 %; loads are shown, not judged.');
  expect(largest.length).toBe(4);
});

it('JSON and lines of a whole skill say the same', () => {
  const whole = flyWhole(builtOf(fileOf('giant-double-straight')), contact);
  if (!whole.swing) throw new RangeError('a swing');
  // of no stated age: compared with adults
  const { age: _, ...body } = whole.swing.body;
  const swing = Object.create(whole.swing, { body: { value: body } }) as Swing;
  const loads = calcSwingLoads(swing);
  const json = phasesOf({ ...whole, swing }, undefined, loads) as {
    swing: { beyondLimits: { said: string[]; timesKnown: number }[]; jointLoads: { largestNM: number }[] };
  };
  expect(json.swing.beyondLimits.length).toBeGreaterThan(0);
  const text = formatWhole({ ...whole, swing }, undefined, loads);
  for (const { said, timesKnown } of json.swing.beyondLimits) {
    expect(timesKnown).toBeGreaterThan(1.3);
    expect(text).toContain(said.join(' '));
  }
  const largest = Math.max(...json.swing.jointLoads.map((j) => Math.abs(j.largestNM)));
  expect(largest).toBeCloseTo(Math.max(...loads.largest.map((l) => Math.abs(l.torque))), 0);
  // of both arms, measured 257 N m
  expect(largest).toBeGreaterThan(250);
});
