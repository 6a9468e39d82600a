// Clips that are damaged, odd or none at all, made of whole ones: each with what may become of it.
import { Buffer } from 'node:buffer';

export interface Whole {
  /** 24 pictures, a key frame every 8 */
  readonly webm: Buffer;
  readonly mp4: Buffer;
  readonly fragmented: Buffer;
  /** in an MP4 */
  readonly vp9: Buffer;
  readonly png: Buffer;
}

/** 'frames': it opens, and each picture is the one that it says it is; a code of ClipFault; or either of several. */
export interface HostileClip {
  readonly name: string;
  readonly file: string;
  readonly bytes: Buffer;
  readonly becomes: readonly string[];
  /** which picture of the whole clip the one is that is said to be shown */
  readonly shows: (said: number) => number;
  /** pictures that no decoder finds fault with, and that show something else */
  readonly isGarbled?: boolean;
}

const flipped = (whole: Buffer, from: number, count: number, by = 0xff): Buffer => {
  const bytes = Buffer.from(whole);
  for (let i = from; i < Math.min(from + count, bytes.length); i++) bytes[i] ^= by;
  return bytes;
};
const share = (whole: Buffer, of: number): Buffer => whole.subarray(0, Math.floor(whole.length * of));

/** Where a box of an MP4 begins: its length, then its name. */
function boxAt(whole: Buffer, name: string): number {
  const at = whole.indexOf(name, 0, 'latin1');
  if (at < 0) throw new Error(`no ${name} in it`);
  return at - 4;
}

function withU32(whole: Buffer, at: number, ...values: number[]): Buffer {
  const bytes = Buffer.from(whole);
  values.forEach((value, i) => {
    bytes.writeUInt32BE(value >>> 0, at + 4 * i);
  });
  return bytes;
}

/** Samples of equal length: what each lasts is written over, in units of the file. */
const withLasts = (mp4: Buffer, lasts: number): Buffer => withU32(mp4, boxAt(mp4, 'stts') + 20, lasts);

function wave(): Buffer {
  const head = Buffer.alloc(44 + 16000);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + 16000, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(8000, 24);
  head.writeUInt32LE(16000, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(16000, 40);
  return head;
}

function chance(length: number): Buffer {
  let seed = 99;
  return Buffer.from(
    Array.from({ length }, () => {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      return seed >>> 24;
    }),
  );
}

/** Width and height of pictures written over. */
function withSize(vp9: Buffer, px: number): Buffer {
  const bytes = Buffer.from(vp9);
  const entry = boxAt(bytes, 'vp09');
  bytes.writeUInt16BE(px, entry + 32);
  bytes.writeUInt16BE(px, entry + 34);
  return bytes;
}

/** How a frame of a WebM begins. */
const SIMPLE_BLOCK = 0xa3;
const CLUSTER = Buffer.from([0x1f, 0x43, 0xb6, 0x75]);

/** Where the blocks of the first cluster begin. */
function* blocksOf(webm: Buffer): Generator<number> {
  const cluster = webm.indexOf(CLUSTER);
  for (let at = webm.indexOf(SIMPLE_BLOCK, cluster); at >= 0; at = webm.indexOf(SIMPLE_BLOCK, at + 1))
    if (isBlock(webm, at)) yield at;
}

/** Where the bytes of frame k begin. */
const frameAt = (webm: Buffer, k: number): number => blockTimeAt(webm, [...blocksOf(webm)][k]) + 3;

/** Times of the first blocks (whole ms) written over. */
function withBlockTimes(webm: Buffer, times: readonly number[]): Buffer {
  const bytes = Buffer.from(webm);
  const blocks = blocksOf(webm);
  for (const time of times) bytes.writeInt16BE(time, blockTimeAt(bytes, blocks.next().value ?? 0));
  return bytes;
}
const blockTimeAt = (bytes: Buffer, at: number): number => at + 2 + Math.clz32(bytes[at + 1]) - 24 + 1;
/** Of the first part of what moves, and with the usual marks. */
const isBlock = (bytes: Buffer, at: number): boolean => {
  const time = blockTimeAt(bytes, at);
  return bytes[time - 1] === 0x81 && (bytes[time + 2] === 0x80 || bytes[time + 2] === 0x00);
};

export function listHostile({ webm, mp4, fragmented, vp9, png }: Whole): HostileClip[] {
  const mdat = boxAt(mp4, 'mdat');
  const cluster = webm.indexOf(CLUSTER);
  const any = ['frames', 'damaged', 'notAClip', 'cannotDecode'];
  const clip = (name: string, file: string, bytes: Buffer, ...becomes: string[]): HostileClip => ({
    name,
    file,
    bytes,
    becomes,
    shows: (said) => said,
  });
  return [
    clip('no bytes', 'a.mp4', Buffer.alloc(0), 'empty'),
    clip('one byte', 'a.mp4', Buffer.from([0]), 'notAClip'),
    clip('zeros', 'a.mp4', Buffer.alloc(20_000), 'notAClip'),
    clip('chance', 'a.webm', chance(20_000), 'notAClip'),
    clip('text', 'a.mp4', Buffer.from('No clip, but words. '.repeat(400)), 'notAClip'),
    clip('a page', 'a.mp4', Buffer.from(`<!doctype html><title>a</title>${'<p>x</p>'.repeat(900)}`), 'notAClip'),
    clip('a list of other files', 'a.m3u8', Buffer.from('#EXTM3U\n#EXTINF:4,\nhttps://x.invalid/a.ts\n'), 'notAClip'),
    clip('sound alone', 'a.wav', wave(), 'noPictures'),
    clip('sound, called a clip', 'a.mp4', wave(), 'noPictures'),
    clip('a still picture, called a clip', 'a.mp4', png, 'frames'),
    clip('a still picture, its end lost', 'a.png', share(png, 0.4), 'damaged', 'frames'),
    clip('WebM, called MP4', 'a.mp4', webm, 'frames'),
    clip('no name', '', mp4, 'frames'),
    clip('a fragmented MP4', 'a.mp4', fragmented, 'frames'),
    clip('a fragmented MP4, its end lost', 'a.mp4', share(fragmented, 0.6), 'frames', 'damaged'),
    clip('WebM, its end lost', 'a.webm', share(webm, 0.9), 'frames'),
    clip('WebM, but for its first 300 bytes lost', 'a.webm', webm.subarray(0, 300), ...any),
    clip('MP4, its end lost', 'a.mp4', share(mp4, 0.6), ...any),
    clip('MP4, but for its first 40 bytes lost', 'a.mp4', mp4.subarray(0, 40), 'damaged', 'notAClip'),
    clip('WebM, its beginning lost', 'a.webm', webm.subarray(cluster), 'notAClip'),
    clip('MP4, its beginning lost', 'a.mp4', mp4.subarray(48), ...any),
    clip('WebM, its head changed', 'a.webm', flipped(webm, 40, 60), ...any, 'noPictures'),
    clip('MP4, its list changed', 'a.mp4', flipped(mp4, boxAt(mp4, 'stsz') + 12, 40), ...any),
    clip('MP4, where its samples are changed', 'a.mp4', flipped(mp4, boxAt(mp4, 'stco') + 12, 4), ...any),
    { ...clip('MP4, a frame changed', 'a.mp4', flipped(mp4, mdat + 1200, 60), 'frames'), isGarbled: true },
    clip(
      'MP4, its first frame zeros',
      'a.mp4',
      Buffer.concat([mp4.subarray(0, mdat + 8), Buffer.alloc(400), mp4.subarray(mdat + 408)]),
      'frames',
      'damaged',
    ),
    { ...clip('WebM, a frame changed', 'a.webm', flipped(webm, frameAt(webm, 12) + 6, 4), 'frames'), isGarbled: true },
    clip('WebM, a key frame changed', 'a.webm', flipped(webm, frameAt(webm, 8), 60), 'frames'),
    clip(
      'WebM, where frames begin changed',
      'a.webm',
      flipped(webm, Math.floor(webm.length / 2), 900),
      'frames',
      'damaged',
    ),
    clip('a picture of absurd size', 'a.mp4', withSize(vp9, 60_000), 'tooLarge'),
    clip('a picture of no size', 'a.mp4', withSize(vp9, 0), 'damaged', 'cannotDecode', 'frames'),
    clip(
      'a codec of no name',
      'a.mp4',
      Buffer.from(mp4.toString('latin1').replace('avc1\0\0\0\0\0\0', 'qqq1\0\0\0\0\0\0'), 'latin1'),
      'cannotDecode',
    ),
    { ...clip('all frames at once', 'a.mp4', withLasts(mp4, 0), 'frames'), shows: () => 23 },
    clip('days, few frames', 'a.mp4', withLasts(mp4, 0x7fff_ffff >>> 5), 'frames'),
    {
      ...clip('times that go back', 'a.webm', withBlockTimes(webm, [0, 320, 200, 100]), 'frames'),
      shows: (said) => [0, 3, 2, 1][said] ?? said,
    },
    {
      ...clip('times before zero', 'a.webm', withBlockTimes(webm, [-190, -150]), 'frames'),
      shows: (said) => said + 1,
    },
  ];
}
