/** A still picture as a clip of one frame, turned as it says. */
import { clipFault } from './clip-fault.ts';
import { fitWithin, isTooLarge, MOST_KEPT_PX, type PxSize, saySize } from './clip-sizes.ts';
import type { ClipPicture, ClipSpan } from './clip-source.ts';
import type { InnerClip } from './inner-clip.ts';

/** Its size, before all of it is decoded. */
async function sizeOf(file: Blob): Promise<PxSize | undefined> {
  const url = URL.createObjectURL(file);
  const picture = new Image();
  try {
    return await new Promise((resolve) => {
      picture.onload = () => resolve({ width: picture.naturalWidth, height: picture.naturalHeight });
      picture.onerror = () => resolve(undefined);
      picture.src = url;
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}

async function decode(file: Blob, shown: PxSize, kind: string): Promise<ImageBitmap> {
  const { width, height } = fitWithin(shown, MOST_KEPT_PX);
  try {
    return await createImageBitmap(file, {
      imageOrientation: 'from-image',
      resizeWidth: width,
      resizeHeight: height,
      resizeQuality: 'high',
    });
  } catch (error) {
    throw clipFault('damaged', kind, error);
  }
}

export async function openStill(file: File, kind: string, signal: AbortSignal): Promise<InnerClip> {
  const shown = await sizeOf(file);
  signal.throwIfAborted();
  if (!shown) throw clipFault(kind === 'heic' ? 'cannotDecode' : 'damaged', kind);
  if (isTooLarge(shown)) throw clipFault('tooLarge', saySize(shown));
  const source = await decode(file, shown, kind);
  const { width, height } = source;
  let isOpen = true;
  if (signal.aborted) {
    source.close();
    throw signal.reason;
  }
  const span: ClipSpan = { stamps: Float64Array.of(0), lastLasts: 0, isVariable: false };
  const picture: ClipPicture = { source, width, height, index: 0 };
  return {
    shown,
    facts: {
      name: file.name,
      bytes: file.size,
      kind: 'still',
      codec: kind,
      ...shown,
      turnedDeg: 0,
      lasts: 0,
      fileHz: 0,
    },
    span: async (_from, _to, seen, stop) => {
      stop.throwIfAborted();
      seen(1);
      return { ...span, isCut: false };
    },
    picture: async (k) => {
      if (!isOpen) throw new DOMException('The clip is closed.', 'AbortError');
      if (k !== 0) throw new RangeError(`Frame ${k}; allowed: 0.`);
      return picture;
    },
    held: () => (isOpen ? { pictures: 1, bytes: 4 * width * height } : { pictures: 0, bytes: 0 }),
    close: () => {
      isOpen = false;
      source.close();
    },
    times: () => span,
    each: async function* () {
      yield { k: 0, draw: (to) => to.drawImage(source, 0, 0, to.canvas.width, to.canvas.height) };
    },
  };
}
