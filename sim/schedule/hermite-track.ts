/** A track through values with given first and second derivatives: quintic spans, twice continuously differentiable. */
import { COEFS, type Track } from './track.ts';

export interface Node {
  readonly t: number;
  readonly y: number;
  readonly d: number;
  readonly dd: number;
}

/** Ascending nodes; constant outside them. Every node is a break. */
export function makeHermiteTrack(nodes: readonly Node[]): Track {
  const coefs = new Float64Array((nodes.length - 1) * COEFS);
  for (let i = 0; i + 1 < nodes.length; i++) {
    const a = nodes[i];
    const b = nodes[i + 1];
    const h = b.t - a.t;
    const o = i * COEFS;
    // p(h) = b.y, p'(h) = b.d, p''(h) = b.dd
    const y = b.y - a.y;
    const [v0, v1] = [a.d * h, b.d * h];
    const [c0, c1] = [a.dd * h * h, b.dd * h * h];
    coefs[o] = a.y;
    coefs[o + 1] = a.d;
    coefs[o + 2] = a.dd / 2;
    coefs[o + 3] = (20 * y - 8 * v1 - 12 * v0 - 3 * c0 + c1) / (2 * h ** 3);
    coefs[o + 4] = (-30 * y + 14 * v1 + 16 * v0 + 3 * c0 - 2 * c1) / (2 * h ** 4);
    coefs[o + 5] = (12 * y - 6 * v1 - 6 * v0 - c0 + c1) / (2 * h ** 5);
  }
  const times = nodes.map((n) => n.t);
  return { times, coefs, before: nodes[0].y, after: nodes[nodes.length - 1].y, breaks: times };
}
