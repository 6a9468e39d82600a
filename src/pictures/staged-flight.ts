/** A flight as the scene takes it: its body, its take-off and the path of the mass centre. */
import type { Flight, Frames, SkillApparatus } from '../../sim/index.ts';
import type { StageFlight, StagePose } from '../scene/pose-frames.ts';

interface Flown {
  readonly flight: Flight;
  readonly frames: Frames;
  readonly apparatus: SkillApparatus;
}

export function makeStageFlight(
  key: string,
  { flight, frames, apparatus }: Flown,
  ghosts: readonly StagePose[],
): StageFlight {
  const path = new Float64Array(4 * frames.n);
  for (let i = 0; i < frames.n; i++) {
    path[4 * i] = frames.t[i];
    for (let k = 0; k < 3; k++) path[4 * i + 1 + k] = frames.p_WScm_W[3 * i + k];
  }
  return {
    key,
    body: flight.body,
    duration: flight.duration,
    v_WScm_W0: [flight.v_WScm_W0[0], flight.v_WScm_W0[1], flight.v_WScm_W0[2]],
    h_Scm_W: [flight.h_Scm_W[0], flight.h_Scm_W[1], flight.h_Scm_W[2]],
    surfaceY: flight.surfaceY,
    apparatus,
    path,
    ghosts,
  };
}
