/**
 * What a skill leaves, lands on and has around it, as level boxes in the world of its flight (W: X the way the athlete faces, Y up, Z to
 * the right; X = Z = 0 under the mass centre at take-off), there from the first instant to the last. What a file does not say follows from the height of the
 * take-off and the surface that ends the flight. Sizes: apparatus-sizes.ts. Where nothing is known nothing is made up.
 */
import { RAIL_HEIGHTS, RAIL_RADII } from '../math/rail-heights.ts';
import { type Footing, footingOf, type LaunchedFlight, landedPiece, leftPiece, wayOf } from './apparatus-ends.ts';
import {
  around,
  bedPiece,
  below,
  EVERYWHERE,
  type Extent,
  floorPiece,
  type Piece,
  railPiece,
} from './apparatus-piece.ts';
import { AROUND_FEET, BAR_MATS, BED_HEIGHT, LANDING_MAT, OVER_POOL } from './apparatus-sizes.ts';
import { placeCatch } from './catch.ts';

export interface SkillApparatus {
  readonly pieces: readonly Piece[];
  /** index into pieces: what the flight leaves, and what ends it */
  readonly leaves?: number;
  readonly lands?: number;
}

/** With the rail that is to be caught, where the flight is to end at one. */
export function apparatusOf(flown: LaunchedFlight): SkillApparatus {
  const { skill, flight } = flown;
  const ends = endsOf(flown);
  if (!skill.catch) return ends;
  const { spec, left } = placeCatch(skill, skill.catch);
  const { pieces, leaves } = ends;
  const ofLeft = leaves === undefined ? {} : { leaves };
  if (left) return { pieces, ...ofLeft, ...(leaves === undefined ? {} : { lands: leaves }) };
  const rail = { height: RAIL_HEIGHTS[spec.rail], radius: RAIL_RADII[spec.rail] };
  const caught = railPiece(rail, spec.alongX, wayOf(flight));
  const mats = skill.launch.rail ? [] : [barMats(caught, 0)];
  return { pieces: [...pieces, ...mats, caught], ...ofLeft, lands: pieces.length + mats.length };
}

function endsOf(flown: LaunchedFlight): SkillApparatus {
  const { skill, flight } = flown;
  const left = leftPiece(flown);
  const way = wayOf(flight);
  const surface = skill.end.surface?.kind ?? 'floor';
  const y = flight.surfaceY;
  const start = footingOf(flight, 0);
  const touch = footingOf(flight, flight.duration, skill.end.surface?.by);
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
    const [deck, pool]: readonly Extent[] =
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

/** The mats under a rail, level with what is landed on, at most as thick as theirs. */
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
