// Whose foot or hand stays where it is is not in the air, whatever the mass centre does.
import { describe, expect, it } from 'vitest';
import { hingesInto } from '../../sim/motion/hinge-angles.ts';
import { getModel } from '../../sim/motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../../sim/motion/shape-motion.ts';
import { hasHeldPoint } from '../../sim/recording/held-point.ts';
import { massCentreOf } from '../../sim/recording/mass-centre.ts';
import type { PosedMotion } from '../../sim/recording/posed.ts';
import { angleIndex, flightOf, poseFlight } from './posed-flight.ts';

/** 50 rows upright; hips and knees bend by 70 degrees, and this segment's origin stays (none: the root does). */
function sinking(held?: string): PosedMotion {
  const { body } = flightOf('double-back-tuck');
  const na = body.angles.length;
  const n = 50;
  const angles = new Float64Array(n * na);
  const p_WBo_W = new Float64Array(3 * n);
  const quat_WB = new Float64Array(4 * n);
  const sm = makeShapeMotion(getModel(body));
  for (let i = 0; i < n; i++) {
    for (const side of ['L', 'R'])
      for (const joint of ['hipFlexion', 'kneeFlexion'])
        angles[na * i + angleIndex(body, `${joint}${side}`)] = (1.2 * i * i) / n / n;
    quat_WB[4 * i] = 1;
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    calcShapeMotion(sm);
    const s = body.segments.findIndex(({ name }) => name === held);
    if (s >= 0) for (let k = 0; k < 3; k++) p_WBo_W[3 * i + k] = -sm.p_BoSo_B[3 * s + k];
  }
  const t = Float64Array.from({ length: n }, (_, i) => i / 120);
  return { body, n, t, rateHz: 120, p_WBo_W, quat_WB, angles, isSeen: body.angles.map(() => true) };
}

const isHeld = (posed: PosedMotion): boolean => hasHeldPoint(posed, posed.angles, massCentreOf(posed), 0, posed.n - 1);

describe('a foot that stays', () => {
  it('holds who sinks into a squat', () => {
    expect(isHeld(sinking('footL'))).toBe(true);
  });

  it('holds nobody where the whole body goes along as well', () => {
    const squat = sinking('footL');
    const falling = {
      ...squat,
      p_WBo_W: squat.p_WBo_W.map((v, i) => v - (i % 3 === 1 ? 4.9 * squat.t[(i - 1) / 3] ** 2 : 0)),
    };
    expect(isHeld(falling)).toBe(false);
  });
});

it.each(['double-back-tuck', 'back-straight-full', 'giant-double-straight', 'dive-forward-one-and-half-pike'])(
  'in the flight of %s nothing is held, nor in any sixth of a second of it',
  (id) => {
    const posed = poseFlight(flightOf(id), 120);
    const centre = massCentreOf(posed);
    for (let first = 0; first + 20 < posed.n; first += 10)
      expect(hasHeldPoint(posed, posed.angles, centre, first, first + 20)).toBe(false);
    expect(isHeld(posed)).toBe(false);
  },
);
