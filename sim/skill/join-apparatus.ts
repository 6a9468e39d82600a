/** The apparatus of a chain of flights in one world: what two of them share is there once. */
import type { SkillApparatus } from './apparatus.ts';
import type { Extent, Piece } from './apparatus-piece.ts';

interface PlacedApparatus {
  readonly apparatus: SkillApparatus;
  /** of this flight's W in the world of the chain, m, once turned half round where `facing` is -1; heights are the same */
  readonly offset: { readonly x: number; readonly z: number };
  readonly facing: 1 | -1;
}

export interface ChainApparatus {
  readonly pieces: readonly Piece[];
  /** of each flight, indices into pieces */
  readonly legs: readonly { readonly leaves?: number; readonly lands?: number }[];
}

function placePiece(piece: Piece, { offset, facing }: PlacedApparatus): Piece {
  const by = ([a, b]: Extent, d: number): Extent => (facing > 0 ? [a + d, b + d] : [d - b, d - a]);
  const flat = (at: { readonly x: Extent; readonly z: Extent }) => ({ x: by(at.x, offset.x), z: by(at.z, offset.z) });
  return {
    ...piece,
    ...flat(piece),
    way: facing > 0 ? piece.way : piece.way > 0 ? -1 : 1,
    ...(piece.frame ? { frame: flat(piece.frame) } : {}),
    ...(piece.box ? { box: flat(piece.box) } : {}),
  };
}

/** Two pieces are one when they are of one kind, as high, and meet: there are never two tables or two beds in each other. */
function isSame(a: Piece, b: Piece): boolean {
  if (a.kind !== b.kind || Math.abs(a.y[1] - b.y[1]) > 0.02) return false;
  return a.x[0] <= b.x[1] && b.x[0] <= a.x[1];
}

/** What a flight comes down on is, where another flight follows, what that one leaves. The first of two that are one is kept: a bed's cross is where its first flight leaves it. */
export function joinApparatus(flights: readonly PlacedApparatus[]): ChainApparatus {
  const pieces: Piece[] = [];
  const put = (piece: Piece): number => {
    const known = pieces.findIndex((one) => isSame(one, piece));
    return known >= 0 ? known : pieces.push(piece) - 1;
  };
  const placed = flights.map((flight, k) => {
    const { pieces: own, leaves, lands } = flight.apparatus;
    const next = flights[k + 1]?.apparatus;
    const isLeftNext = next?.leaves !== undefined;
    const at = own.map((piece, i) =>
      isLeftNext && i === lands && i !== leaves && Number.isFinite(piece.x[0])
        ? undefined
        : put(placePiece(piece, flight)),
    );
    return {
      leaves: leaves === undefined ? undefined : at[leaves],
      lands: lands === undefined ? undefined : at[lands],
    };
  });
  const legs = placed.map(({ leaves, lands }, k) => {
    const end = placed[k + 1]?.leaves ?? lands;
    return { ...(leaves === undefined ? {} : { leaves }), ...(end === undefined ? {} : { lands: end }) };
  });
  return { pieces, legs };
}
