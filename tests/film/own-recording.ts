/** A recording of a flight of our own, as the library writes it: what a browser or a job is given to open. */
import { flySkill, formatBvh, posedOfFlight } from '../../sim/index.ts';
import { preset } from '../skill/load.ts';

export function writeOwnBvh(id: string, rateHz: number): string {
  const flight = flySkill(preset(id));
  const n = Math.floor(flight.duration * rateHz) + 1;
  const times = Float64Array.from({ length: n }, (_, i) => i / rateHz);
  return [...formatBvh(posedOfFlight(flight, times))].join('');
}
