/**
 * What gives in the athlete besides the joints, put under the soles in series with the mat: heel pads, arches, the give of spine and
 * soft tissue, of which rigid links have none (wobbling mass takes up to half of a joint's load: Pain & Challis 2006, J Biomech).
 * Both are bed of springs of the same law (mat.ts); with stiffnesses k1, k2 in series k = k1 k2 / (k1 + k2), each is pressed in by
 * k / ki of the whole, and damping that loses the same is c = c1 (k / k1)^2 + c2 (k / k2)^2.
 */
import type { MatSpec } from './mat.ts';

export interface Soles {
  /** N/m of both feet for each kg of body mass; s/m */
  readonly stiffness: number;
  readonly damping: number;
}

/** Mat and soles as one, and what of it is the mat's. */
export interface SoledMat extends MatSpec {
  /** of the depth, and of what is held */
  readonly matShare: number;
  /** of what is lost */
  readonly matLossShare: number;
}

export function onSoles(mat: MatSpec, soles: Soles | undefined, mass: number): SoledMat {
  if (!soles) return { ...mat, matShare: 1, matLossShare: 1 };
  const own = soles.stiffness * mass;
  const stiffness = (mat.stiffness * own) / (mat.stiffness + own);
  const [ofMat, ofSoles] = [stiffness / mat.stiffness, stiffness / own];
  const damping = mat.damping * ofMat ** 2 + soles.damping * ofSoles ** 2;
  return {
    ...mat,
    stiffness,
    damping,
    thickness: mat.thickness / ofMat,
    matShare: ofMat,
    matLossShare: damping > 0 ? (mat.damping * ofMat ** 2) / damping : ofMat,
  };
}
