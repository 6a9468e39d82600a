/** A flight as a recording of it, as the library writes it: what a browser or a job is given to open. */
import { type Flight, formatBvh, posedOfFlight } from '../../sim/index.ts';

export function bvhOfFlight(flight: Flight, rateHz: number): string {
  const n = Math.floor(flight.duration * rateHz) + 1;
  const times = Float64Array.from({ length: n }, (_, i) => i / rateHz);
  return [...formatBvh(posedOfFlight(flight, times))].join('');
}
