/**
 * Pictures into a file: the browser's own encoder (WebCodecs), put together by mediabunny, which is imported here alone. One picture a turn of
 * the page's loop: between two of them it answers to a hand.
 */
import {
  BufferTarget,
  CanvasSource,
  canEncodeVideo,
  Mp4OutputFormat,
  Output,
  Quality,
  type VideoCodec,
  WebMOutputFormat,
} from 'mediabunny';
import { nextTurn } from '../clip/turns.ts';
import type { PictureSize } from '../scene/scene.ts';
import type { MovingFormat, MovingOrder } from './moving-input.ts';
import { PICTURE_RATE, stampOfPicture } from './picture-times.ts';

const CODECS: Readonly<Record<MovingFormat, readonly VideoCodec[]>> = { mp4: ['avc'], webm: ['vp9', 'vp8'] };
/** Bits of a picture for each of its px: thin lines stay sharp. */
const BITS_PER_PX = 0.12;
/** A player jumps to these, s. */
const KEY_EVERY_S = 0.5;

const qualityOf = ({ width, height }: PictureSize): Quality =>
  new Quality({ bitrate: Math.round(width * height * PICTURE_RATE * BITS_PER_PX) });

async function findCodec(format: MovingFormat, size: PictureSize): Promise<VideoCodec | undefined> {
  for (const codec of CODECS[format])
    if (await canEncodeVideo(codec, { ...size, quality: qualityOf(size) })) return codec;
  return undefined;
}

export async function findFormats(size: PictureSize): Promise<readonly MovingFormat[]> {
  const found: MovingFormat[] = [];
  for (const format of ['mp4', 'webm'] as const) if (await findCodec(format, size)) found.push(format);
  return found;
}

export async function writeMoving(
  canvas: HTMLCanvasElement,
  pictures: number,
  draw: (n: number) => void,
  { format, tags, made, signal }: MovingOrder,
): Promise<Blob> {
  const size = { width: canvas.width, height: canvas.height };
  const codec = await findCodec(format, size);
  if (!codec) throw new RangeError(`This browser does not write ${format} at ${size.width} × ${size.height}.`);
  const target = new BufferTarget();
  const output = new Output({ format: format === 'mp4' ? new Mp4OutputFormat() : new WebMOutputFormat(), target });
  const source = new CanvasSource(canvas, { codec, quality: qualityOf(size), keyFrameInterval: KEY_EVERY_S });
  output.addVideoTrack(source, { frameRate: PICTURE_RATE });
  output.setMetadataTags({ ...tags });
  try {
    await output.start();
    for (let n = 0; n < pictures; n++) {
      await nextTurn();
      signal.throwIfAborted();
      draw(n);
      await source.add(stampOfPicture(n), 1 / PICTURE_RATE);
      made(n + 1, pictures);
    }
    await output.finalize();
    signal.throwIfAborted();
  } catch (error) {
    if (output.state !== 'finalized') await output.cancel();
    throw error;
  }
  if (!target.buffer) throw new Error('The moving picture was written and is not there.');
  return new Blob([target.buffer], { type: format === 'mp4' ? 'video/mp4' : 'video/webm' });
}
