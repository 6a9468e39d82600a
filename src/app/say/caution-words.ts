/** A caution as a sentence: unsigned numbers, and what they are measured against. */
import type { FlightCaution } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { texts } from '../words.ts';

const c = texts.caution;

export function wordCaution(one: FlightCaution): string {
  if (one.kind === 'overlap')
    return c.overlap(
      texts.firstPart(one.limb),
      texts.part(one.through),
      formatNumber(one.t, 2),
      formatNumber(one.deepMm, 0),
    );
  const joint = texts.joint(one.angle);
  const size = (v: number): string => formatNumber(Math.abs(v), 0);
  if (one.kind === 'speed') return c.speed(joint, `${size(one.value)}°/s`, `${size(one.limit)}°/s`);
  if (one.kind === 'range') return c.range(joint, `${size(one.value - one.limit)}°`);
  return c.torque(joint, say('torque', Math.abs(one.value)), say('torque', Math.abs(one.limit)));
}
