/** The apparatus of a chain of flights in one world: what two of them share is there once. */
import type { SkillApparatus } from './apparatus.ts';
import type { Piece, Span } from './apparatus-piece.ts';

interface PlacedApparatus {
  readonly apparatus: SkillApparatus;
  /** of this flight's W in the world of the chain, m; heights are the same */
  readonly offset: { readonly x: number; readonly z: number };
}

export interface ChainApparatus {
  readonly pieces: readonly Piece[];
  /** of each flight, indices into pieces */
  readonly legs: readonly { readonly leaves?: number; readonly lands?: number }[];
}

function movePiece(piece: Piece, dx: number, dz: number): Piece {
  const by = ([a, b]: Span, d: number): Span => [a + d, b + d];
  const flat = (at: { readonly x: Span; readonly z: Span }) => ({ x: by(at.x, dx), z: by(at.z, dz) });
  return {
    ...piece,
    x: by(piece.x, dx),
    z: by(piece.z, dz),
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
  const placed = flights.map(({ apparatus: { pieces: own, leaves, lands }, offset }, k) => {
    const next = flights[k + 1]?.apparatus;
    const isLeftNext = next?.leaves !== undefined;
    const at = own.map((piece, i) =>
      isLeftNext && i === lands && i !== leaves && Number.isFinite(piece.x[0])
        ? undefined
        : put(movePiece(piece, offset.x, offset.z)),
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
