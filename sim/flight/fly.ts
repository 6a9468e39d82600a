/**
 * The flight of a body with a schedule: quaternion kinematics under constant angular momentum (h_Scm_W), the mass
 * centre on its parabola. See flight.ts for frames and shape-source.ts for the equation of the root's turning.
 */
import type { Body } from '../body/body.ts';
import type { Schedule } from '../schedule/schedule.ts';
import type { DenseTrack } from './dense-track.ts';
import { integrate, type OdeProblem } from './dop853.ts';
import { C } from './dop853-tableau.ts';
import type { EndSpec, Flight, TakeoffSpec } from './flight.ts';
import { flightAlong, normalise } from './flight-data.ts';
import type { CellSource, ShapeSource } from './shape-source.ts';
import { CONVERGED, ShapeTable } from './shape-table.ts';
import type { StepBudget } from './step-budget.ts';
import { calcTakeoff } from './takeoff.ts';
import { LONGEST_FLIGHT, TouchdownFinder } from './touchdown.ts';

export interface FlightOptions {
  /** error asked of a step, in quaternion units; default 1e-10 */
  readonly tolerance?: number;
  readonly fixedStep?: number;
  /** share of the largest value to which the shape is tabulated; default 1e-12, coarser for a search that flies thousands */
  readonly shapeTolerance?: number;
  /** replaces the tabulated schedule: direct evaluation, or angles that react to the state */
  readonly source?: ShapeSource;
  /** of this flight and of all that are flown to find its touchdown; a BeyondBudgetError where it takes more */
  readonly budget?: StepBudget;
}

export const DEFAULT_TOLERANCE = 1e-10;

export class NoTouchdownError extends Error {
  constructor(cause: string) {
    super(`no touchdown: ${cause}`);
    this.name = 'NoTouchdownError';
  }
}

export class ApexError extends Error {
  constructor() {
    super('apex: with zero gravity a flight has no apex to anchor a key to; use take-off or touchdown');
    this.name = 'ApexError';
  }
}

const tables = new WeakMap<Schedule, { body: Body; converged: number; table: ShapeTable }>();

/** The table of a schedule, made once for each schedule and body. */
export function getTable(body: Body, schedule: Schedule, converged = CONVERGED): ShapeTable {
  const known = tables.get(schedule);
  if (known && known.body === body && known.converged === converged) return known.table;
  const table = new ShapeTable(body, schedule, converged);
  tables.set(schedule, { body, converged, table });
  return table;
}

/** Integrates a flight of a body from its take-off, SI and radians, in W. Throws a NoTouchdownError or SingularBodyError that names its cause. */
export function flySchedule(
  body: Body,
  schedule: Schedule,
  takeoff: TakeoffSpec,
  end: EndSpec,
  gravity: number,
  options: FlightOptions = {},
): Flight {
  const start = calcTakeoff(body, schedule, takeoff, end, gravity);
  const h = start.h_Scm_W;
  const source = options.source ?? getTable(body, schedule, options.shapeTolerance);
  const finder =
    end.kind === 'touchdown'
      ? new TouchdownFinder(body, schedule, { y0: start.p_WScm_W[1], v0: takeoff.v_WScm_W[1], gravity }, end.surface)
      : undefined;
  if (finder && !finder.canMeet) throw new NoTouchdownError(finder.cause());
  const limit = end.kind === 'duration' ? end.duration : LONGEST_FLIGHT;
  const stops = [0, ...schedule.breaks.filter((t) => t > 1e-12 && t < limit - 1e-12), limit];

  let hit: number | undefined;
  const track = integrate(makeProblem(source, h), start.quat_WB, stops, {
    tolerance: options.tolerance ?? DEFAULT_TOLERANCE,
    ...(options.fixedStep ? { fixedStep: options.fixedStep } : {}),
    afterStep: normalise,
    budget: options.budget,
    ...(finder
      ? {
          stop: (t: DenseTrack) => {
            hit = finder.inLastStep(t);
            return hit !== undefined;
          },
        }
      : {}),
  });
  if (finder && hit === undefined) throw new NoTouchdownError(finder.cause());

  const duration = hit ?? limit;
  let touchdown: Flight['touchdown'];
  if (finder) {
    const contact = finder.lowest();
    touchdown = { contact, part: body.contacts[contact].part };
  }
  return flightAlong(track, {
    body,
    schedule,
    gravity,
    duration,
    apex: gravity > 0 ? takeoff.v_WScm_W[1] / gravity : Number.NaN,
    h_Scm_W: h,
    p_WScm_W0: start.p_WScm_W,
    v_WScm_W0: takeoff.v_WScm_W,
    surfaceY: end.surface?.y ?? 0,
    end,
    ...(touchdown ? { touchdown } : {}),
    stepTimes: [...track.times.filter((t) => t < duration), duration],
    stats: { steps: track.steps, rejected: track.rejected, evaluations: track.evaluations, quatDrift: track.drift },
  });
}

/** q' = q (0, w) / 2 with w = K b - u, b = R_WB^T h. */
export function makeProblem(source: ShapeSource, h: readonly [number, number, number]): OdeProblem {
  const lone = new Float64Array(9);
  const [hx, hy, hz] = h;
  const cells: CellSource | undefined = 'seek' in source ? (source as CellSource) : undefined;
  const probe = new Float64Array(4);
  return {
    beginCell(from, to, level, index) {
      cells?.seek(from, to, level, index, C);
    },
    derivative(t, q, o, dq, p, stage) {
      let c: Float64Array = lone;
      let k = 0;
      if (cells && stage >= 0) {
        c = cells.values;
        k = cells.at + cells.stride * stage;
      } else {
        for (let i = 0; i < 4; i++) probe[i] = q[o + i];
        source.coefInto(t, probe, lone);
      }
      const a = q[o];
      const x = q[o + 1];
      const y = q[o + 2];
      const z = q[o + 3];
      const s = 2 / (a * a + x * x + y * y + z * z);
      // b = R^T h, by columns of R
      const bx = hx * (1 - s * (y * y + z * z)) + hy * s * (x * y + a * z) + hz * s * (x * z - a * y);
      const by = hx * s * (x * y - a * z) + hy * (1 - s * (x * x + z * z)) + hz * s * (y * z + a * x);
      const bz = hx * s * (x * z + a * y) + hy * s * (y * z - a * x) + hz * (1 - s * (x * x + y * y));
      const wx = 0.5 * (c[k] * bx + c[k + 3] * by + c[k + 4] * bz - c[k + 6]);
      const wy = 0.5 * (c[k + 3] * bx + c[k + 1] * by + c[k + 5] * bz - c[k + 7]);
      const wz = 0.5 * (c[k + 4] * bx + c[k + 5] * by + c[k + 2] * bz - c[k + 8]);
      dq[p] = -x * wx - y * wy - z * wz;
      dq[p + 1] = a * wx + y * wz - z * wy;
      dq[p + 2] = a * wy + z * wx - x * wz;
      dq[p + 3] = a * wz + x * wy - y * wx;
    },
  };
}
