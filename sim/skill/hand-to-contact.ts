/** What a flight leaves to the contact that ends it, and how many flights a bed gives: apart from the chain itself, for who works on one leg of it. */
import type { Flight } from '../flight/flight.ts';
import { makeState, readState } from '../motion/state.ts';
import type { Handover } from './chain.ts';

/** Flights from one bed after which the rest is not flown. */
export const MOST_BOUNCES = 3;

/** What a flight leaves to the contact that ends it. */
export function handToContact(flight: Flight): Handover {
  const state = makeState(flight.body);
  readState(flight, flight.duration, state);
  const [x, y, z] = state.v_WScm_W;
  return { kind: 'contact', v_WScm_W: [x, y, z], h_Scm_W: flight.h_Scm_W };
}
