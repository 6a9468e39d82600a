/** How far a limb reaches, and the bend of elbow or knee for a distance. Places in the root frame B. */
import type { Vec3 } from '../body/body.ts';
import { dot, type Triple } from '../math/vec3.ts';
import { type Limb, placeLimb } from './limb.ts';

/**
 * Bends elbow or knee to the distance wanted, by the law of cosines: it alone sets how far the end is from shoulder or hip,
 * |E - S|^2 = A + B cos(x - x0), and a straight limb has no slope to follow inwards. Returns the place nearest to the wanted
 * one that the limb is long enough for.
 */
export function withinLength(
  limb: Limb,
  x: number[],
  wanted: Triple,
  rangeOf: (a: number) => [number, number],
  view: Vec3 | undefined,
): Triple {
  const { middle, own, p_BoSo_B: p, p_BoE_B: e } = limb;
  const oneLink = limb.body.neutralHuman && limb.end !== 'head';
  if (middle === undefined && !oneLink) return wanted;
  const squareAt = (v: number): number => {
    if (middle !== undefined) x[middle] = v;
    placeLimb(limb, x, own);
    return (e[0] - p[3 * own]) ** 2 + (e[1] - p[3 * own + 1]) ** 2 + (e[2] - p[3 * own + 2]) ** 2;
  };
  const away: Triple = [wanted[0] - p[3 * own], wanted[1] - p[3 * own + 1], wanted[2] - p[3 * own + 2]];
  const depth = view ? dot(away, view) : 0;
  const D = dot(away, away) - depth * depth;
  let length = 0;
  if (middle === undefined) length = Math.sqrt(squareAt(0));
  else {
    const { A, B, x0 } = getBendLaw(limb, x, middle, squareAt);
    if (view) length = Math.sqrt(A + B);
    else {
      const now = x[middle];
      const bend = Math.acos(Math.max(-1, Math.min(1, (D - A) / B)));
      const [low, high] = rangeOf(middle);
      const ways = [x0 + bend, x0 - bend].map((v) => Math.max(low, Math.min(high, v)));
      const squares = ways.map((v) => A + B * Math.cos(v - x0));
      const off = squares.map((square) => Math.abs(square - D));
      const other =
        Math.abs(off[1] - off[0]) <= 1e-9 ? Math.abs(ways[1] - now) < Math.abs(ways[0] - now) : off[1] < off[0];
      x[middle] = ways[other ? 1 : 0];
      length = Math.sqrt(squares[other ? 1 : 0]);
    }
  }
  const reach = Math.sqrt(Math.max(0, D));
  if (view ? reach <= length : Math.abs(reach - length) < 1e-9 || reach === 0) return wanted;
  const f = length / reach;
  const along = view ?? [0, 0, 0];
  return [0, 1, 2].map((k) => p[3 * own + k] + f * (away[k] - depth * along[k]) + depth * along[k]) as Triple;
}

interface BendLaw {
  /** what the law depends on: the joints beyond the middle one */
  readonly beyond: readonly number[];
  readonly values: readonly number[];
  readonly A: number;
  readonly B: number;
  readonly x0: number;
}
const laws = new WeakMap<Limb, BendLaw>();

/** A, B and x0 from three bends; kept until wrist or forearm change. */
function getBendLaw(limb: Limb, x: number[], middle: number, squareAt: (v: number) => number): BendLaw {
  const known = laws.get(limb);
  if (known?.beyond.every((a, i) => x[a] === known.values[i])) return known;
  const now = x[middle];
  const [f0, f1, f2] = [squareAt(0), squareAt(Math.PI / 2), squareAt(Math.PI)];
  squareAt(now);
  const A = (f0 + f2) / 2;
  const beyond = limb.path
    .slice(limb.own + 1)
    .flatMap((i) => limb.body.segments[i].hinges.flatMap((h) => h.terms.map((t) => t.angle)))
    .filter((a) => a !== middle);
  const law = {
    beyond,
    values: beyond.map((a) => x[a]),
    A,
    B: Math.hypot((f0 - f2) / 2, f1 - A),
    x0: Math.atan2(f1 - A, (f0 - f2) / 2),
  };
  laws.set(limb, law);
  return law;
}
