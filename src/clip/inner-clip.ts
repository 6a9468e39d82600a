/** An open clip as this room knows it. */
import type { PxSize } from './clip-sizes.ts';
import type { OpenClip } from './clip-source.ts';

type AnyPen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** A frame while its turn lasts. */
interface InnerFrame {
  readonly k: number;
  /** upright, over all of the canvas */
  draw(to: AnyPen): void;
}

export interface InnerClip extends OpenClip {
  readonly shown: PxSize;
  /** s of the frames of the span, and how long the last one lasts */
  times(): { readonly stamps: Float64Array; readonly lastLasts: number };
  /** frames from .. to of the span one by one; what is damaged is left out */
  each(from: number, to: number): AsyncGenerator<InnerFrame, void, unknown>;
}

export function innerOf(clip: OpenClip): InnerClip {
  if (!('each' in clip && 'times' in clip)) throw new TypeError('This clip was not opened here.');
  return clip as InnerClip;
}
