/**
 * A piece of apparatus as a level box in W (X the way the athlete faces, Y up, Z to the right), and how those that have one size are made. Sizes:
 * apparatus-sizes.ts. m
 */
import type { Body } from '../body/body.ts';
import { BED, BED_HEIGHT, BLOCK_SIZES, type BlockKind, RAIL_WIDTH, TABLE_HEIGHT } from './apparatus-sizes.ts';

export type Extent = readonly [number, number];

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
  readonly x: Extent;
  readonly y: Extent;
  readonly z: Extent;
  /** of the floor it is placed on, m */
  readonly floorY: number;
  /** the way of travel along X, of what has a front and a back */
  readonly way: 1 | -1;
  /** of a bed: its frame and the box in its middle */
  readonly frame?: { readonly x: Extent; readonly z: Extent };
  readonly box?: { readonly x: Extent; readonly z: Extent };
}

export const EVERYWHERE: Extent = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
export const around = (middle: number, length: number): Extent => [middle - length / 2, middle + length / 2];
export const below = (y: number): Extent => [Number.NEGATIVE_INFINITY, y];
export const ordered = (a: number, b: number): Extent => [Math.min(a, b), Math.max(a, b)];

/** m */
export const tableTop = ({ sex = 'male' }: Pick<Body, 'sex'>): number => TABLE_HEIGHT[sex];

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

export const floorPiece = (y: number, x: Extent = EVERYWHERE): Piece => ({
  kind: 'floor',
  x,
  y: below(y),
  z: EVERYWHERE,
  floorY: y,
  way: 1,
});

/** `from`: what pushes off, or the end of it, along X; the way of travel goes on from there. */
export function blockPiece(kind: BlockKind, from: number, top: number, way: 1 | -1, floorY: number): Piece {
  const { length, width, thickness, ahead } = BLOCK_SIZES[kind];
  const far = from + way * ahead;
  return {
    kind: kind === 'vaultTable' ? 'table' : kind,
    x: ordered(far, far - way * length),
    y: [top - thickness, top],
    // a table or board is in the middle of the way, whatever the hand or foot
    z: around(0, width),
    floorY,
    way,
  };
}
