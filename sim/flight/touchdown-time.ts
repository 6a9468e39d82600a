/**
 * When a flight touches down, without the rest of it: for finding T, many schedules that agree up to some time are flown
 * from there on. What they share is flown once (Prefix). Frames and equation as in fly.ts.
 */
import type { Body } from '../body/body.ts';
import type { Schedule } from '../schedule/schedule.ts';
import type { DenseTrack } from './dense-track.ts';
import { integrate } from './dop853.ts';
import type { EndSpec, TakeoffSpec } from './flight.ts';
import { normalise } from './flight-data.ts';
import { DEFAULT_TOLERANCE, type FlightOptions, getTable, makeProblem, NoTouchdownError } from './fly.ts';
import { calcTakeoff, type TakeoffState } from './takeoff.ts';
import { LONGEST_FLIGHT, TouchdownFinder } from './touchdown.ts';

export interface TouchdownTask {
  readonly body: Body;
  readonly takeoff: TakeoffSpec;
  readonly end: EndSpec & { readonly kind: 'touchdown' };
  readonly gravity: number;
  readonly options: FlightOptions;
}

/** The flight up to t, shared by all schedules that agree until then. */
interface Prefix {
  readonly t: number;
  readonly quat_WB: Float64Array;
  readonly start: TakeoffState;
  readonly cleared: boolean;
}

/** The prefix up to t, or undefined where the flight touches down before. */
export function makePrefix(task: TouchdownTask, schedule: Schedule, t: number): Prefix | undefined {
  const start = calcTakeoff(task.body, schedule, task.takeoff, task.end, task.gravity);
  const from = { t: 0, quat_WB: start.quat_WB, start, cleared: false };
  if (!(t > 0)) return from;
  const { hit, track, cleared } = walk(task, schedule, from, t);
  if (hit !== undefined) return undefined;
  const quat_WB = new Float64Array(4);
  track.valueInto(t, quat_WB);
  normalise(quat_WB);
  return { t, quat_WB, start, cleared };
}

/** Time of the first touchdown of a schedule that agrees with the prefix up to its time. */
export function touchdownTime(task: TouchdownTask, schedule: Schedule, from: Prefix): number {
  const { hit, finder } = walk(task, schedule, from, LONGEST_FLIGHT);
  if (hit === undefined) throw new NoTouchdownError(finder.cause());
  return hit;
}

function walk(
  { body, takeoff, end, gravity, options }: TouchdownTask,
  schedule: Schedule,
  from: Prefix,
  to: number,
): { hit: number | undefined; track: DenseTrack; finder: TouchdownFinder; cleared: boolean } {
  const parabola = { y0: from.start.p_WScm_W[1], v0: takeoff.v_WScm_W[1], gravity };
  const finder = new TouchdownFinder(body, schedule, parabola, end.surface, from.cleared);
  if (!finder.canMeet) throw new NoTouchdownError(finder.cause());
  const stops = [from.t, ...schedule.breaks.filter((t) => t > from.t + 1e-12 && t < to - 1e-12), to];
  let hit: number | undefined;
  const track = integrate(
    makeProblem(options.source ?? getTable(body, schedule, options.shapeTolerance), from.start.h_Scm_W),
    from.quat_WB,
    stops,
    {
      tolerance: options.tolerance ?? DEFAULT_TOLERANCE,
      afterStep: normalise,
      budget: options.budget,
      stop: (t) => {
        hit = finder.inLastStep(t);
        return hit !== undefined;
      },
    },
  );
  return { hit, track, finder, cleared: finder.everCleared };
}
