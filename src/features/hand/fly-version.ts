/** The flight of a version beside, in a piece of its own. */
import type { Page } from '../../app/page.ts';
import type { KeptVersion } from '../../document/versions.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { Pieces } from '../../scene/pieces.ts';

const makeFlights = (): WeakMap<KeptVersion['file'], FlightResult> => new WeakMap();

/** Undefined where it does not fly, or what comes before it is not known yet: then it is asked again at the page's next release. */
export function* flyVersion({ services, keepState }: Page, { file }: KeptVersion): Pieces<FlightResult | undefined> {
  const flights = keepState(makeFlights);
  let flown = flights.get(file);
  if (flown) return flown;
  yield;
  try {
    flown = services.flying.fly(file);
    flights.set(file, flown);
  } catch {
    flown = undefined;
  }
  yield;
  return flown;
}
