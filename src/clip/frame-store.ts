/** Decoded frames that are kept, the one that was asked for longest ago let go first. */
import type { PxSize } from './clip-sizes.ts';

/** Bytes of decoded frames. */
const MOST_BYTES = 96 * 2 ** 20;
/** However large: the one that is shown, one before and one after it. */
const LEAST = 3;
const BYTES_A_PX = 4;

const bytesOf = ({ width, height }: PxSize): number => width * height * BYTES_A_PX;

export class FrameStore {
  /** frames of this size that are kept */
  readonly most: number;
  private readonly frames = new Map<number, ImageBitmap>();
  private bytes = 0;

  constructor(size: PxSize) {
    this.most = Math.max(LEAST, Math.floor(MOST_BYTES / bytesOf(size)));
  }

  get(k: number): ImageBitmap | undefined {
    const frame = this.frames.get(k);
    if (!frame) return undefined;
    this.frames.delete(k);
    this.frames.set(k, frame);
    return frame;
  }

  /** one that is not there */
  put(k: number, frame: ImageBitmap): void {
    for (const oldest of this.frames.keys()) {
      if (this.frames.size < this.most) break;
      this.drop(oldest);
    }
    this.frames.set(k, frame);
    this.bytes += bytesOf(frame);
  }

  held(): { readonly pictures: number; readonly bytes: number } {
    return { pictures: this.frames.size, bytes: this.bytes };
  }

  clear(): void {
    for (const k of [...this.frames.keys()]) this.drop(k);
  }

  private drop(k: number): void {
    const frame = this.frames.get(k);
    if (!frame) return;
    this.frames.delete(k);
    this.bytes -= bytesOf(frame);
    frame.close();
  }
}
