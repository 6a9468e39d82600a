/** The cautions of a flight by joint name and in degrees, most serious first; both sides at one instant are one caution. */

import type { Body, Caution as SimCaution } from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import { withoutSide } from '../../sim/math/side.ts';
import type { JointCaution } from './result.ts';

/** A range is weighed against this, rad; speeds and torques against their limit. */
const RANGE_WEIGHT = 0.5;
/** Less than this beyond a limit is rounding to a reader: deg, deg/s, N m. */
const SAID = { range: 0.5, speed: 5, torque: 0.5 } as const;

export function listCautions(body: Body, found: readonly SimCaution[]): JointCaution[] {
  const named = found
    .map((c) => {
      const scale = c.kind === 'torque' ? 1 : DEG;
      const beyond = Math.abs(c.value) - Math.abs(c.limit);
      const weight = c.kind === 'range' ? Math.abs(c.value - c.limit) / RANGE_WEIGHT : beyond / Math.abs(c.limit);
      const { kind, t } = c;
      return {
        one: { kind, angle: body.angles[c.angle].name, t, value: c.value * scale, limit: c.limit * scale },
        weight,
      };
    })
    .filter(({ one }) => Math.abs(one.value - one.limit) > SAID[one.kind])
    .sort((a, b) => b.weight - a.weight);
  return joinSides(named.map(({ one }) => one));
}

function joinSides(list: readonly JointCaution[]): JointCaution[] {
  const out: JointCaution[] = [];
  const stem = (name: string): string => withoutSide(name);
  for (const one of list) {
    const twin = out.findIndex(
      (o) =>
        o.kind === one.kind &&
        o.angle !== one.angle &&
        stem(o.angle) === stem(one.angle) &&
        Math.abs(o.t - one.t) < 0.02,
    );
    const same = twin >= 0 && Math.abs(out[twin].value - one.value) < 0.02 * Math.abs(one.value);
    if (same) out[twin] = { ...out[twin], angle: stem(one.angle) };
    else out.push(one);
  }
  return out;
}
