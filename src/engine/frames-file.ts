/** The frames of a flight as a table for other programs, at the rate of the command line. */
import { calcFrames, formatFrames, frameTimes, wordFrames } from '../../sim/index.ts';
import { provenanceOf } from './provenance.ts';
import type { FlightResult } from './result.ts';

const RATE_HZ = 240;

export function formatFramesFile(result: FlightResult): string {
  const { flight } = result;
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE_HZ));
  return [
    ...formatFrames(frames, flight.body, wordFrames(frames), {
      from: provenanceOf(result, `page: frames, ${RATE_HZ} Hz`),
    }),
  ].join('');
}
