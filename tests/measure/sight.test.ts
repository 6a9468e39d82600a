// Sight, against geometry known by hand.
import { describe, expect, it } from 'vitest';
import { calcFrames, flySkill, frameTimes } from '../../sim/index.ts';
import { calcSight, SIGHT_CONE, type Sight } from '../../sim/measure/sight.ts';
import { flyRigid } from '../checks/flown.ts';
import { flightIn } from '../files/parts.ts';
import { fileOf, preset, presetIds, skillOf } from '../skill/load.ts';

const DEG = Math.PI / 180;
/** m and rad, of sums of a few products */
const EXACT = 1e-9;

function sightOf(skill: ReturnType<typeof preset>): Sight & { T: number } {
  const flight = flySkill(skill);
  const sight = calcSight(flight, calcFrames(flight, frameTimes(flight.duration, 120)));
  if (!sight) throw new RangeError('no head');
  return { ...sight, T: flight.duration };
}

/** Standing upright in the air for 1 s, moving by `along` m, neck bent by `neck`, turned by `twist`. */
function still(along: number, neck: number, twist = 0): Sight & { T: number } {
  const file = fileOf('back-straight');
  flightIn(file).takeoff = {
    massCentreHeightM: 3,
    velocityMPerS: { along, up: 4.905 },
    attitudeDeg: { twist },
    momentum: { vectorKgM2PerS: [0, 0, 0] },
  };
  flightIn(file).end = { durationS: 1, surface: { kind: 'mat', heightM: 0 } };
  flightIn(file).schedule = {
    base: 'straight',
    keys: [{ angle: 'neckFlexion', at: { anchor: 'takeoff', s: 0 }, deg: neck }],
  };
  return sightOf(skillOf(file));
}

describe('sight', () => {
  it('one who flies ahead sees the landing until it passes below the cone', () => {
    const s = still(6, 0);
    expect(s.p_WTarget_W[0]).toBeCloseTo(6, 12);
    expect(s.spans.length).toBe(1);
    expect(s.spans[0][0]).toBe(0);
    const edge = s.spans[0][1];
    expect(edge).toBeLessThan(s.T);
    // there, the landing lies 60 deg under the horizon of the level head
    expect(Math.abs(s.at(edge).up + SIGHT_CONE.upDown)).toBeLessThan(0.1 * DEG);
    expect(s.at(s.T).why).toBe('above or below');
    expect(s.lastBefore).toBeUndefined();
  });

  it('one who flies backward does not see it: it is behind', () => {
    const s = still(-6, 0);
    expect(s.spans).toEqual([]);
    expect(s.firstBefore).toBeUndefined();
    expect(s.at(0).why).toBe('behind');
    expect(Math.abs(Math.abs(s.at(0).side) - Math.PI)).toBeLessThan(0.02);
  });

  it('turned to the left, the landing lies to the right, by as much', () => {
    const s = still(6, 0, 40).at(0);
    // eyes and target lie in the plane of travel but for the head's own offset from the axis of turning
    expect(s.side / DEG).toBeGreaterThan(35);
    expect(s.side / DEG).toBeLessThan(45);
  });

  it('the head bent forward lowers the cone by as much', () => {
    const level = still(6, 0).at(0.2).up;
    const bent = still(6, 20).at(0.2).up;
    expect((bent - level) / DEG).toBeGreaterThan(18);
    expect((bent - level) / DEG).toBeLessThan(22);
  });

  it('upright over the landing the body itself is in the way, were the cone wide open', () => {
    const file = fileOf('back-straight');
    flightIn(file).takeoff = {
      massCentreHeightM: 3,
      velocityMPerS: { along: 0, up: 4.905 },
      momentum: { vectorKgM2PerS: [0, 0, 0] },
    };
    flightIn(file).end = { durationS: 1, surface: { kind: 'mat', heightM: 0 } };
    flightIn(file).schedule = { base: 'straight' };
    const flight = flySkill(skillOf(file));
    const frames = calcFrames(flight, frameTimes(1, 60));
    const open = calcSight(flight, frames, { side: Math.PI, upDown: Math.PI / 2 });
    expect(open?.at(0.5).why).toBe('hidden by the body');
    expect(open?.spans).toEqual([]);
  });

  it('spans lie inside the flight, in order, and agree with what is seen between their ends', () => {
    for (const id of presetIds) {
      const s = sightOf(preset(id));
      let before = -1;
      for (const [a, b] of s.spans) {
        expect(a).toBeGreaterThanOrEqual(before);
        expect(b).toBeGreaterThanOrEqual(a);
        expect(b).toBeLessThanOrEqual(s.T + EXACT);
        expect(s.at((a + b) / 2).isSeen, id).toBe(true);
        before = b;
      }
      if (s.spans.length > 0) expect(Math.abs((s.firstBefore ?? 0) + s.spans[0][0] - s.T)).toBeLessThan(EXACT);
    }
  });

  it('a back somersault finds the landing again after it was out of sight', () => {
    const s = sightOf(preset('back-straight'));
    expect(s.spans.length).toBeGreaterThan(0);
    expect(s.share).toBeGreaterThan(0);
    expect(s.share).toBeLessThan(1);
  });

  it('a tree without a head sees nothing', () => {
    const flight = flyRigid({ A: 10, B: 11, C: 2 }, { h: [0, 0, 20], T: 1 });
    expect(calcSight(flight, calcFrames(flight, frameTimes(1, 60)))).toBeUndefined();
  });
});
