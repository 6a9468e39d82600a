/**
 * What a body may meet in the air besides the surface that it lands on: a rail, a table, a board. All lie along Z, so that a distance from them is found in
 * the X-Y plane. In W, m.
 */

import type { RailSway } from './rail-sway.ts';

/** A round rail along Z: where its axis rests, and how it swings on from t = 0. */
interface RailSolid {
  readonly solid: 'rail';
  readonly sway?: RailSway;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A table or board with level faces. */
interface BlockSolid {
  readonly solid: 'table' | 'board';
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  /** it reaches from -halfWidth to +halfWidth along Z */
  readonly halfWidth: number;
}

export type Solid = (RailSolid | BlockSolid) & {
  /** what holds it or rests on it as the flight begins, and leaves it then */
  readonly left: 'hands' | 'feet';
};
