/** A ready skill recorded, conditioned and measured. */
import { measuredStart } from '../../sim/fit/recorded-flight.ts';
import type { Body } from '../../sim/index.ts';
import { conditionMotion } from '../../sim/recording/condition.ts';
import type { Smoothing } from '../../sim/recording/conditioned.ts';
import { calcRecordedMomentum } from '../../sim/recording/recorded-momentum.ts';
import { flightOf, type Noise, poseFlight, wholeSpan } from '../recording/posed-flight.ts';

/** `as`: the body that it is read with, where that is not the athlete's. */
export function recorded(
  id: string,
  rateHz: number,
  smoothing: Smoothing,
  noise?: Noise,
  as = (body: Body): Body => body,
) {
  const flight = flightOf(id);
  const seen = poseFlight(flight, rateHz, noise);
  const posed = { ...seen, body: as(seen.body) };
  const motion = conditionMotion(posed, wholeSpan(posed), { smoothing, longestGap: 0.1 });
  const momentum = calcRecordedMomentum(motion);
  return { flight, motion, momentum, start: measuredStart(motion, momentum) };
}
