/** Where a flight stands for the camera of a clip, and how far its mass centre comes down. W, SI. */
import { STILL } from '../filming/plan.ts';
import type { Triple } from '../math/vec3.ts';
import { footingOf, type LaunchedFlight } from '../skill/apparatus-ends.ts';
import type { Measured } from './clip.ts';

/** How far the mass centre at touchdown is known from a pose like the flight's (judgement), m. */
const LIKE_FLIGHT = 0.03;

interface ClipPlace {
  /** the middle of the feet, or of the hands where they leave last, at take-off: where they touch */
  readonly p_WFeet_W: Triple;
  /** what it comes down on, and a rectangle lies on */
  readonly floorY: number;
  readonly way: 1 | -1;
  /** m by which the mass centre is lower at touchdown than at take-off */
  readonly drop: Measured;
}

/** Feet, floor, way and fall of a flight, for the camera and the times of a clip. */
export function calcClipPlace({ skill, flight }: LaunchedFlight): ClipPlace {
  const { p_WScm_W0, v_WScm_W0, duration, surfaceY } = flight;
  const last = footingOf(flight, 0, skill.launch.rail ? 'hands' : undefined);
  const low = last && Math.min(...last.points.map((point) => point.low));
  const at = new Float64Array(3);
  flight.massCentreInto(duration, at, new Float64Array(3));
  return {
    p_WFeet_W: [last?.x ?? p_WScm_W0[0], low ?? surfaceY, last?.z ?? p_WScm_W0[2]],
    floorY: surfaceY,
    way: v_WScm_W0[0] <= -STILL ? -1 : 1,
    drop: { value: p_WScm_W0[1] - at[1], plusMinus: LIKE_FLIGHT },
  };
}
