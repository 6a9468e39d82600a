/** A flight that ends where its hands meet the rail. */
import type { Flight } from '../flight/flight.ts';
import { RAIL_HEIGHTS } from '../math/rail-heights.ts';
import { placeCatch } from './catch.ts';
import type { CatchAsk } from './catch-ask.ts';
import { makeHandWatch } from './catch-watch.ts';
import { type CatchOutcome, findCatch } from './find-catch.ts';
import type { LaunchedSkill } from './launch.ts';

/** Until the hands are at the rail, in time or too fast; all of it where they never are. */
export function cutAtCatch<F extends Flight>(flight: F, skill: Pick<LaunchedSkill, 'launch'>, ask: CatchAsk): Cut<F> {
  const { spec, left } = placeCatch(skill, ask);
  const rail = { x: spec.alongX, y: RAIL_HEIGHTS[ask.rail], ...(left ? { left } : {}) };
  const outcome = findCatch(makeHandWatch(flight, rail), ask);
  const whole = { ...flight, met: outcome };
  return outcome.kind === 'missed' ? whole : cutFlight(whole, outcome.moment.t);
}

/** With what came of it, and the flight as it would have gone on. */
type Cut<F> = F & { readonly met: CatchOutcome; readonly uncut?: F };

export function cutFlight<F extends Flight>(flight: F, t: number): F & { readonly uncut: F } {
  const stepTimes = [...flight.stepTimes.filter((step) => step < t), t];
  return { ...flight, duration: t, stepTimes, uncut: flight };
}
