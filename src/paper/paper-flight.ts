/** A flight as paper takes it: its poses at any instant, its path, the numbers that its words are made of. */
import type { Flight, Frames, SkillApparatus } from '../../sim/index.ts';
import { makePoser, type Poser } from '../engine/poses.ts';
import { makeStageFlight } from '../pictures/staged-flight.ts';
import type { StageFlight } from '../scene/pose-frames.ts';

interface Flown {
  readonly flight: Flight;
  readonly frames: Frames;
  readonly apparatus: SkillApparatus;
}

export interface PaperFlight {
  readonly staged: StageFlight;
  readonly frames: Frames;
  readonly duration: number;
  readonly apex: number;
  readonly pose: Poser;
}

export function makePaperFlight(flown: Flown, key = 'paper'): PaperFlight {
  const { flight, frames } = flown;
  return {
    staged: makeStageFlight(key, flown, []),
    frames,
    duration: flight.duration,
    apex: Math.min(Math.max(flight.apex, 0), flight.duration),
    pose: makePoser(flight, frames),
  };
}
