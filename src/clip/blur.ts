/**
 * A picture blurred whole, so that no face can be known again: what goes through so few px that it cannot be sharpened back. A head as wide as a fifth
 * of the picture is 5 px of them; faces of people one knows are recognised from about 7 by 10 px on (Sinha et al. 2006, from memory).
 */
import type { PxSize } from './clip-sizes.ts';

/** px of the longer side that the picture goes through. */
const FEW = 24;

type Pen = OffscreenCanvasRenderingContext2D;

function penOf(width: number, height: number): Pen {
  const pen = new OffscreenCanvas(width, height).getContext('2d', { alpha: false });
  if (!pen) throw new Error('This browser gives no canvas to blur on.');
  pen.imageSmoothingEnabled = true;
  return pen;
}

/** Means of squares: halved again and again, where each px is the mean of four. */
function fewPx(source: CanvasImageSource, { width, height }: PxSize): OffscreenCanvas {
  const k = Math.min(1, FEW / Math.max(width, height));
  const few = [Math.max(1, Math.round(width * k)), Math.max(1, Math.round(height * k))] as const;
  let halvings = 0;
  while (few[0] * 2 ** (halvings + 1) <= width && few[1] * 2 ** (halvings + 1) <= height) halvings++;
  const sized = (n: number) => [few[0] * 2 ** n, few[1] * 2 ** n] as const;
  let pen = penOf(...sized(halvings));
  pen.drawImage(source, 0, 0, ...sized(halvings));
  for (let n = halvings - 1; n >= 0; n--) {
    const next = penOf(...sized(n));
    next.drawImage(pen.canvas, 0, 0, ...sized(n));
    pen = next;
  }
  return pen.canvas;
}

/** Fills `to`; the sharp picture is never on it. */
export function blurInto(
  to: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  source: CanvasImageSource,
  size: PxSize,
): void {
  const { width, height } = to.canvas;
  to.imageSmoothingEnabled = true;
  to.imageSmoothingQuality = 'high';
  to.drawImage(fewPx(source, size), 0, 0, width, height);
}
