/**
 * What a skill leaves, lands on and has around it, as level boxes in the world of its flight (W: X the way the athlete faces, Y up, Z to
 * the right; X = Z = 0 under the mass centre at take-off), there from the first instant to the last. What a file does not say follows from the height of the
 * take-off and the surface that ends the flight. Sizes: apparatus-sizes.ts. Where nothing is known nothing is made up.
 */
import type { Flight } from '../flight/flight.ts';
import { type ContactPlace, calcContactPlaces } from '../motion/contact-places.ts';
import {
  AROUND_FEET,
  BAR_MATS,
  BED,
  BED_HEIGHT,
  BLOCK_SIZES,
  type BlockKind,
  BOARD_OVER_WATER,
  LANDING_MAT,
  LAYER_PAST_RAIL,
  OVER_POOL,
  PLATFORM_FROM,
  RAIL_WIDTH,
  TABLE_HEIGHT,
} from './apparatus-sizes.ts';
import type { LaunchedSkill } from './launch.ts';

type Span = readonly [number, number];

export interface Piece {
  readonly kind:
    | 'floor'
    | 'mat'
    | 'pit'
    | 'springboard'
    | 'table'
    | 'bed'
    | 'rail'
    | 'divingBoard'
    | 'platform'
    | 'water';
  /** the part that carries; floor, pit and water have no bottom, and floor and water no end */
  readonly x: Span;
  readonly y: Span;
  readonly z: Span;
  /** of the floor it is placed on, m */
  readonly floorY: number;
  /** the way of travel along X, of what has a front and a back */
  readonly way: 1 | -1;
  /** of a bed: its frame and the box in its middle */
  readonly frame?: { readonly x: Span; readonly z: Span };
  readonly box?: { readonly x: Span; readonly z: Span };
}

export interface SkillApparatus {
  readonly pieces: readonly Piece[];
  /** index into pieces: what the flight leaves, and what ends it */
  readonly leaves?: number;
  readonly lands?: number;
}

/** A launched skill and its flight; a whole skill is one. */
export interface FlownSkill {
  readonly skill: Pick<LaunchedSkill, 'launch' | 'end'> & Partial<Pick<LaunchedSkill, 'after'>>;
  readonly flight: Flight;
}

const EVERYWHERE: Span = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
const around = (middle: number, length: number): Span => [middle - length / 2, middle + length / 2];
const below = (y: number): Span => [Number.NEGATIVE_INFINITY, y];
const ordered = (a: number, b: number): Span => [Math.min(a, b), Math.max(a, b)];

/** m */
export const tableTop = ({ sex = 'male' }: Pick<Flight['body'], 'sex'>): number => TABLE_HEIGHT[sex];

/** What rests on a surface: the middle of the feet, or of the hands where they are lowest, and its lowest point. */
interface Footing {
  readonly by: 'hands' | 'feet';
  readonly points: readonly ContactPlace[];
  readonly x: number;
  readonly z: number;
  readonly low: number;
}

function footingOf(flight: Flight, t: number, by?: 'hands'): Footing | undefined {
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
export interface Left {
  readonly piece: Piece;
  readonly by: 'hands' | 'feet';
}

export function leftPiece({ skill, flight }: FlownSkill): Left | undefined {
  const { launch, end } = skill;
  const way = flight.v_WScm_W0[0] < 0 ? -1 : 1;
  if (launch.rail) return { piece: railPiece(launch.rail, launch.barX, way), by: 'hands' };
  const kind = blockKind(skill, flight);
  if (!kind) return undefined;
  const footing = footingOf(flight, 0, kind === 'vaultTable' ? 'hands' : undefined);
  if (!footing) return undefined;
  const { length, width, thickness, ahead } = BLOCK_SIZES[kind];
  const top = kind === 'vaultTable' ? tableTop(flight.body) : footing.low;
  // hands push with their middle, feet with the end that is farthest along the way
  const from = footing.by === 'hands' ? footing.x : way * Math.max(...footing.points.map((p) => way * p.x));
  const far = from + way * ahead;
  const floorY = end.surface?.kind === 'water' ? end.surface.y : 0;
  const piece: Piece = {
    kind: kind === 'vaultTable' ? 'table' : kind,
    x: ordered(far, far - way * length),
    y: [top - thickness, top],
    // a table or board is in the middle of the way, whatever the hand or foot
    z: around(0, width),
    floorY,
    way,
  };
  return { piece, by: footing.by };
}

function blockKind({ launch, end }: FlownSkill['skill'], flight: Flight): BlockKind | undefined {
  const { place } = launch;
  if (place === 'vaultTable' || place === 'springboard' || place === 'divingBoard') return place;
  if (place || end.surface?.kind !== 'water') return undefined;
  const low = Math.min(...calcContactPlaces(flight, 0).map((p) => p.low)) - flight.surfaceY;
  if (!(low > BOARD_OVER_WATER)) return undefined;
  return low < PLATFORM_FROM ? 'divingBoard' : 'platform';
}

/** A rail across the way of travel, over the floor at Y = 0. */
export const railPiece = (
  rail: { readonly height: number; readonly radius: number },
  x: number,
  way: 1 | -1,
): Piece => ({
  kind: 'rail',
  x: around(x, 2 * rail.radius),
  y: around(rail.height, 2 * rail.radius),
  z: around(0, RAIL_WIDTH),
  floorY: 0,
  way,
});

/** A bed whose cross is at (x, z), at rest at y. One that is low over Y = 0 has the floor under it, by the norm's height. */
export function bedPiece(x: number, z: number, y: number, way: 1 | -1): Piece {
  return {
    kind: 'bed',
    x: around(x, BED.length),
    y: [y, y],
    z: around(z, BED.width),
    floorY: y > BED_HEIGHT / 2 ? 0 : y - BED_HEIGHT,
    way,
    frame: { x: around(x, BED.frameLength), z: around(z, BED.frameWidth) },
    box: { x: around(x, BED.boxLength), z: around(z, BED.boxWidth) },
  };
}

const floorPiece = (y: number, x: Span = EVERYWHERE): Piece => ({
  kind: 'floor',
  x,
  y: below(y),
  z: EVERYWHERE,
  floorY: y,
  way: 1,
});

export function apparatusOf(flown: FlownSkill): SkillApparatus {
  const { skill, flight } = flown;
  const left = leftPiece(flown);
  const way = flight.v_WScm_W0[0] < 0 ? -1 : 1;
  const surface = skill.end.surface?.kind ?? 'floor';
  const y = flight.surfaceY;
  const start = footingOf(flight, 0);
  const touch = footingOf(flight, flight.duration);
  const fromBed = skill.launch.place === 'trampoline';
  // who leaves a bed and comes down on one is on the same; its cross is where it is left
  if (fromBed || surface === 'trampoline') {
    const sameBed =
      surface === 'trampoline' && (fromBed || !start || (!left && Math.abs(start.low - y) < BED_HEIGHT / 2));
    const at = fromBed || sameBed ? start : touch;
    const bed = bedPiece(at?.x ?? 0, at?.z ?? 0, surface === 'trampoline' ? y : (start?.low ?? 0), way);
    const pieces = [floorPiece(bed.floorY), bed];
    if (surface === 'trampoline') return { pieces, ...(sameBed ? { leaves: 1 } : {}), lands: 1 };
    const landed = landedPiece(flown, touch, undefined);
    return landed ? { pieces: [...pieces, landed], leaves: 1, lands: 2 } : { pieces, leaves: 1, lands: 0 };
  }
  const pieces: Piece[] = [];
  if (surface === 'water') {
    // under a board there is the edge of the pool; without one there is water
    const block = left?.piece;
    const wall = block ? (way > 0 ? block.x[1] : block.x[0]) - way * OVER_POOL : undefined;
    const [deck, pool]: readonly Span[] =
      wall === undefined
        ? []
        : way > 0
          ? [below(wall), [wall, Number.POSITIVE_INFINITY]]
          : [[wall, Number.POSITIVE_INFINITY], below(wall)];
    pieces.push({ kind: 'water', x: pool ?? EVERYWHERE, y: below(y), z: EVERYWHERE, floorY: y, way });
    if (deck) pieces.push(floorPiece(y, deck));
    if (block) pieces.push(block);
    return { pieces, ...(block ? { leaves: pieces.length - 1 } : {}), lands: 0 };
  }
  pieces.push(floorPiece(Math.min(0, y)));
  if (left?.piece.kind === 'rail') pieces.push(barMats(left.piece, y));
  const landed = landedPiece(flown, touch, left?.piece);
  if (landed) pieces.push(landed);
  const lands = landed ? pieces.length - 1 : 0;
  if (left) return { pieces: [...pieces, left.piece], leaves: pieces.length, lands };
  const leaves = onSame(start, landed) ? lands : 0;
  // a take-off over the floor from what is not known leaves nothing that could be drawn
  return { pieces, ...(start && start.low < AROUND_FEET / 2 + (landed?.y[1] ?? 0) ? { leaves } : {}), lands };
}

const onSame = (start: Footing | undefined, landed: Piece | undefined): boolean =>
  start !== undefined && landed !== undefined && Math.abs(start.low - landed.y[1]) < 0.03;

function barMats({ x, way }: Piece, surfaceY: number): Piece {
  const middle = (x[0] + x[1]) / 2;
  const top = surfaceY > 0 ? Math.min(BAR_MATS.thickness, surfaceY) : BAR_MATS.thickness;
  return {
    kind: 'mat',
    x: around(middle, 2 * BAR_MATS.reach),
    y: [0, top],
    z: around(0, LANDING_MAT.width),
    floorY: 0,
    way,
  };
}

/** A mat, a pit or a raised floor; undefined where it is the floor itself. */
function landedPiece(
  { skill, flight }: FlownSkill,
  touch: Footing | undefined,
  left: Piece | undefined,
): Piece | undefined {
  const y = flight.surfaceY;
  const way = flight.v_WScm_W0[0] < 0 ? -1 : 1;
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
  const x: Span = [Math.min(low, foot - AROUND_FEET), Math.max(high, foot + AROUND_FEET)];
  const z = around(touch ? touch.z : 0, LANDING_MAT.width);
  if (isPit) return { kind: 'pit', x, y: below(y), z, floorY: Math.min(0, y), way };
  const kind = skill.end.surface?.kind === 'floor' ? 'floor' : 'mat';
  return { kind, x, y: [0, y], z, floorY: 0, way };
}
