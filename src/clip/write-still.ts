/** A still picture written again: its px alone, so that nothing of where and when it was taken goes along. */
import { blurInto } from './blur.ts';
import { clipFault } from './clip-fault.ts';
import { fitWithin } from './clip-sizes.ts';
import type { ClipSending } from './clip-source.ts';
import type { InnerClip } from './inner-clip.ts';

export async function writeStill(clip: InnerClip, { isBlurred, most }: ClipSending): Promise<Blob> {
  const size = fitWithin(clip.shown, most);
  const [pen, sharp] = [new OffscreenCanvas(size.width, size.height), new OffscreenCanvas(size.width, size.height)].map(
    (canvas) => canvas.getContext('2d', { alpha: false }),
  );
  if (!pen || !sharp) throw clipFault('noBrowser');
  for await (const { draw } of clip.each(0, 0)) {
    draw(isBlurred ? sharp : pen);
    if (isBlurred) blurInto(pen, sharp.canvas, size);
  }
  return pen.canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
}
