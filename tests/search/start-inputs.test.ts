// What gives a launch can be varied: numbers of a swing and of a known contact are inputs like any other.

import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import {
  Evaluator,
  findInput,
  findResult,
  listInputs,
  makeBody,
  makeUnknown,
  ownAim,
  putInputs,
  solve,
  usualSpread,
} from '../../sim/index.ts';
import { isTooTight, keySlacks } from '../../sim/search/key-order.ts';
import { swingIn } from '../files/parts.ts';
import { fileOf, specOf } from '../skill/load.ts';

const RAD = Math.PI / 180;
const giant = specOf(fileOf('giant-double-straight'));
const late = specOf(fileOf('giant-late-hand-full'));
const vault = specOf(fileOf('vault-handspring-half'));
const idsOf = (spec: typeof giant): string[] => listInputs(spec).map((i) => i.id);

describe('inputs of what comes before a flight', () => {
  it('a swing has its release, start and keys, and no take-off', () => {
    expect(idsOf(giant)).toEqual(
      expect.arrayContaining([
        'swing.releaseAngle',
        'swing.late',
        'swing.nudge',
        'swing.key:3.angle',
        'swing.key:3.at',
      ]),
    );
    expect(idsOf(giant).filter((id) => id.startsWith('takeoff.'))).toEqual([]);
    expect(idsOf(late)).toContain('swing.lateHand');
  });

  it('a known contact has force, place and approach; height and attitude of the take-off stay its own', () => {
    expect(idsOf(vault)).toEqual(
      expect.arrayContaining([
        'contact.time',
        'contact.force',
        'contact.lean',
        'contact.across',
        'contact.place.along',
        'contact.place.across',
        'contact.freeTurn',
        'contact.speedAlong',
        'contact.speedUp',
        'contact.speedAcross',
        'contact.h.x',
        'contact.h.y',
        'contact.h.z',
      ]),
    );
    expect(idsOf(vault).filter((id) => id.startsWith('takeoff.'))).toEqual([
      'takeoff.height',
      'takeoff.lean',
      'takeoff.tilt',
      'takeoff.twist',
    ]);
  });

  it('each is put back as it is read, and moves the launch', () => {
    for (const spec of [giant, late, vault]) {
      const inputs = listInputs(spec).filter((i) => /^(swing|contact|takeoff)\./.test(i.id));
      for (const input of inputs) {
        expect(input.put(spec, input.value), input.id).toEqual(spec);
        const moved = input.put(spec, input.value + 1e-3);
        expect(findInput(moved, input.id).value, input.id).toBeCloseTo(input.value + 1e-3, 12);
        expect(moved.start, input.id).not.toEqual(spec.start);
      }
    }
  });

  it('an angle of a swing key has the range of its joint for its usual span', () => {
    for (const [id, name] of [
      ['swing.key:3.angle', 'shoulderElevationR'],
      ['swing.key:7.angle', 'hipFlexionR'],
    ]) {
      const { input, from, to, fromSource, toSource } = makeUnknown(giant, id);
      const joint = makeBody(giant.athlete).angles.find((a) => a.name === name);
      if (!joint) throw new Error(name);
      expect(from).toBe(Math.min(input.value, Math.max(joint.range[0], input.value - 45 * RAD)));
      expect(to).toBe(Math.max(input.value, Math.min(joint.range[1], input.value + 45 * RAD)));
      expect(`${fromSource} ${toSource}`, id).toContain("the joint's range");
    }
  });

  it('only what a take-off has is said to be given; a number that none has is unknown', () => {
    const known = [fileOf('back-tuck'), fileOf('cat-turn')].flatMap((file) => idsOf(specOf(file)));
    for (const id of new Set(known.filter((i) => i.startsWith('takeoff.'))))
      expect(() => findInput(giant, id), id).toThrow(`${id} is given by the swing`);
    expect(() => findInput(giant, 'takeoff.foo')).toThrow('a number of this skill: swing.releaseAngle');
    expect(() => findInput(vault, 'takeoff.foo')).toThrow('a number of this skill: contact.time');
  });

  it('a number that the launch gives is refused with what to vary in its place', () => {
    expect(() => findInput(giant, 'takeoff.h.z')).toThrow(
      'takeoff.h.z is given by the swing; vary swing.releaseAngle, swing.late or swing.key:3.angle',
    );
    expect(() => findInput(vault, 'takeoff.speedUp')).toThrow(
      'takeoff.speedUp is given by the contact; vary contact.force, contact.lean or contact.h.z',
    );
  });

  it('what to vary in its place is a number that the swing has', () => {
    if (giant.start.kind !== 'swing') throw new Error('no swing');
    const { swing } = giant.start;
    const withKeys = (n: number): typeof giant => {
      const keys = { hip: Array.from({ length: n }, (_, i) => ({ at: i, value: 0, kind: 'stop' as const })) };
      return { ...giant, start: { kind: 'swing', swing: { ...swing, moves: { over: 'angle', keys } } } };
    };
    expect(() => findInput(withKeys(1), 'takeoff.h.z')).toThrow(/swing\.late or swing\.key:1\.angle$/);
    expect(() => findInput(withKeys(0), 'takeoff.h.z')).toThrow(/vary swing\.releaseAngle or swing\.late$/);
  });

  it('the usual errors of a bar skill have the time of the release in them, those of a contact its force', () => {
    const by = (spec: typeof giant, id: string) => usualSpread(spec).parts.find((p) => p.input.id === id)?.by;
    expect(by(giant, 'swing.late')).toBe(0.012);
    expect(by(vault, 'contact.force')).toBeCloseTo(0.02 * 2.3, 12);
    expect(by(vault, 'contact.lean')).toBeCloseTo(0.5 * RAD, 12);
  });

  it('draws of swing keys that cannot be swung are counted as such, in or out of order', { timeout: 60_000 }, () => {
    // driven whatever it takes: with a limit to their strength joints are late in place of failing
    const driven = fileOf('giant-double-straight');
    delete swingIn(driven).strength;
    const aim = ownAim(specOf(driven));
    const spans = { 'swing.key:16.at': [-100, -40], 'swing.key:17.at': [-60, -10] } as const;
    const { unflown, draws } = solve({
      ...aim,
      unknowns: Object.entries(spans).map(([id, [from, to]]) => makeUnknown(aim.spec, id, [from * RAD, to * RAD])),
      answers: 100,
      fits: 2,
      draws: 24,
      contact,
    });
    expect(draws).toBe(24);
    expect(unflown).toBeGreaterThan(0);
    expect(unflown).toBeLessThan(draws);
  });

  it('swing keys have a distance from changing order, a tenth of a degree or a millisecond the least', () => {
    const times = { apex: 0.5, touchdown: 1 };
    const ids = ['swing.key:16.at', 'swing.key:17.at'];
    const [first, second] = ids.map((id) => findInput(giant, id));
    const apart = (by: number): number[] => keySlacks(second.put(giant, first.value + by * RAD), times);
    const before = keySlacks(giant, times);
    expect(isTooTight(before, before)).toBe(false);
    expect(isTooTight(apart(0.11), before)).toBe(false);
    expect(isTooTight(apart(0.09), before)).toBe(true);
    expect(isTooTight(apart(-1), before)).toBe(true);
    if (giant.start.kind !== 'swing') throw new Error('no swing');
    const { swing } = giant.start;
    const timed = (by: number): number[] => {
      const keys = { hip: [0.3, 0.3 + by].map((at, i) => ({ at, value: i, kind: 'stop' as const })) };
      return keySlacks(
        { ...giant, start: { kind: 'swing', swing: { ...swing, moves: { over: 'time', keys } } } },
        times,
      );
    };
    expect(isTooTight(timed(1.1e-3), timed(0.1))).toBe(false);
    expect(isTooTight(timed(0.9e-3), timed(0.1))).toBe(true);
  });

  it('a bar skill is solved from the bar: moved off its release, it finds a release that lands', {
    timeout: 60_000,
  }, () => {
    const off = findInput(giant, 'swing.late');
    const spec = putInputs(giant, [off], [off.value - 0.015]);
    // by its angle: what the landing model makes of it is in held-answers.test.ts
    const aim = ownAim(spec, undefined, 'any');
    const short = (s: typeof giant): number => findResult('short').get(new Evaluator(s, [], { contact }).outcomeAt([]));
    const tolerance = aim.wishes.find((w) => w.result === 'short')?.tolerance ?? 0;
    expect(Math.abs(short(spec))).toBeGreaterThan(tolerance);
    const { solutions } = solve({
      ...aim,
      unknowns: [makeUnknown(aim.spec, 'swing.late', [-0.05, 0.05])],
      answers: 1,
      fits: 2,
      contact,
    });
    expect(solutions).toHaveLength(1);
    expect(Math.abs(short(solutions[0].spec))).toBeLessThan(tolerance);
  });
});
