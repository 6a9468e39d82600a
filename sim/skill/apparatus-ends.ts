/** What a flight leaves and what it comes down on, from what the skill says and where hands and feet are then. */
import type { Flight } from '../flight/flight.ts';
import { type ContactPlace, calcContactPlaces } from '../motion/contact-places.ts';
import { around, below, blockPiece, type Extent, ordered, type Piece, railPiece, tableTop } from './apparatus-piece.ts';
import {
  AROUND_FEET,
  BAR_MATS,
  type BlockKind,
  BOARD_OVER_WATER,
  LANDING_MAT,
  LAYER_PAST_RAIL,
  PLATFORM_FROM,
} from './apparatus-sizes.ts';
import type { CatchOutcome } from './find-catch.ts';
import type { LaunchedSkill } from './launch.ts';

/** A launched skill and its flight; a whole skill is one. */
export interface LaunchedFlight {
  readonly skill: Pick<LaunchedSkill, 'launch' | 'end'> & Partial<Pick<LaunchedSkill, 'after' | 'catch'>>;
  readonly flight: Flight & { readonly met?: CatchOutcome };
}

export const wayOf = ({ v_WScm_W0: [along] }: Pick<Flight, 'v_WScm_W0'>): 1 | -1 => (along < 0 ? -1 : 1);

/** What rests on a surface: the middle of the feet, or of the hands where they are lowest, and its lowest point. */
export interface Footing {
  readonly by: 'hands' | 'feet';
  readonly points: readonly ContactPlace[];
  readonly x: number;
  readonly z: number;
  readonly low: number;
}

export function footingOf(flight: Flight, t: number, by?: 'hands' | 'feet'): Footing | undefined {
  const all = calcContactPlaces(flight, t);
  if (all.length === 0) return undefined;
  const lowest = all.reduce((a, b) => (b.low < a.low ? b : a));
  const limb = by ?? (lowest.part === 'hands' ? 'hands' : 'feet');
  const points = all.filter((p) => p.part === limb);
  if (points.length === 0) return undefined;
  const mean = (of: 'x' | 'z'): number => points.reduce((sum, p) => sum + p[of], 0) / points.length;
  return { by: limb, points, x: mean('x'), z: mean('z'), low: lowest.low };
}

/** What the flight leaves, where that is a solid: used for the distance from it too (clearance.ts). */
interface Left {
  readonly piece: Piece;
  readonly by: 'hands' | 'feet';
}

export function leftPiece({ skill, flight }: LaunchedFlight): Left | undefined {
  const { launch, end } = skill;
  const way = wayOf(flight);
  if (launch.rail) return { piece: railPiece(launch.rail, launch.barX, way), by: 'hands' };
  const kind = blockKind(skill, flight);
  if (!kind) return undefined;
  const footing = footingOf(flight, 0, kind === 'vaultTable' ? 'hands' : undefined);
  if (!footing) return undefined;
  const top = kind === 'vaultTable' ? tableTop(flight.body) : footing.low;
  // hands push with their middle, feet with the end that is farthest along the way
  const from = footing.by === 'hands' ? footing.x : way * Math.max(...footing.points.map((p) => way * p.x));
  const floorY = end.surface?.kind === 'water' ? end.surface.y : 0;
  return { piece: blockPiece(kind, from, top, way, floorY), by: footing.by };
}

function blockKind({ launch, end }: LaunchedFlight['skill'], flight: Flight): BlockKind | undefined {
  const { place } = launch;
  if (place === 'vaultTable' || place === 'springboard' || place === 'divingBoard') return place;
  if (place || end.surface?.kind !== 'water') return undefined;
  const low = Math.min(...calcContactPlaces(flight, 0).map((p) => p.low)) - flight.surfaceY;
  if (!(low > BOARD_OVER_WATER)) return undefined;
  return low < PLATFORM_FROM ? 'divingBoard' : 'platform';
}

/** What hands come down on so high is a table, m: our judgement. */
const TABLE_FROM = 0.8;

/** A table, a mat, a pit or a raised floor; undefined where it is the floor itself. */
export function landedPiece(
  { skill, flight }: LaunchedFlight,
  touch: Footing | undefined,
  left: Piece | undefined,
): Piece | undefined {
  const y = flight.surfaceY;
  const way = wayOf(flight);
  // hands alone meet the top of a table
  if (skill.end.surface?.by === 'hands' && y > TABLE_FROM) return blockPiece('vaultTable', touch?.x ?? 0, y, way, 0);
  const isPit = skill.after?.mat === 'pit';
  if (y < 0.01 && !isPit) return undefined;
  const foot = touch?.x ?? 0;
  let [from, to] = [foot - (way * LANDING_MAT.alone) / 2, foot + (way * LANDING_MAT.alone) / 2];
  if (left?.kind === 'rail') {
    const middle = (left.x[0] + left.x[1]) / 2;
    [from, to] = [middle + way * LAYER_PAST_RAIL, middle + way * BAR_MATS.reach];
  } else if (left?.kind === 'table') {
    from = (way > 0 ? left.x[1] : left.x[0]) + way * LANDING_MAT.behindTable;
    to = from + way * LANDING_MAT.length;
  } else {
    // the feet that leave the floor beside it are not in it
    const start = footingOf(flight, 0);
    if (start && start.low < y - 0.03) {
      const edge = way * Math.max(...start.points.map((p) => way * p.x + p.radius));
      if (way * (edge - from) > 0 && way * (foot - edge) > 0) from = edge;
    }
  }
  const [low, high] = ordered(from, to);
  const x: Extent = [Math.min(low, foot - AROUND_FEET), Math.max(high, foot + AROUND_FEET)];
  const z = around(touch ? touch.z : 0, LANDING_MAT.width);
  if (isPit) return { kind: 'pit', x, y: below(y), z, floorY: Math.min(0, y), way };
  const kind = skill.end.surface?.kind === 'floor' ? 'floor' : 'mat';
  return { kind, x, y: [0, y], z, floorY: 0, way };
}
