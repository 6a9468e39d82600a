// The twist rate of the formula: exact for a top, right for the principal axis of a body held in an uneven shape, off with its own tilt.
import { describe, expect, it } from 'vitest';
import { calcFrames, type Flight, flySkill } from '../../sim/index.ts';
import type { LongAxis } from '../../sim/measure/long-axis.ts';
import { calcWobble } from '../../sim/measure/wobble.ts';
import { flyRigid, rad, turn } from '../checks/flown.ts';
import { preset } from '../skill/load.ts';

const longAt = (flight: Flight, t: number): LongAxis => {
  const long = calcWobble(flight, t)?.long;
  if (!long) throw new Error('no momentum');
  return long;
};

/** Along a flight of one period, rad: measured 7.4e-10. */
const ROUND = 1e-8;

describe('the long axis', () => {
  it('a top with A = B twists at the rate of the formula, backward and forward, left and right', () => {
    for (const h of [50, -50])
      for (const tilt of [12, -12]) {
        const flight = flyRigid({ A: 11, B: 11, C: 1 }, { attitude: [0.2, tilt * rad, 0.4], h: [0, 0, h], T: 1 });
        const long = longAt(flight, 0.6);
        expect(Math.abs(long.rateByAxis - h * Math.sin(tilt * rad) * (1 - 1 / 11))).toBeLessThan(1e-9);
        expect(Math.abs(long.rate - long.rateByAxis)).toBeLessThan(1e-9);
        expect(long.rateByBody).toBe(long.rateByAxis);
        expect(long.lean).toBe(0);
        expect(Math.abs(long.axisTilt - tilt * rad)).toBeLessThan(1e-9);
      }
  });

  it('its rate is that of the frames where h lies along Z', () => {
    const flight = flySkill(preset('former/back-straight-full'));
    for (const t of [0.1, 0.4, 0.8]) {
      const frames = calcFrames(flight, [t]);
      expect(Math.abs(longAt(flight, t).rate - frames.twistRate[0])).toBeLessThan(1e-9);
      expect(Math.abs(longAt(flight, t).bodyTilt - frames.tilt[0])).toBeLessThan(1e-9);
    }
  });

  it('arms held uneven: the rate follows the tilt of the principal axis to 2 %, that of the body is up to 30 % off', () => {
    const flight = flySkill(preset('former/back-straight-full'));
    let byAxis = 0;
    let byBody = 0;
    // the shape is held
    for (let t = 0.26; t < 0.7; t += 0.02) {
      const long = longAt(flight, t);
      byAxis = Math.max(byAxis, Math.abs(long.rateByAxis / long.rate - 1));
      byBody = Math.max(byBody, Math.abs(long.rateByBody / long.rate - 1));
    }
    const long = longAt(flight, 0.5);
    // measured 0.6 % and 31 %
    expect(byAxis).toBeLessThan(0.02);
    expect(byBody).toBeGreaterThan(0.2);
    expect(byBody).toBeLessThan(0.35);
    expect(long.lean).toBeGreaterThan(2 * rad);
  });
});

describe('the time it needs', () => {
  it('one whole twist, or one wobble there and back, takes the period of the closed form', () => {
    const m = { A: 11.3, B: 12.4, C: 1 };
    for (const [tilt, twist] of [
      [8, 0],
      [5, 20],
      [2, 90],
      [4, 90],
    ]) {
      const flight = flyRigid(m, { attitude: [0, tilt * rad, twist * rad], h: [0, 0, 50], T: 12 });
      const map = calcWobble(flight, 0.1);
      const period = map?.period ?? Number.NaN;
      const frames = calcFrames(flight, [0, period]);
      const turned = map?.mode === 'twists' ? turn : 0;
      expect(Math.abs(Math.abs(frames.twist[1] - frames.twist[0]) - turned)).toBeLessThan(ROUND);
      expect(Math.abs(frames.tilt[1] - frames.tilt[0])).toBeLessThan(ROUND);
    }
  });
  it('is not defined of what does not go round, and has no end on the boundary', () => {
    expect(calcWobble(flyRigid({ A: 11, B: 12, C: 1 }, { h: [0, 0, 50], T: 1 }), 0.5)?.period).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(calcWobble(flyRigid({ A: 12, B: 11, C: 1 }, { h: [0, 0, 50], T: 1 }), 0.5)?.period).toBeUndefined();
  });
});
