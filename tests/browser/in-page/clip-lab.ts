// Runs in a blank page: clips opened by the reader of the product, walked through, and what came out of it said as plain data.

import { clipReading } from '../../../src/clip/clip-reading.ts';
import type { ClipFault, ClipPicture, OpenClip } from '../../../src/clip/clip-source.ts';

const SIDE = 4;
/** Blocks that say nothing of the index: a picture on its side or mirrored is not read. */
const FIXED = [1, 0, 0, 1] as const;

const bytesOf = (base64: string): Uint8Array<ArrayBuffer> => Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));

/** Pictures that are open, by the reader, mediabunny or the browser. */
const open = { frames: new Set<VideoFrame>(), bitmaps: new Set<ImageBitmap>(), most: 0, decoded: 0 };

function countPictures(): void {
  const Decoder = globalThis.VideoDecoder;
  globalThis.VideoDecoder = class extends Decoder {
    constructor(init: VideoDecoderInit) {
      super({
        ...init,
        output: (frame) => {
          open.frames.add(frame);
          open.decoded++;
          open.most = Math.max(open.most, open.frames.size);
          init.output(frame);
        },
      });
    }
  };
  const Frame = globalThis.VideoFrame;
  // what the decoder made stays an instance of it
  globalThis.VideoFrame = new Proxy(Frame, {
    construct: (target, given) => {
      const made: VideoFrame = Reflect.construct(target, given);
      open.frames.add(made);
      return made;
    },
  });
  const { clone, close } = Frame.prototype;
  Frame.prototype.clone = function () {
    const made = clone.call(this);
    open.frames.add(made);
    return made;
  };
  Frame.prototype.close = function () {
    open.frames.delete(this);
    close.call(this);
  };
  const { transferToImageBitmap } = OffscreenCanvas.prototype;
  OffscreenCanvas.prototype.transferToImageBitmap = function () {
    const made = transferToImageBitmap.call(this);
    open.bitmaps.add(made);
    return made;
  };
  const closeBitmap = ImageBitmap.prototype.close;
  ImageBitmap.prototype.close = function () {
    open.bitmaps.delete(this);
    closeBitmap.call(this);
  };
}
countPictures();

const seen = new OffscreenCanvas(16 * SIDE, 16 * SIDE).getContext('2d', { willReadFrequently: true });

/** The index that is drawn in a picture as black and white blocks, or -1. */
function readIndex(draw: (pen: OffscreenCanvasRenderingContext2D) => void): number {
  if (!seen) return -1;
  seen.fillStyle = '#808080';
  seen.fillRect(0, 0, 16 * SIDE, 16 * SIDE);
  draw(seen);
  const bits = Array.from({ length: SIDE * SIDE }, (_, i) => {
    const { data } = seen.getImageData(16 * (i % SIDE) + 5, 16 * Math.floor(i / SIDE) + 5, 6, 6);
    let sum = 0;
    for (let p = 0; p < data.length; p += 4) sum += data[p];
    const mean = sum / (data.length / 4);
    return mean > 160 ? 1 : mean < 96 ? 0 : -1;
  });
  if (FIXED.some((bit, i) => bits[12 + i] !== bit)) return -1;
  return bits.slice(0, 12).reduce<number>((sum, bit, i) => (bit < 0 || sum < 0 ? -1 : sum + bit * 2 ** i), 0);
}

const indexIn = ({ source }: ClipPicture): number =>
  readIndex((pen) => pen.drawImage(source, 0, 0, 16 * SIDE, 16 * SIDE));

interface Seen {
  readonly asked: number;
  /** index that the reader says, and that is drawn in the picture */
  readonly said: number;
  readonly drawn: number;
}

async function look(clip: OpenClip, asked: number): Promise<Seen> {
  const picture = await clip.picture(asked);
  return { asked, said: picture.index, drawn: indexIn(picture) };
}

export interface ReadClip {
  readonly facts?: OpenClip['facts'];
  readonly stamps?: readonly number[];
  readonly lastLasts?: number;
  readonly isVariable?: boolean;
  readonly isCut?: boolean;
  readonly seen: readonly Seen[];
  readonly size?: readonly [number, number];
  readonly fault?: string;
  readonly what?: string;
  /** of pictures, when it is closed */
  readonly left: number;
  readonly held: number;
}

const isFault = (error: unknown): error is ClipFault => error instanceof Error && error.name === 'ClipFault';
const turn = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** What is closed beside the page takes a moment. */
async function openLeft(): Promise<number> {
  for (let i = 0; i < 40 && open.frames.size + open.bitmaps.size > 0; i++) await turn(25);
  return open.frames.size + open.bitmaps.size;
}

/** `order`: the frames that are asked for, one after the other; left out: all, on and back. */
async function read(base64: string, name: string, order?: readonly number[]): Promise<ReadClip> {
  const file = new File([bytesOf(base64)], name);
  const signal = new AbortController().signal;
  const seenAll: Seen[] = [];
  let clip: OpenClip | undefined;
  try {
    clip = await clipReading.open(file, signal);
    const span = await clip.span(0, Math.max(clip.facts.lasts, 1e-3), () => undefined, signal);
    const n = span.stamps.length;
    const all = Array.from({ length: n }, (_, k) => k);
    for (const k of order ?? [...all, ...all.toReversed()]) seenAll.push(await look(clip, k));
    const { width, height } = await clip.picture(0);
    clip.close();
    return {
      facts: clip.facts,
      stamps: [...span.stamps],
      lastLasts: span.lastLasts,
      isVariable: span.isVariable,
      isCut: span.isCut,
      seen: seenAll,
      size: [width, height],
      left: await openLeft(),
      held: clip.held().bytes,
    };
  } catch (error) {
    clip?.close();
    if (!isFault(error)) throw error;
    return {
      fault: error.code,
      ...(error.what === undefined ? {} : { what: error.what }),
      seen: seenAll,
      left: await openLeft(),
      held: clip?.held().bytes ?? 0,
    };
  }
}

export interface Walked {
  readonly steps: number;
  readonly wrong: number;
  readonly givenUp: number;
  readonly mostBytes: number;
  /** open at once, and all of them */
  readonly mostFrames: number;
  readonly decoded: number;
  readonly left: number;
}

/** Steps on, back and anywhere; every tenth a hand that drags, several asked for at once. */
async function walk(base64: string, steps: number): Promise<Walked> {
  const signal = new AbortController().signal;
  const clip = await clipReading.open(new File([bytesOf(base64)], 'walk'), signal);
  const { stamps } = await clip.span(0, clip.facts.lasts, () => undefined, signal);
  const n = stamps.length;
  let seed = 7;
  const chance = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const out = { steps, wrong: 0, givenUp: 0, mostBytes: 0 };
  [open.most, open.decoded] = [0, 0];
  let k = 0;
  const check = async (at: number): Promise<void> => {
    try {
      const picture = await clip.picture(at);
      if (picture.index !== at || indexIn(picture) !== at) out.wrong++;
    } catch (error) {
      if (!(error instanceof DOMException && error.name === 'AbortError')) throw error;
      out.givenUp++;
    }
  };
  for (let i = 0; i < steps; i++) {
    const kind = i % 300;
    k = kind === 0 ? Math.floor(n * chance()) : kind < 180 ? (k + 1) % n : (k + n - 1) % n;
    if (kind % 100 === 99) await Promise.all([0, 5, 9, 2, 30].map((d) => check((k + d) % n)));
    else await check(k);
    const { bytes } = clip.held();
    out.mostBytes = Math.max(out.mostBytes, bytes);
  }
  clip.close();
  return { ...out, mostFrames: open.most, decoded: open.decoded, left: (await openLeft()) + clip.held().bytes };
}

export interface Written {
  readonly type: string;
  readonly base64: string;
  readonly made: readonly number[];
}

async function write(base64: string, from: number, to: number, isBlurred: boolean, most: number): Promise<Written> {
  const signal = new AbortController().signal;
  const clip = await clipReading.open(new File([bytesOf(base64)], 'sent'), signal);
  await clip.span(0, Math.max(clip.facts.lasts, 1e-3), () => undefined, signal);
  const made: number[] = [];
  const blob = await clipReading.write(clip, { from, to, isBlurred, most }, (k) => made.push(k), signal);
  clip.close();
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return { type: blob.type, base64: btoa(text), made };
}

/** Root mean square of what neighbouring px differ by, of 255: of the picture, blurred or not. */
async function sharpness(base64: string, isBlurred: boolean): Promise<number> {
  const signal = new AbortController().signal;
  const clip = await clipReading.open(new File([bytesOf(base64)], 'sharp'), signal);
  await clip.span(0, Math.max(clip.facts.lasts, 1e-3), () => undefined, signal);
  const picture = await clip.picture(0);
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [picture.width, picture.height];
  const pen = canvas.getContext('2d');
  if (isBlurred) clipReading.drawBlurred(canvas, picture);
  else pen?.drawImage(picture.source, 0, 0);
  const data = pen?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
  clip.close();
  let sum = 0;
  const row = 4 * canvas.width;
  for (let i = 4; i < data.length; i += 4) if (i % row !== 0) sum += (data[i] - data[i - 4]) ** 2;
  return Math.sqrt(sum / (data.length / 4));
}

/** Filmed from a canvas that stands in for a camera; and where there is none. */
async function film(): Promise<{ name: string; frames: number; live: string[]; none: string; aborted: string[] }> {
  const devices = navigator.mediaDevices;
  const real = devices.getUserMedia;
  const codeOf = async (made: Promise<unknown>): Promise<string> =>
    made.then(
      () => 'none',
      (error: unknown) => (isFault(error) ? `${error.code} ${error.what}` : String(error)),
    );
  devices.getUserMedia = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
  const none = await codeOf(clipReading.film(new AbortController().signal));
  const canvas = Object.assign(document.createElement('canvas'), { width: 160, height: 96 });
  const pen = canvas.getContext('2d');
  const streams: MediaStream[] = [];
  devices.getUserMedia = async () => {
    const stream = canvas.captureStream(30);
    streams.push(stream);
    return stream;
  };
  const paint = async (): Promise<void> => {
    for (let i = 0; i < 12; i++) {
      pen?.fillRect(10 * i, 0, 10, 96);
      await turn(35);
    }
  };
  const filming = await clipReading.film(new AbortController().signal);
  await paint();
  const file = await filming.stop();
  const stop = new AbortController();
  await clipReading.film(stop.signal);
  stop.abort();
  devices.getUserMedia = real;
  const clip = await clipReading.open(file, new AbortController().signal);
  const span = await clip.span(0, 10, () => undefined, new AbortController().signal);
  await clip.picture(span.stamps.length - 1);
  clip.close();
  const [live, aborted] = streams.map((stream) => stream.getTracks().map((part) => part.readyState));
  return { name: file.name, frames: span.stamps.length, live, none, aborted };
}

/** Files of this browser itself: still pictures, one of them on its side, and sound. */
async function still(kind: 'image/png' | 'image/jpeg', index: number, orientation?: number): Promise<string> {
  const canvas = new OffscreenCanvas(80, 64);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('no canvas');
  const bits = [...Array.from({ length: 12 }, (_, i) => (index >> i) & 1), ...FIXED];
  // upright it is 64 wide and 80 high: turned by 90 degrees
  if (orientation === 6) pen.setTransform(0, -1, 1, 0, 0, 64);
  const [w, h] = orientation === 6 ? [64, 80] : [80, 64];
  bits.forEach((bit, i) => {
    pen.fillStyle = bit ? '#fff' : '#000';
    pen.fillRect(((i % SIDE) * w) / SIDE, (Math.floor(i / SIDE) * h) / SIDE, w / SIDE, h / SIDE);
  });
  const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: kind, quality: 0.95 })).arrayBuffer());
  const exif = orientation === undefined ? [] : exifOf(orientation);
  return btoa(String.fromCharCode(...bytes.subarray(0, 2), ...exif, ...bytes.subarray(2)));
}

/** One entry: which way up. */
const exifOf = (orientation: number): number[] => [
  ...[0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0],
  ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1],
  ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0],
];

export const lab = { read, walk, write, sharpness, film, still };
declare global {
  interface Window {
    clipLab: { lab: typeof lab };
  }
}
