/**
 * The rail, table or board that a skill leaves, as solids in the world of its flight, and the nearest that the body comes to it. The rail swings on as
 * it was let go (bent by 5 cm at first in the demo giants). What a skill does not say is our judgement, said at each number.
 */
import type { Body } from '../body/body.ts';
import type { TakeoffPlace } from '../contact/impulse-presets.ts';
import type { Flight } from '../flight/flight.ts';
import { type Clearance, calcNearest } from '../measure/clearance.ts';
import type { Solid } from '../measure/clearance-solid.ts';
import { type ContactPlace, calcContactPlaces } from '../motion/contact-places.ts';
import type { LaunchedSkill } from './launch.ts';

/** Nearest of rail, table or board through the flight; undefined where the skill leaves none. */
export function calcClearance({ skill, flight, barX }: Flown): Clearance | undefined {
  return calcNearest(flight, solidsOf({ skill, flight, barX }));
}

/** A whole skill is one. */
interface Flown {
  readonly skill: Pick<LaunchedSkill, 'launch' | 'end'>;
  readonly flight: Flight;
  /** the bar's place in the flight's X, m */
  readonly barX: number;
}

interface BlockSize {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** from what pushes off to the end that is left, along the way of travel, m: our judgement */
  readonly ahead: number;
}
/** FIG and World Aquatics norms, from memory; a table is solid to the floor. */
const BLOCKS: Readonly<Record<'vaultTable' | 'springboard' | 'divingBoard', BlockSize>> = {
  vaultTable: { length: 1.2, width: 0.95, thickness: Number.POSITIVE_INFINITY, ahead: 0.4 },
  springboard: { length: 1.2, width: 0.6, thickness: 0.05, ahead: 0.25 },
  divingBoard: { length: 4.8, width: 0.5, thickness: 0.05, ahead: 0 },
};
/** FIG apparatus norms, from memory; who is neither has the men's. */
const TABLE_HEIGHT = { female: 1.25, male: 1.35 } as const;
/** A flight into water that begins this far over it begins on a board or platform, m: our judgement. */
const BOARD_OVER_WATER = 0.5;

/** m */
export const tableTop = ({ sex = 'male' }: Pick<Body, 'sex'>): number => TABLE_HEIGHT[sex];

export function solidsOf({ skill: { launch, end }, flight, barX }: Flown): readonly Solid[] {
  if (launch.rail) {
    const { height: y, ...rail } = launch.rail;
    return [{ solid: 'rail', x: barX, y, ...rail, left: 'hands' }];
  }
  const place = launch.place ?? boardOverWater(flight, end.surface?.kind);
  if (place !== 'vaultTable' && place !== 'springboard' && place !== 'divingBoard') return [];
  const points = calcContactPlaces(flight, 0);
  if (points.length === 0) return [];
  const lowest = points.reduce((a, b) => (b.low < a.low ? b : a));
  const left = place === 'vaultTable' || lowest.part === 'hands' ? 'hands' : 'feet';
  const top = place === 'vaultTable' ? tableTop(flight.body) : lowest.low;
  const pushing = points.filter((p) => p.part === left);
  if (pushing.length === 0) return [];
  const way = flight.v_WScm_W0[0] < 0 ? -1 : 1;
  const { length, width, thickness, ahead } = BLOCKS[place];
  // hands push with their middle, feet with the end that is farthest along the way
  const from =
    left === 'hands'
      ? pushing.reduce((sum, p) => sum + p.x, 0) / pushing.length
      : way * Math.max(...pushing.map((p) => way * p.x));
  const far = from + way * ahead;
  const near = far - way * length;
  return [
    {
      solid: place === 'vaultTable' ? 'table' : 'board',
      x: [Math.min(near, far), Math.max(near, far)],
      y: [top - thickness, top],
      halfWidth: width / 2,
      left,
    },
  ];
}

function boardOverWater(flight: Flight, surface: string | undefined): TakeoffPlace | undefined {
  if (surface !== 'water') return undefined;
  const low = Math.min(...calcContactPlaces(flight, 0).map((p: ContactPlace) => p.low));
  return low - flight.surfaceY > BOARD_OVER_WATER ? 'divingBoard' : undefined;
}
