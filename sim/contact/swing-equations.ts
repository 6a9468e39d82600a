import type { RunRow } from './swing-run.ts';

/** What a step integrates. `state` begins with rail x, y and the angle of the grip link. */
export interface SwingEquations {
  readonly state: Float64Array;
  /** leaves the planar equations solved at y */
  derive(t: number, y: Float64Array, dy: Float64Array): void;
  /** direction of the mass centre in the state at t, counted on from `near` */
  direction(t: number, near: number): number;
  /** after derive: how far the worst joint is beyond what holds it in its part, driven or at its limit; 0 or less: nowhere */
  excess(): number;
  /** after derive: which smooth piece of what is integrated the state lies on */
  piece(): number;
  /** the row of the state, from the derivative taken last */
  rowInto(dy: Float64Array, row: RunRow): void;
}
