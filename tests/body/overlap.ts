/** How deep forearms and hands lie in the rest of the body, from the drawn volumes. A bound on shapes, not physics. */
import type { Body, DrawShape } from '../../sim/body/body.ts';
import { turned, type Whole } from './moments.ts';

interface Ball {
  readonly p: readonly number[];
  readonly r: number;
}

const mix = (a: readonly number[], b: readonly number[], f: number): number[] => a.map((x, i) => x + (b[i] - x) * f);
const minus = (a: readonly number[], b: readonly number[]): number[] => a.map((x, i) => x - b[i]);
const length = (a: readonly number[]): number => Math.hypot(...a);

function balls(body: Body, whole: Whole, segment: number): Ball[] {
  return body.segments[segment].shapes.flatMap((s) => {
    if (s.kind !== 'capsule') return [];
    return Array.from({ length: 9 }, (_, i) => {
      const d = turned(whole.turns[segment], mix(s.a_B, s.b_B, i / 8));
      return { p: whole.origins[segment].map((x, j) => x + d[j]), r: s.radiusA + ((s.radiusB - s.radiusA) * i) / 8 };
    });
  });
}

/** Signed distance of a point (segment frame) from a volume, m; first order for an ellipsoid. */
function distance(s: DrawShape, p: readonly number[]): number {
  if (s.kind === 'ellipsoid') {
    const d = minus(p, s.centre_B);
    const k0 = length(d.map((x, i) => x / s.radii[i]));
    const k1 = length(d.map((x, i) => x / s.radii[i] ** 2));
    return k1 === 0 ? -Math.min(...s.radii) : (k0 * (k0 - 1)) / k1;
  }
  const ab = minus(s.b_B, s.a_B);
  const along = ab.reduce((sum, x, i) => sum + x * (p[i] - s.a_B[i]), 0) / (length(ab) ** 2 || 1);
  const f = Math.max(0, Math.min(1, along));
  return length(minus(p, mix(s.a_B, s.b_B, f))) - (s.radiusA + (s.radiusB - s.radiusA) * f);
}

/** Deepest overlap of the forearms and hands with trunk, head, legs and the other arm, m (negative: clear by that). */
export function deepestOverlap(body: Body, whole: Whole): { depth: number; where: string } {
  let depth = Number.NEGATIVE_INFINITY;
  let where = '';
  body.segments.forEach((arm, i) => {
    if (!/^(forearm|hand)/.test(arm.name)) return;
    const spheres = balls(body, whole, i);
    body.segments.forEach((other, k) => {
      if (other.group === 'arms' && other.side === arm.side) return;
      for (const { p, r } of spheres) {
        const d = minus(p, whole.origins[k]);
        const R = whole.turns[k];
        const q = [0, 1, 2].map((c) => R[0][c] * d[0] + R[1][c] * d[1] + R[2][c] * d[2]);
        for (const s of other.shapes) {
          const inside = r - distance(s, q);
          if (inside > depth) [depth, where] = [inside, `${arm.name} in ${other.name}`];
        }
      }
    });
  });
  return { depth, where };
}
