/** The frames of a flight as a table for other programs, at the rate of the command line. */
import { calcFrames, formatFrames, frameTimes, wordFrames } from '../../sim/index.ts';
import type { FlightResult } from './result.ts';

const RATE_HZ = 240;

export function formatFramesFile({ flight }: FlightResult): string {
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE_HZ));
  return [...formatFrames(frames, flight.body, wordFrames(frames))].join('');
}
