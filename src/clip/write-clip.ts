/** Frames of a clip written again, at their own times: pictures alone, so that nothing else of the file (sound, place, date, name) goes along. */
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
import { blurInto } from './blur.ts';
import { clipFault } from './clip-fault.ts';
import { fitWithin, type PxSize } from './clip-sizes.ts';
import type { ClipSending } from './clip-source.ts';
import type { InnerClip } from './inner-clip.ts';
import { nextTurn } from './turns.ts';

/** What is handed on by hand, or in a class: bytes. */
export const MOST_WRITTEN = 6 * 2 ** 20;
/** Of that it is aimed at, as encoders hit their aim about. */
const AIM = 0.8;
/** Bits of a frame for each of its px: as sharp as is of use; and so few that a smaller picture is better. */
const BITS_PER_PX = { most: 0.2, least: 0.035 } as const;
/** Each with so much of what the one before had. */
const TRIES = [1, 0.55, 0.3, 0.15] as const;
/** px of the longer side of the smallest. */
const SMALLEST = 320;
/** Smaller H.264 may get the level "1b", which Chromium writes and does not read. */
const LEAST_AVC_PX = 176 * 144 + 1;
const KEY_EVERY_S = 0.5;

interface Way {
  readonly codec: VideoCodec;
  readonly type: 'video/mp4' | 'video/webm';
}
const WAYS: readonly Way[] = [
  { codec: 'avc', type: 'video/mp4' },
  { codec: 'vp9', type: 'video/webm' },
  { codec: 'vp8', type: 'video/webm' },
];

const even = (n: number): number => Math.max(2, 2 * Math.round(n / 2));

interface Plan {
  readonly size: PxSize;
  /** that it aims at */
  readonly bytes: number;
  readonly quality: Quality;
}

/** How large and how good, for `share` of what there is room for. `lasts`: s of the file, by which encoders count. */
export function planWriting(shown: PxSize, most: number, frames: number, lasts: number, share: number): Plan {
  const room = (MOST_WRITTEN * AIM * 8 * share) / frames;
  const wanted = fitWithin(shown, most);
  const smaller = Math.sqrt(Math.min(1, room / BITS_PER_PX.least / (wanted.width * wanted.height)));
  const longer = Math.max(SMALLEST, Math.max(wanted.width, wanted.height) * smaller);
  const fitted = fitWithin(wanted, longer);
  const size = { width: even(fitted.width), height: even(fitted.height) };
  const bytes = (Math.min(room, BITS_PER_PX.most * size.width * size.height) * frames) / 8;
  return { size, bytes, quality: new Quality({ bitrate: Math.max(1000, Math.round((8 * bytes) / lasts)) }) };
}

async function findWay({ size, quality }: Plan): Promise<Way> {
  const ways = WAYS.filter(({ codec }) => codec !== 'avc' || size.width * size.height >= LEAST_AVC_PX);
  for (const way of ways) if (await canEncodeVideo(way.codec, { ...size, quality })) return way;
  throw clipFault('noBrowser', 'encoder');
}

export async function writeClip(
  clip: InnerClip,
  sending: ClipSending,
  made: (frames: number, of: number) => void,
  signal: AbortSignal,
): Promise<Blob> {
  const { stamps, lastLasts } = clip.times();
  const { from, to } = sending;
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to >= from && to < stamps.length))
    throw new RangeError(`Frames ${from} to ${to}; allowed: 0 to ${stamps.length - 1}.`);
  const count = to - from + 1;
  const end = to + 1 < stamps.length ? stamps[to + 1] : stamps[to] + (lastLasts || 1 / 30);
  for (const share of TRIES) {
    const plan = planWriting(clip.shown, sending.most, count, end - stamps[from], share);
    const blob = await writeOnce(clip, sending, plan, end, made, signal);
    if (blob.size <= MOST_WRITTEN) return blob;
  }
  throw new RangeError(`${count} frames are more than 6 MB even at their smallest; fewer frames can be sent.`);
}

async function writeOnce(
  clip: InnerClip,
  { from, to, isBlurred }: ClipSending,
  plan: Plan,
  end: number,
  made: (frames: number, of: number) => void,
  signal: AbortSignal,
): Promise<Blob> {
  const { codec, type } = await findWay(plan);
  const { width, height } = plan.size;
  const { stamps } = clip.times();
  const [pen, sharp] = [new OffscreenCanvas(width, height), new OffscreenCanvas(width, height)].map((canvas) =>
    canvas.getContext('2d', { alpha: false }),
  );
  if (!pen || !sharp) throw clipFault('noBrowser');
  const target = new BufferTarget();
  const output = new Output({ format: type === 'video/mp4' ? new Mp4OutputFormat() : new WebMOutputFormat(), target });
  const source = new CanvasSource(pen.canvas, { codec, quality: plan.quality, keyFrameInterval: KEY_EVERY_S });
  output.addVideoTrack(source);
  try {
    await output.start();
    let written = 0;
    for await (const { k, draw } of clip.each(from, to)) {
      signal.throwIfAborted();
      if (isBlurred) {
        draw(sharp);
        blurInto(pen, sharp.canvas, plan.size);
      } else draw(pen);
      const next = k < to ? stamps[k + 1] : end;
      await source.add(stamps[k] - stamps[from], next - stamps[k]);
      written++;
      made(k - from + 1, to - from + 1);
      await nextTurn();
    }
    if (written === 0) throw clipFault('damaged');
    await output.finalize();
    signal.throwIfAborted();
  } catch (error) {
    if (output.state !== 'finalized') await output.cancel();
    throw error;
  }
  if (!target.buffer) throw clipFault('damaged');
  return new Blob([target.buffer], { type });
}
