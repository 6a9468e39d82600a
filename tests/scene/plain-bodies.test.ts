// Plain bodies over the athlete: at true size, about the right axis, in the picture's own scale.
import { describe, expect, test } from 'vitest';
import { type PlainShape, plainBodyItems } from '../../src/scene/plain-bodies.ts';
import type { DrawItem } from '../../src/scene/scene.ts';
import { frontView, sideView } from '../../src/scene/view.ts';

const SCALE = 100;
const upright = [1, 0, 0, 0, 1, 0, 0, 0, 1];
/** a quarter backward about Z: the head points to -X */
const lying = [0, -1, 0, 1, 0, 0, 0, 0, 1];

function extent(items: readonly DrawItem[]): { x: [number, number]; y: [number, number] } {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const item of items) {
    if (item.kind === 'circle') {
      xs.push(item.x - item.r, item.x + item.r);
      ys.push(item.y - item.r, item.y + item.r);
    }
    if (item.kind === 'line') for (const [i, v] of item.points.entries()) (i % 2 ? ys : xs).push(v);
  }
  return { x: [Math.min(...xs), Math.max(...xs)], y: [Math.min(...ys), Math.max(...ys)] };
}
const drawn = (shape: PlainShape, R_WF: readonly number[], view = sideView(1)) =>
  extent(plainBodyItems([shape], { view, scale: SCALE, x: 300, y: 200, R_WF, stature: 1.6 }));

describe('plain bodies', () => {
  test.each(['disc', 'ball', 'point mass'] as const)(
    'a %s about the lateral axis is a circle of its radius from the side',
    (kind) => {
      const { x, y } = drawn({ kind, about: 'lateral', size: 0.5 }, upright);
      const within = kind === 'point mass' ? 6 : 0.5;
      for (const [end, wanted] of [
        [x[0], 250],
        [x[1], 350],
        [y[0], 150],
        [y[1], 250],
      ])
        expect(Math.abs(end - wanted)).toBeLessThanOrEqual(within);
    },
  );
  test('a disc about the lateral axis is a line from the front', () => {
    const { x, y } = drawn({ kind: 'disc', about: 'lateral', size: 0.5 }, upright, frontView);
    expect(x[1] - x[0]).toBeCloseTo(0, 6);
    expect(y[1] - y[0]).toBeCloseTo(100, 0);
  });
  test('a rod about the lateral axis lies along the body, and turns with it', () => {
    const rod: PlainShape = { kind: 'rod', about: 'lateral', size: 1.4 };
    expect(drawn(rod, upright).y).toEqual([130, 270]);
    expect(drawn(rod, upright).x).toEqual([300, 300]);
    const turned = drawn(rod, lying);
    expect(turned.x[1] - turned.x[0]).toBeCloseTo(140, 4);
    expect(turned.y[1] - turned.y[0]).toBeCloseTo(0, 4);
  });
  test('a cylinder about the long axis is as wide as it is thick and as tall as the athlete', () => {
    const { x, y } = drawn({ kind: 'cylinder', about: 'long', size: 0.15 }, upright);
    expect(x[1] - x[0]).toBeCloseTo(30, 0);
    expect(y[1] - y[0]).toBeCloseTo(160, 0);
  });
});
