/**
 * The equilateral pentagon with unit point masses at the corners, zero angular momentum, round the edge of its convex
 * shapes (Tong & Dullin, arXiv:1111.1246: among convex shapes the edge is the best loop, about 19 deg). On that edge one
 * corner is straight, so the pentagon is a quadrilateral with sides 2, 1, 1, 1; it changes hands where a second corner,
 * two places on, becomes straight as well (a triangle 2, 2, 1). Five such pieces make the loop; they are the same up to
 * a shift of the corners, two places at a time.
 */
import { angleOf, cosine, type Jet, minus, plus, scaled, sine, squareRoot, times } from './jet.ts';

/** Angle at the apex of the triangle 2, 2, 1. */
const APEX = Math.acos(7 / 8);

/**
 * Exterior angles [e0..e4] of corners 0..4 with corner 1 straight, s in [0, 1]. Headings of the sides: 0 along the long
 * side, then a, b, c with 2 + exp(ia) + exp(ib) + exp(ic) = 0. The middle one, b, is the parameter: it runs from pi + APEX
 * (corner 4 straight, b = c) to pi - APEX (corner 3 straight, a = b); a and c lie evenly about the line of -2 - exp(ib).
 */
export function piece(s: number): Jet[] {
  const b: Jet = [Math.PI + APEX * (1 - 2 * s), -2 * APEX, 0];
  const x = plus([2, 0, 0], cosine(b));
  const y = sine(b);
  const half = scaled(squareRoot(plus(times(x, x), times(y, y))), 0.5);
  const middle = plus([Math.PI, 0, 0], angleOf(x, y));
  const aside = angleOf(half, squareRoot(minus([1, 0, 0], times(half, half))));
  const a = minus(middle, aside);
  const c = plus(middle, aside);
  return [minus([2 * Math.PI, 0, 0], c), [0, 0, 0], a, minus(b, a), minus(c, b)];
}

/**
 * Exterior angles of the five corners at s in piece k = 0..4 of the loop. A piece leaves with corner 3 straight where it
 * came in with corner 4; the next one has corner 3 in the place of corner 1, so corners shift by two.
 */
export function loop(k: number, s: number): Jet[] {
  const e = piece(s);
  const out: Jet[] = [];
  for (let i = 0; i < 5; i++) out[(i + 2 * k) % 5] = e[i];
  return out;
}

/** Corners 0..4 in a frame with corner 0 at the origin and the side from 0 to 1 along x. */
export function corners(e: readonly Jet[]): { x: Jet; y: Jet }[] {
  const places: { x: Jet; y: Jet }[] = [{ x: [0, 0, 0], y: [0, 0, 0] }];
  let heading: Jet = [0, 0, 0];
  for (let i = 1; i < 5; i++) {
    const before = places[i - 1];
    places.push({ x: plus(before.x, cosine(heading)), y: plus(before.y, sine(heading)) });
    heading = plus(heading, e[i]);
  }
  return places;
}
