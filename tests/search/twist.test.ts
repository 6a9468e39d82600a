/** The most twist: against a closed form, and what the presets that came out of the search do (H5, H6). */
import { describe, expect, it } from 'vitest';
import {
  calcJointPeaks,
  Evaluator,
  findResult,
  findTwist,
  flySkill,
  makeUnknown,
  parseSkill,
  twistSteps,
} from '../../sim/index.ts';
import * as R from '../oracles/reference.ts';
import { fileOf, launchedOf, shelf, takeoffOf } from '../skill/load.ts';
import { rigidSkill, takeoffWith } from './problems.ts';

const RAD = Math.PI / 180;

describe('the most twist', () => {
  // a rigid body twists by its tilt at take-off alone, and R4 says how much one tilt gives
  const spec = rigidSkill(R.S1_DOWN, {
    takeoff: takeoffWith({ tilt: 4 * RAD, momentum: { kind: 'vector', h_Scm_W: [0, 0, 50] } }),
    end: { kind: 'duration', duration: 1.68 },
    target: { somersaults: 1, somersaultWord: 'backward', twists: 1, twistWord: 'left', landingAngle: 0 },
  });
  const within = (tiltDeg: number) => ({
    spec,
    wishes: [{ result: 'somersaults', value: 1, tolerance: 1e-3 }],
    unknowns: [makeUnknown(spec, 'takeoff.tilt', [1 * RAD, tiltDeg * RAD]), makeUnknown(spec, 'end.duration', [1, 3])],
    answers: 1,
    fits: 2,
    draws: 4,
  });

  it('of a rigid body that may tilt by 12.9 deg is 2 in a somersault, and the tilt is what holds it', () => {
    const options = { from: 1, step: 0.5, leastStep: 0.25 };
    const found = findTwist(within(R.TILT_NEEDED[1].tiltDeg + 0.1), options);
    expect(found.twists).toBe(2);
    expect((found.best?.values[0] ?? 0) / RAD).toBeCloseTo(R.TILT_NEEDED[1].tiltDeg, 1);
    const bound = found.beyond?.nearest?.obstacles.find((o) => o.kind === 'bound');
    expect(bound).toMatchObject({ side: 'high', unknown: { input: { id: 'takeoff.tilt' } } });
    // with a little less tilt two twists are not found
    expect(findTwist(within(R.TILT_NEEDED[1].tiltDeg - 0.3), options).twists).toBe(1.75);
  });

  it('stops where it is asked to', () => {
    const steps = twistSteps(within(12), { from: 1 });
    let s = steps.next();
    while (!s.done) s = steps.next(true);
    expect(s.value.isComplete).toBe(false);
  });
});

describe('skills that the search found', () => {
  const flown = (id: string) => {
    const spec = parseSkill(fileOf(id), shelf);
    const outcome = new Evaluator(spec, []).outcomeAt([]);
    return {
      spec,
      of: (result: string): number => findResult(result).get(outcome),
      peaks: calcJointPeaks(flySkill(launchedOf(spec)), true),
    };
  };

  it('H5: three twists by the arms alone in one straight back somersault without tilt at take-off, within joint ranges, speeds and torques', () => {
    const { spec, of, peaks } = flown('former/back-straight-triple');
    expect([takeoffOf(spec).tilt, takeoffOf(spec).twist]).toEqual([0, 0]);
    expect(of('twists')).toBeGreaterThan(2.98);
    expect(of('somersaults')).toBeLessThan(1.02);
    expect(peaks.cautions).toEqual([]);
    // by the arms alone: no key of spine or legs until the landing
    for (const b of spec.blocks.slice(0, -1))
      expect(Object.keys(b.adjust).every((name) => name.startsWith('shoulder'))).toBe(true);
  });

  it('H6: the double does not twist in its first somersault', () => {
    const { spec, of } = flown('former/double-back-pike-full-out');
    expect(takeoffOf(spec).tilt).toBe(0);
    expect(Math.abs(of('twistsAfter.1'))).toBeLessThan(0.02);
    expect(of('twists')).toBeCloseTo(1, 1);
  });
});
