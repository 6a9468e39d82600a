/** Flights of ready skills, every leg of a chain, as paper takes them. */
import { chains, skills } from '../../presets/index.ts';
import { apparatusOf, calcFrames, type Flight, frameTimes } from '../../sim/index.ts';
import { makePaperFlight, type PaperFlight } from '../../src/paper/paper-flight.ts';
import { flightsOf } from '../presets/flown.ts';

export interface FlownPaper {
  readonly name: string;
  readonly flight: Flight;
  readonly paper: PaperFlight;
}

export const READY = Object.keys({ ...skills, ...chains });

export const papersOf = (id: string): FlownPaper[] =>
  flightsOf(id).legs.map(({ whole: { flight, skill } }, k) => {
    const frames = calcFrames(flight, frameTimes(flight.duration, 120));
    return {
      name: `${id} ${k + 1}`,
      flight,
      paper: makePaperFlight({ flight, frames, apparatus: apparatusOf({ skill, flight }) }),
    };
  });
