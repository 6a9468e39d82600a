/** Inputs and results of a search: each input puts what it reads, and the short way to an end agrees with the summary. */

import { describe, expect, it } from 'vitest';
import {
  buildSkill,
  calcFlightEnd,
  calcFrames,
  Evaluator,
  findInput,
  findResult,
  flySkill,
  frameTimes,
  listInputs,
  makeFlyer,
  parseSkill,
  RESULTS,
  type SkillSpec,
  summarize,
} from '../../sim/index.ts';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import { relaunch } from '../../sim/skill/launch.ts';
import { someOf } from '../corpus.ts';
import { fileOf, launchedOf, presetIds, shelf } from '../skill/load.ts';

const specOf = (id: string) => parseSkill(fileOf(id), shelf);
/** Flights that differ in their last shape's end alone: rounding; measured 0 on this machine. */
const SAME = 1e-12;
/** Flights cut into other steps; measured 1.4e-11 rad. */
const STEPPED = 1e-9;

describe('inputs', () => {
  for (const id of someOf(presetIds, 3, 1))
    it(`${id}: an input that is put back leaves the same flight, and is read as it was put`, () => {
      const spec = specOf(id);
      for (const input of listInputs(spec)) {
        const [low, high] = input.range;
        expect(input.value, input.id).toBeGreaterThanOrEqual(low);
        expect(input.value, input.id).toBeLessThanOrEqual(high);
        const value = Math.min(high, Math.max(low, input.value + input.scale));
        const changed = input.put(spec, value);
        const read = findInput(changed, input.id);
        expect(read.value, input.id).toBeCloseTo(value, 9);
        expect(findInput(input.put(changed, input.value), input.id).value, input.id).toBeCloseTo(input.value, 9);
        if (input.level === 'takeoff') expect(changed.blocks).toBe(spec.blocks);
        if (input.level !== 'body') expect(changed.athlete).toBe(spec.athlete);
      }
    });

  it('shifting a move keeps how long it takes; its duration keeps where it starts', () => {
    const spec = specOf('former/back-straight-double');
    const shifted = findInput(spec, 'block:3.moveStart').put(spec, 0.4);
    expect(shifted.blocks[1].to.s).toBeCloseTo(0.4, 12);
    expect(shifted.blocks[2].from.s).toBeCloseTo(0.8, 12);
    const longer = findInput(spec, 'block:3.moveTime').put(spec, 0.5);
    expect(longer.blocks[1].to.s).toBe(spec.blocks[1].to.s);
    expect(longer.blocks[2].from.s).toBeCloseTo(0.872, 12);
  });

  it('momentum as a vector is the momentum that the skill flies with', () => {
    const spec = specOf('former/back-straight-double');
    const z = findInput(spec, 'takeoff.h.z');
    expect(z.value).toBe(flySkill(launchedOf(spec)).h_Scm_W[2]);
    expect(flySkill(launchedOf(z.put(spec, z.value + 1))).h_Scm_W).toEqual([0, 0, z.value + 1]);
  });

  it('an angle of a shape changes every block of that shape; one of both sides takes the place of each side', () => {
    const spec = specOf('former/back-straight-double');
    const changed = findInput(spec, 'shape:oneUpOneDown.angle:shoulderElevation').put(spec, 1);
    expect(changed.blocks[1].adjust).toEqual({ shoulderElevation: 1 });
    expect(changed.blocks[3].adjust).toEqual({ shoulderElevation: 1 });
  });

  it('unknown inputs and results name those that are near', () => {
    const spec = specOf('back-tuck');
    expect(() => findInput(spec, 'takeoff.speedup')).toThrow(/takeoff.speedUp/);
    expect(() => findInput(spec, 'block:2.angle:hipFlexio')).toThrow(/hipFlexion/);
    expect(() => findInput(spec, 'block:9.angle:hipFlexion')).toThrow(/not possible/);
    expect(() => findResult('somersault')).toThrow(/somersaults/);
  });
});

describe('the short way to the end of a flight', () => {
  for (const id of someOf(presetIds, 3, 2))
    it(`${id}: somersaults, twists, tilt, lean, short and height are the summary's`, () => {
      const spec = specOf(id);
      const skill = launchedOf(spec);
      const flight = flySkill(skill);
      const summary = summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)), skill.target);
      const outcome = new Evaluator(spec, []).outcomeAt([]);
      const of = (name: string): number => findResult(name).get(outcome);
      expect(of('airTime')).toBeCloseTo(summary.duration, 12);
      expect(Math.abs(of('somersaults') - (summary.somersaults ?? Number.NaN))).toBeLessThan(SAME);
      expect(Math.abs(of('twists') - (summary.twists ?? Number.NaN))).toBeLessThan(SAME);
      expect(Math.abs(of('tilt') - (summary.tilt ?? Number.NaN))).toBeLessThan(SAME);
      expect(Math.abs(of('lean') - (summary.landing?.lean ?? Number.NaN))).toBeLessThan(SAME);
      expect(Math.abs(of('short') - (summary.landing?.short ?? Number.NaN))).toBeLessThan(SAME);
      expect(of('height')).toBeCloseTo(summary.height.value, 12);
    });

  it('changed schedules and take-offs fly as they would alone, in any order', () => {
    const spec = specOf('former/back-straight-double');
    const inputs = ['block:2.start', 'takeoff.speedUp', 'body.mass'].map((i) => findInput(spec, i));
    const many = new Evaluator(spec, inputs);
    for (const values of [
      [0.2, 8.2, 66],
      [0.24, 8.21, 66],
      [0.2, 8.3, 64],
      [0.2, 8.2, 66],
    ]) {
      const alone = calcFlightEnd(flySkill(launchedOf(many.specAt(values))));
      const { end } = many.outcomeAt(values);
      expect(Math.abs(end.duration - alone.duration)).toBeLessThan(SAME);
      expect(Math.abs(end.twist - alone.twist)).toBeLessThan(SAME);
    }
  });

  it('a flight that tilts past 80 deg has no counts, as in its frames', () => {
    const spec = specOf('former/back-straight-double');
    const acrossIt = findInput(spec, 'takeoff.h.x');
    const fallen = acrossIt.put(spec, 300);
    const flight = flySkill(launchedOf(fallen));
    const frames = calcFrames(flight, frameTimes(flight.duration, 240));
    expect(frames.undefinedFrom).toBeDefined();
    const outcome = new Evaluator(fallen, []).outcomeAt([]);
    for (const id of ['somersaults', 'twists', 'tilt', 'lean', 'short']) expect(findResult(id).get(outcome)).toBeNaN();
  });

  it('a flight that touches down before its last shape is reached lands on its way there', () => {
    const spec = specOf('former/back-straight-double');
    const late = launchedOf(findInput(spec, 'block:5.start').put(spec, 1.75));
    const flight = flySkill(late);
    expect(makeFlyer().fly(late).duration).toBe(flight.duration);
    expect(flight.duration).toBeLessThan(1.75);
    // the same arm path with touchdown stated as a duration: the shape starts and ends after it
    const [last] = late.schedule.blocks.slice(-1);
    const stated = relaunch(late, {
      takeoff: { ...late.takeoff, momentum: { kind: 'vector' as const, h_Scm_W: flight.h_Scm_W } },
      end: { kind: 'duration' as const, duration: flight.duration },
      schedule: { ...late.schedule, blocks: [...late.schedule.blocks.slice(0, -1), { ...last, to: last.from }] },
    });
    expect(Math.abs(calcFlightEnd(flySkill(stated)).twist - calcFlightEnd(flight).twist)).toBeLessThan(STEPPED);
  });

  it('every result is a number for a preset with a target', () => {
    const outcome = new Evaluator(specOf('former/double-back-pike-full-out'), []).outcomeAt([]);
    for (const r of RESULTS)
      if (r.id !== 'twistsAfter.3' && !r.id.startsWith('catch.')) expect(r.get(outcome), r.id).not.toBeNaN();
  });
});

it('an input that is listed, put at its own value, leaves the flight: arms that differ stay as they are', () => {
  for (const id of ['vault-handspring-half', 'back-straight-full', 'giant-late-hand-full']) {
    const spec = specOf(id);
    const anglesOf = (s: SkillSpec): Float64Array[] => {
      const { body, schedule } = buildSkill(s);
      const compiled = compileSchedule(body, schedule, { apex: 0.4, touchdown: 1 });
      return [0, 0.3, 0.5, 0.7, 0.9, 1].map((t) => {
        const angles = new Float64Array(body.angles.length);
        compiled.anglesInto(t, angles, new Float64Array(angles.length));
        return angles;
      });
    };
    const before = anglesOf(spec);
    for (const input of listInputs(spec).filter((one) => one.level === 'schedule'))
      anglesOf(input.put(spec, input.value)).forEach((angles, i) => {
        angles.forEach((a, k) => {
          expect(Math.abs(a - before[i][k]), `${id} ${input.id}`).toBeLessThan(STEPPED);
        });
      });
  }
});
