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

/** A way of the mass centre that is not flown; in the flight of a leg. */
export interface WholeOther {
  readonly leg: number;
  /** (n x 2): along X from the rail, up, m */
  readonly path: ArrayLike<number>;
  readonly isEarly: boolean;
  readonly name: string;
  readonly outcome: string;
  readonly isStop: boolean;
}

interface WholeSidePlace {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly floorY: number;
  /** px of X = 0 */
  readonly x0: number;
}

export interface WholeSideInput extends WholeSidePlace {
  readonly t: number;
  readonly row: number;
  readonly words: { readonly force: string; readonly size: string; readonly ownWeight: string };
  readonly others: readonly WholeOther[];
  /** of the leg that the page is about, where it comes nearer than is asked */
  readonly near?: { readonly leg: number; readonly lines: readonly string[] } | undefined;
}

export interface WholePictures {
  reaches(whole: WholeResult, result: FlightResult): readonly WholeReach[];
  still(whole: WholeResult, result: FlightResult, input: WholePictureInput): string;
  now(whole: WholeResult, result: FlightResult, input: WholePictureInput, t: number): string;
  /** along the screen: least and most that must be seen, m; +1 where X runs to the right */
  extent(
    whole: WholeResult,
    result: FlightResult,
  ): { readonly from: number; readonly to: number; readonly way: 1 | -1 };
  /** what does not move with the cursor */
  sideStill(whole: WholeResult, result: FlightResult, input: WholeSidePlace): string;
  /** behind it, and before it */
  side(whole: WholeResult, result: FlightResult, input: WholeSideInput): readonly [behind: string, front: string];
}
