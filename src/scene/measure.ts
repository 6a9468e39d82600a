/**
 * Length and angle on the stage: points of the picture plane, m (screen right, screen up). What is measured is what the
 * view shows: lengths across the line of sight only.
 */
import { type Camera, screenOf } from './camera.ts';
import type { DrawItem } from './scene.ts';

export type MeasureKind = 'length' | 'angle';
export type PlanePoint = readonly [number, number];

export interface Measure {
  readonly kind: MeasureKind;
  /** two ends of a length; an angle's vertex is in the middle of three */
  readonly points: readonly PlanePoint[];
}

/** Length in m, or angle in rad; undefined while points are missing. */
export function calcMeasure({ kind, points }: Measure): number | undefined {
  const [a, b, c] = points;
  if (kind === 'length') return a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : undefined;
  if (!a || !b || !c) return undefined;
  const [ax, ay, cx, cy] = [a[0] - b[0], a[1] - b[1], c[0] - b[0], c[1] - b[1]];
  return Math.abs(Math.atan2(ax * cy - ay * cx, ax * cx + ay * cy));
}

const R = 5;

export function measureItems(camera: Camera, measure: Measure, label: string): DrawItem[] {
  const at = measure.points.map(([u, v]) => screenOf(camera, u, v));
  const items: DrawItem[] = [];
  if (at.length > 1) {
    const points = Float32Array.from(at.flat());
    items.push({ kind: 'line', points, stroke: 'air', width: 5, cap: 'round' });
    items.push({ kind: 'line', points, stroke: 'ink', width: 2, cap: 'round', data: { measure: measure.kind } });
  }
  if (measure.kind === 'angle' && at.length === 3) items.push(angleArc(at));
  at.forEach(([x, y], i) => {
    items.push({ kind: 'circle', x, y, r: R, fill: 'air', stroke: 'ink', width: 2, hit: `measure:${i}` });
  });
  if (label && at.length > 1) {
    const [[x0, y0], [x1, y1]] = at;
    const middle = measure.kind === 'length';
    items.push({
      kind: 'text',
      x: middle ? (x0 + x1) / 2 + 12 : x1 + 14,
      y: middle ? (y0 + y1) / 2 - 8 : y1 + 20,
      text: label,
      size: 15,
      weight: 650,
      fill: 'ink',
      anchor: 'start',
      halo: 'air',
      data: { measured: label },
    });
  }
  return items;
}

function angleArc([a, b, c]: readonly (readonly [number, number])[]): DrawItem {
  const from = Math.atan2(a[1] - b[1], a[0] - b[0]);
  let turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - from;
  turn = Math.atan2(Math.sin(turn), Math.cos(turn));
  const r = Math.min(30, 0.5 * Math.hypot(a[0] - b[0], a[1] - b[1]), 0.5 * Math.hypot(c[0] - b[0], c[1] - b[1]));
  const points: number[] = [];
  for (let i = 0; i <= 16; i++) {
    const angle = from + (turn * i) / 16;
    points.push(b[0] + r * Math.cos(angle), b[1] + r * Math.sin(angle));
  }
  return { kind: 'line', points: Float32Array.from(points), stroke: 'ink', width: 1.6 };
}
