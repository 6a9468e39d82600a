/** When frames are shown, from the file's own list and without decoding: read in pieces, so that the page goes on. */
import type { EncodedPacket, EncodedPacketSink } from 'mediabunny';
import { clipFault } from './clip-fault.ts';
import type { ClipSpan } from './clip-source.ts';
import { nextTurn } from './turns.ts';

/** On the ruler at once: a minute at 60 a second, and some. */
const MOST_FRAMES = 4000;
/** Between two turns of the page's loop. */
const PIECE = 128;
/** Files name frames in the order of decoding: so many after the end in a row, and none before it follows. */
const AFTER_END = 32;
/** s; nearer stamps are one frame. */
const SAME = 1e-6;
/** Share of a frame by which times may be off an even rate. */
const UNEVEN = 0.05;

const LIST = { metadataOnly: true } as const;

export interface StampedSpan extends ClipSpan {
  /** 1: decoding can begin here */
  readonly keys: Uint8Array;
  /** s of the key frame that decoding begins at where none of the span is before a frame */
  readonly keyBefore: number;
  readonly isCut: boolean;
}

export interface StampSource {
  readonly sink: EncodedPacketSink;
  /** s of the file's own times: its first frame that is shown */
  readonly first: number;
  /** s: times of the file are multiples of it */
  readonly grain: number;
}

export async function readStamps(
  { sink, first, grain }: StampSource,
  from: number,
  to: number,
  seen: (frames: number) => void,
  signal: AbortSignal,
): Promise<StampedSpan> {
  const start = (await sink.getKeyPacket(first + from, LIST)) ?? (await sink.getFirstPacket(LIST));
  if (!start) throw clipFault('damaged');
  const found: EncodedPacket[] = [];
  let [read, after, isCut] = [0, 0, false];
  for await (const packet of sink.packets(start, undefined, LIST)) {
    if (++read % PIECE === 0) {
      seen(found.length);
      await nextTurn();
    }
    signal.throwIfAborted();
    const t = packet.timestamp - first;
    after = t > to ? after + 1 : 0;
    if (after > AFTER_END) break;
    if (t < from - SAME || t > to + SAME || t < -SAME) continue;
    found.push(packet);
    isCut = found.length > MOST_FRAMES + AFTER_END;
    if (isCut) break;
  }
  if (found.length === 0) found.push((await sink.getPacket(first + Math.max(0, from), LIST)) ?? start);
  signal.throwIfAborted();
  const inOrder = found.sort((a, b) => a.timestamp - b.timestamp);
  const frames = inOrder.filter(({ timestamp }, i) => i === 0 || timestamp - inOrder[i - 1].timestamp > SAME);
  const shown = frames.slice(0, MOST_FRAMES);
  seen(shown.length);
  const stamps = Float64Array.from(shown, ({ timestamp }) => timestamp - first);
  return {
    stamps,
    keyBefore: start.timestamp - first,
    keys: Uint8Array.from(shown, ({ type }) => (type === 'key' ? 1 : 0)),
    lastLasts: lastLasts(stamps, shown[shown.length - 1].duration),
    isVariable: isUneven(stamps, grain),
    isCut: isCut || frames.length > MOST_FRAMES,
  };
}

function lastLasts(stamps: Float64Array, said: number): number {
  if (said > 0) return said;
  const gaps = stamps.subarray(1).map((t, i) => t - stamps[i]);
  return gaps.length === 0 ? 0 : gaps.sort()[gaps.length >> 1];
}

/** Off the line from first to last by more than rounding to the file's grain: it may be off at the ends too. */
export function isUneven(stamps: Float64Array, grain: number): boolean {
  const gap = (stamps[stamps.length - 1] - stamps[0]) / (stamps.length - 1);
  const most = Math.max(1.05 * grain, UNEVEN * gap);
  return stamps.some((t, i) => Math.abs(t - stamps[0] - i * gap) > most);
}

/** s in the middle of frame k: whole milliseconds of some files lie beside the true times. */
export function middleOf({ stamps, lastLasts: last }: ClipSpan, k: number): number {
  const next = k + 1 < stamps.length ? stamps[k + 1] : stamps[k] + (last || 2e-4);
  return (stamps[k] + next) / 2;
}

/** The frame that is shown at t, or -1. */
export function frameAt(stamps: Float64Array, t: number): number {
  let [low, high] = [0, stamps.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if (stamps[mid] <= t) low = mid + 1;
    else high = mid;
  }
  return low - 1;
}
