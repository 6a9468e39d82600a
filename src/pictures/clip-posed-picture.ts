/** A figure that was posed over a clip, as markup for an <svg> of the page, with the outlines that it is taken hold of by. */
import type { ClipSight, PosedFrame } from '../../sim/index.ts';
import type { ClipPosings } from '../engine/clip-posed.ts';
import type { FlightResult } from '../engine/result.ts';
import { clipPlace } from '../scene/clip-scene.ts';
import { figureItems } from '../scene/figure.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { type HeldLimb, heldLimbs, type LimbName } from '../scene/held-limbs.ts';

export interface ClipPosedPictures {
  /** over a picture that is drawn `k` times as large as the clip's, `lifted` limbs before the others */
  over(
    result: FlightResult,
    posed: PosedFrame,
    sight: ClipSight,
    k: number,
    lifted: readonly LimbName[],
  ): { readonly markup: string; readonly limbs: readonly HeldLimb[] };
  /** as the camera sees it, its mass centre in the middle, px for a metre */
  small(result: FlightResult, posed: PosedFrame, sight: ClipSight, x: number, y: number, pxPerM: number): string;
}

export function makePosedPictures(posings: ClipPosings): ClipPosedPictures {
  return {
    over: (result, posed, sight, k, lifted) => {
      const { body } = result.flight;
      const pose = posings.picture(result, posed);
      const place = clipPlace(sight, k);
      return {
        markup: svgMarkup(figureItems(body, pose, { ...place, gap: 'tape', lift: { chains: lifted } })),
        limbs: heldLimbs(body, pose, place),
      };
    },
    small: (result, posed, sight, x, y, pxPerM) => {
      const { view } = clipPlace(sight, 1);
      return svgMarkup(
        figureItems(result.flight.body, posings.picture(result, posed), {
          view,
          scale: pxPerM,
          anchor: posed.p_WScm_W,
          x,
          y,
        }),
      );
    },
  };
}
