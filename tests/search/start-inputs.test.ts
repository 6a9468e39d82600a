// What gives a launch can be varied: numbers of a swing and of a known contact are inputs like any other.
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import {
  Evaluator,
  findInput,
  findResult,
  listInputs,
  makeUnknown,
  ownAim,
  putInputs,
  solve,
  usualSpread,
} from '../../sim/index.ts';
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

  it('a number that the launch gives is refused with what to vary in its place', () => {
    expect(() => findInput(giant, 'takeoff.h.z')).toThrow(
      'takeoff.h.z is given by the swing; vary swing.releaseAngle, swing.late or swing.key:3.angle',
    );
    expect(() => findInput(vault, 'takeoff.speedUp')).toThrow(
      'takeoff.speedUp is given by the contact; vary contact.force, contact.lean or contact.h.z',
    );
  });

  it('the usual errors of a bar skill have the time of the release in them, those of a contact its force', () => {
    const by = (spec: typeof giant, id: string) => usualSpread(spec).parts.find((p) => p.input.id === id)?.by;
    expect(by(giant, 'swing.late')).toBe(0.012);
    expect(by(vault, 'contact.force')).toBeCloseTo(0.02 * 2.3, 12);
    expect(by(vault, 'contact.lean')).toBeCloseTo(0.5 * RAD, 12);
  });

  it('a bar skill is solved from the bar: moved off its release, it finds a release that lands', {
    timeout: 60_000,
  }, () => {
    const off = findInput(giant, 'swing.late');
    const spec = putInputs(giant, [off], [off.value - 0.015]);
    const aim = ownAim(spec);
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
