/** Trails: the way of a hand, a foot, the head through the whole flight, drawn up to the cursor and pale beyond it. */
import { type Camera, project } from './camera.ts';
import type { DrawItem, Token } from './scene.ts';

/** The way of one point: (n x 4) t, x, y, z in W, ascending. */
export interface Trail {
  readonly name: string;
  readonly side: 'left' | 'right' | 'centre';
  readonly points: Float64Array;
}

const LOOK: Record<Trail['side'], { stroke: Token; dash?: readonly [number, number] }> = {
  left: { stroke: 'limb-l' },
  right: { stroke: 'limb-line', dash: [5, 3] },
  centre: { stroke: 'trunk', dash: [1.5, 3] },
};

export function trailItems(camera: Camera, trails: readonly Trail[], cursor: number): DrawItem[] {
  return trails.flatMap(({ name, side, points }): DrawItem[] => {
    const behind: number[] = [];
    const ahead: number[] = [];
    for (let i = 0; i < points.length; i += 4) {
      const at = project(camera, [points[i + 1], points[i + 2], points[i + 3]]);
      if (points[i] <= cursor) behind.push(...at);
      else {
        if (ahead.length === 0 && behind.length > 0) ahead.push(behind[behind.length - 2], behind[behind.length - 1]);
        ahead.push(...at);
      }
    }
    const { stroke, dash } = LOOK[side];
    const line = (list: number[], width: number, token: Token): DrawItem[] =>
      list.length < 4
        ? []
        : [
            {
              kind: 'line',
              points: Float32Array.from(list),
              stroke: token,
              width,
              ...(dash ? { dash } : {}),
              data: { trail: name },
            },
          ];
    return [...line(ahead, 1, 'rule-2'), ...line(behind, 2, stroke)];
  });
}
