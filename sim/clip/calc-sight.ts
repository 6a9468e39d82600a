/** How W is seen in a clip: from a length, or from a rectangle on the floor and what stands on it. */

import type { Triple } from '../math/vec3.ts';
import type { ClipScale, ClipSight, ClipStand } from './clip.ts';

export interface SightGiven {
  readonly picture: { readonly width: number; readonly height: number }; // px
  readonly scale: ClipScale;
  readonly stand: ClipStand;
  /** rad across, typed */
  readonly view?: number;
  /** m in W: where what is at `stand.feet` is at take-off */
  readonly p_WFeet_W: Triple;
  /** m in W: the floor that the rectangle lies on */
  readonly floorY: number;
  /** 1: the flight goes along +X, or nowhere; -1: along -X */
  readonly way: 1 | -1;
}

/** Throws a FieldError in words where no camera can see such points. */
export function calcClipSight(given: SightGiven): ClipSight {
  throw new Error(`no sight of ${given.scale.kind} yet`);
}
