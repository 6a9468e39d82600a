/** What draws a whole skill: markup for an <svg> of the page. */

import type { FlightResult } from '../engine/result.ts';
import type { WholeResult } from '../jobs/kinds/whole-data.ts';
import type { UnitSystem } from '../ui/units.ts';

export interface WholePictureInput {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly floorY: number;
  readonly x: (t: number) => number;
  /** earliest time shown */
  readonly from: number;
  readonly units: UnitSystem;
}

/** How far a pose reaches from its mass centre to both sides of the screen: m, or px on an axis. */
export interface WholeReach {
  readonly t: number;
  readonly left: number;
  readonly right: number;
}

export interface WholePictures {
  reaches(whole: WholeResult, result: FlightResult): readonly WholeReach[];
  still(whole: WholeResult, result: FlightResult, input: WholePictureInput): string;
  now(whole: WholeResult, result: FlightResult, input: WholePictureInput, t: number): string;
  side(whole: WholeResult, result: FlightResult, width: number, height: number, t: number, row: number): string;
}
