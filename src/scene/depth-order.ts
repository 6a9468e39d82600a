/**
 * Which part of the figure is drawn over which. Two parts are compared only where they overlap on the screen, by the
 * depth of the spheres that stand for them; the order then follows from those pairs, farthest first.
 */
import { type Projected, STRIDE } from './blobs.ts';
import type { LookPart } from './look.ts';

interface PartOrder {
  /** indices into parts, farthest first */
  readonly order: readonly number[];
  /** (n x n) 1 where two parts overlap on the screen */
  readonly overlap: Uint8Array;
}

/** A rule that overrides the depths: +1 `a` lies in front of `b`, -1 behind, 0 no opinion. */
export type FrontRule = (a: LookPart, b: LookPart) => number;

export function orderParts(parts: readonly LookPart[], projected: Projected, rule: FrontRule): PartOrder {
  const n = parts.length;
  const overlap = new Uint8Array(n * n);
  /** front[i * n + j] > 0: i in front of j */
  const front = new Float64Array(n * n);
  const mean = new Float64Array(n);
  const boxes = new Float64Array(4 * n);
  for (let i = 0; i < n; i++) measure(parts[i].probes, projected, i, mean, boxes);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (
        boxes[4 * i] > boxes[4 * j + 2] ||
        boxes[4 * j] > boxes[4 * i + 2] ||
        boxes[4 * i + 1] > boxes[4 * j + 3] ||
        boxes[4 * j + 1] > boxes[4 * i + 3]
      ) {
        continue;
      }
      const score = compare(parts[i].probes, parts[j].probes, projected);
      if (score === undefined) continue;
      overlap[i * n + j] = 1;
      overlap[j * n + i] = 1;
      const ruled = rule(parts[i], parts[j]);
      const sign = ruled === 0 ? score : ruled;
      front[i * n + j] = sign;
      front[j * n + i] = -sign;
    }
  }
  return { order: drain(n, front, mean), overlap };
}

function measure(probes: readonly number[], projected: Projected, i: number, mean: Float64Array, boxes: Float64Array) {
  let sum = 0;
  let x0 = Number.POSITIVE_INFINITY;
  let y0 = x0;
  let x1 = -x0;
  let y1 = -x0;
  for (const probe of probes) {
    const j = STRIDE * probe;
    const r = Math.sqrt(projected[j + 3]);
    sum += projected[j + 2];
    x0 = Math.min(x0, projected[j] - r);
    x1 = Math.max(x1, projected[j] + r);
    y0 = Math.min(y0, projected[j + 1] - r);
    y1 = Math.max(y1, projected[j + 1] + r);
  }
  mean[i] = sum / Math.max(1, probes.length);
  boxes.set([x0, y0, x1, y1], 4 * i);
}

/** Mean depth difference a - b over the overlapping spheres, weighted by how much they overlap. */
function compare(a: readonly number[], b: readonly number[], p: Projected): number | undefined {
  let sum = 0;
  let weight = 0;
  for (const i of a) {
    const k = STRIDE * i;
    const ri = Math.sqrt(p[k + 3]);
    for (const j of b) {
      const m = STRIDE * j;
      const reach = ri + Math.sqrt(p[m + 3]);
      const dx = p[k] - p[m];
      const dy = p[k + 1] - p[m + 1];
      const d2 = dx * dx + dy * dy;
      if (d2 >= reach * reach) continue;
      const w = reach - Math.sqrt(d2);
      sum += w * (p[k + 2] - p[m + 2]);
      weight += w;
    }
  }
  return weight > 0 ? sum / weight : undefined;
}

/** Takes the parts one by one, always the farthest that has nothing left behind it; a circle is cut at the farthest. */
function drain(n: number, front: Float64Array, mean: Float64Array): number[] {
  const order: number[] = [];
  const done = new Uint8Array(n);
  while (order.length < n) {
    let best = -1;
    let free = false;
    for (let i = 0; i < n; i++) {
      if (done[i]) continue;
      let blocked = false;
      for (let j = 0; j < n && !blocked; j++) blocked = !done[j] && front[i * n + j] > 0;
      const better = best < 0 || (!blocked && !free) || (!blocked === free && mean[i] < mean[best]);
      if (better) {
        best = i;
        free = !blocked;
      }
    }
    done[best] = 1;
    order.push(best);
  }
  return order;
}
