/** The path of the mass centre with a dot every tenth of a second, and where it is at any instant. */
import { placeIn } from '../../sim/math/sorted.ts';
import type { StageFlight } from './pose-frames.ts';
import type { Dash, DrawItem, Points } from './scene.ts';

/** Mass centre at t by linear interpolation of the sampled path; [x, y, z] in W. */
export function pathAt(path: Float64Array, t: number): [number, number, number] {
  const { i, share } = placeIn(path, t, path.length / 4, 4);
  const at = (k: number): number => path[4 * i + k] + share * (path[4 * i + 4 + k] - path[4 * i + k]);
  return [at(1), at(2), at(3)];
}

export type PlacePoint = (t: number, x: number, y: number, z: number) => readonly [number, number];

export function pathItems(flight: StageFlight, place: PlacePoint, dash?: Dash): DrawItem[] {
  const { path } = flight;
  const n = path.length / 4;
  const points: Points = new Float32Array(2 * n);
  for (let i = 0; i < n; i++) {
    const [x, y] = place(path[4 * i], path[4 * i + 1], path[4 * i + 2], path[4 * i + 3]);
    points[2 * i] = x;
    points[2 * i + 1] = y;
  }
  const items: DrawItem[] = [
    { kind: 'line', points, stroke: 'ink-3', width: 1, hit: 'path', ...(dash ? { dash } : {}) },
  ];
  if (dash) return items;
  // dots every 0.1 s, thinned on long flights until they stand apart
  const step = flight.duration > 4 ? 0.5 : 0.1;
  for (let k = 0; k * step <= flight.duration + 1e-9; k++) {
    const t = k * step;
    const [x, y] = place(t, ...pathAt(path, t));
    items.push({ kind: 'circle', x, y, r: 1.9, fill: 'air', stroke: 'ink-3', width: 1, data: { t } });
  }
  return items;
}

/** Highest mass centre of the path, m, and the higher of its two ends. */
export function pathHeights({ path }: StageFlight): { top: number; low: number } {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 2; i < path.length; i += 4) top = Math.max(top, path[i]);
  return { top, low: Math.max(path[2], path[path.length - 2]) };
}
