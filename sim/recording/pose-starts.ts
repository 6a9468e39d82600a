/** Poses that the search for a body among its markers starts from: the trunk laid over its own markers, the arms down, at the sides, overhead. */
import type { Body } from '../body/body.ts';
import { applyInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import type { PlacedPoint, PointPoser } from './point-poser.ts';
import { fitRigid } from './rigid-fit.ts';

const TRUNK = ['pelvis', 'middleTrunk', 'upperTrunk', 'head'];
/** rad by which both arms are raised at the side, and both thighs to the front */
const ARMS = [0, Math.PI / 2, 2.8];
const THIGHS = [0, 1.7];

/** The best of all starts is left in the poser; returns its miss, or undefined where too few points of the trunk are seen. */
export function fitFresh(
  body: Body,
  poser: PointPoser,
  placed: readonly PlacedPoint[],
  target: Float64Array,
): number | undefined {
  const neutral = neutralOrigins(body);
  const from = new Float64Array(target.length).fill(Number.NaN);
  placed.forEach(({ segment, at_B }, k) => {
    if (!TRUNK.includes(body.segments[segment].name)) return;
    for (let c = 0; c < 3; c++) from[3 * k + c] = neutral[3 * segment + c] + at_B[c];
  });
  const rigid = fitRigid(from, target);
  if (!rigid) return undefined;
  const at = (name: string): number => body.segments.findIndex((s) => s.name === name);
  let best: { readonly miss: number; readonly saved: Float64Array } | undefined;
  for (const arm of ARMS)
    for (const thigh of THIGHS) {
      const turned = new Map<number, Triple>([
        [at('upperArmR'), [-arm, 0, 0]],
        [at('upperArmL'), [arm, 0, 0]],
        [at('thighR'), [0, 0, thigh]],
        [at('thighL'), [0, 0, thigh]],
      ]);
      poser.reset(rigid.R, rigid.p, turned);
      const miss = poser.fit(target);
      if (!best || miss < best.miss) best = { miss, saved: poser.save() };
    }
  if (!best) return undefined;
  poser.load(best.saved);
  return best.miss;
}

/** Origins of the segments in the neutral pose, from the root's (nseg x 3). */
function neutralOrigins(body: Body): Float64Array {
  const p = new Float64Array(3 * body.segments.length);
  const same = [1, 0, 0, 0, 1, 0, 0, 0, 1];
  body.segments.forEach(({ parent, p_PoBo_P }, s) => {
    if (parent < 0) return;
    applyInto(same, 0, p_PoBo_P, 0, p, 3 * s);
    for (let k = 0; k < 3; k++) p[3 * s + k] += p[3 * parent + k];
  });
  return p;
}
