/**
 * A body compiled for evaluation: the tree as flat arrays, in the order of Body.segments and, segment by segment, of
 * their hinges. Frames as in body.ts. Nothing here changes after it is made.
 */

import type { Body } from '../body/body.ts';
import { onceFor } from '../math/once-for.ts';

export interface Model {
  readonly body: Body;
  readonly segments: number;
  readonly hinges: number;
  readonly mass: number;
  readonly parent: Int32Array; // (nseg), -1 for the root
  readonly joint: Float64Array; // (nseg x 3) origin in the parent's frame
  readonly hingeStart: Int32Array; // (nseg + 1)
  readonly axis: Float64Array; // (hinges x 3)
  /** 0, 1, 2: the axis is +-X, Y, Z (sign in axisSign); 3: any other direction */
  readonly axisKind: Int8Array; // (hinges)
  readonly axisSign: Float64Array; // (hinges)
  readonly m: Float64Array; // (nseg)
  readonly centre: Float64Array; // (nseg x 3) p_BoBcm_B
  readonly inertia: Float64Array; // (nseg x 6) I_BBcm_B
  /** inertia is diagonal in the segment frame */
  readonly diagonal: Uint8Array; // (nseg)
  readonly hingeNames: readonly string[];
}

/** The compiled model of a body; made once for each Body. */
export const getModel = onceFor(makeModel);

function makeModel(body: Body): Model {
  const n = body.segments.length;
  const hinges = body.segments.flatMap((s) => s.hinges);
  const hingeStart = new Int32Array(n + 1);
  body.segments.forEach((s, i) => {
    hingeStart[i + 1] = hingeStart[i] + s.hinges.length;
  });
  const axis = hinges.flatMap((h) => [...h.axis]);
  return {
    body,
    segments: n,
    hinges: hinges.length,
    mass: body.segments.reduce((sum, s) => sum + s.mass, 0),
    parent: Int32Array.from(body.segments, (s) => s.parent),
    joint: Float64Array.from(body.segments.flatMap((s) => [...s.p_PoBo_P])),
    hingeStart,
    axis: Float64Array.from(axis),
    ...axisKindOf(axis),
    m: Float64Array.from(body.segments, (s) => s.mass),
    centre: Float64Array.from(body.segments.flatMap((s) => [...s.p_BoBcm_B])),
    inertia: Float64Array.from(body.segments.flatMap((s) => [...s.I_BBcm_B])),
    diagonal: Uint8Array.from(body.segments, (s) =>
      s.I_BBcm_B[3] === 0 && s.I_BBcm_B[4] === 0 && s.I_BBcm_B[5] === 0 ? 1 : 0,
    ),
    hingeNames: hinges.map((h) => h.name),
  };
}

/** axisKind and axisSign of axes (hinges x 3). */
export function axisKindOf(axis: ArrayLike<number>): Pick<Model, 'axisKind' | 'axisSign'> {
  const n = axis.length / 3;
  const axisKind = new Int8Array(n).fill(3);
  const axisSign = new Float64Array(n).fill(1);
  for (let k = 0; k < n; k++)
    for (let i = 2; i >= 0; i--) {
      const x = axis[3 * k + i];
      if (Math.abs(Math.abs(x) - 1) >= 1e-15) continue;
      axisKind[k] = i;
      axisSign[k] = Math.sign(x);
    }
  return { axisKind, axisSign };
}
