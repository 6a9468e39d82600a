/** A film clip, read by mediabunny and decoded by the browser: opened, its frames listed, and handed out. */
import {
  ADTS,
  BlobSource,
  EncodedPacketSink,
  FLAC,
  Input,
  type InputVideoTrack,
  MATROSKA,
  MP3,
  MP4,
  MPEG_TS,
  OGG,
  QTFF,
  VideoSampleSink,
  WAVE,
  WEBM,
} from 'mediabunny';
import { clipFault, faultOf } from './clip-fault.ts';
import { isTooLarge, type PxSize, saySize } from './clip-sizes.ts';
import type { OpenClip } from './clip-source.ts';
import { FrameRun } from './frame-run.ts';
import type { InnerClip } from './inner-clip.ts';
import { PictureDesk } from './picture-desk.ts';
import { readStamps, type StampedSpan, type StampSource } from './read-stamps.ts';

/** Sound too: that it is sound is said. */
const FORMATS = [MP4, QTFF, WEBM, MATROSKA, MPEG_TS, WAVE, OGG, FLAC, MP3, ADTS];
/** Frames that the mean rate is made of. */
const RATED = 512;

export async function openMoving(file: File, signal: AbortSignal): Promise<InnerClip> {
  const source = new BlobSource(file, { handleUnhandledError: () => undefined });
  const input = new Input({ formats: FORMATS, source });
  const stop = (): void => input.dispose();
  signal.addEventListener('abort', stop, { once: true });
  try {
    const track = await findPictures(input);
    const [facts, stampSource] = await readFacts(file, input, track);
    signal.throwIfAborted();
    return makeClip(facts, input, track, stampSource);
  } catch (error) {
    input.dispose();
    signal.throwIfAborted();
    throw faultOf(error);
  } finally {
    signal.removeEventListener('abort', stop);
  }
}

async function findPictures(input: Input): Promise<InputVideoTrack> {
  if (!(await input.canRead())) throw clipFault('notAClip');
  const track = await input.getPrimaryVideoTrack();
  if (track) return track;
  const others = await input.getTracks();
  throw clipFault(others.length > 0 ? 'noPictures' : 'damaged');
}

async function readFacts(
  file: File,
  input: Input,
  track: InputVideoTrack,
): Promise<readonly [OpenClip['facts'], StampSource]> {
  const shown: PxSize = { width: await track.getDisplayWidth(), height: await track.getDisplayHeight() };
  if (isTooLarge(shown)) throw clipFault('tooLarge', saySize(shown));
  const codec = (await track.getCodec()) ?? String(await track.getInternalCodecId());
  if (!(await track.canDecode())) throw clipFault('cannotDecode', codec);
  if (!(shown.width > 0 && shown.height > 0)) throw clipFault('damaged');
  const sink = new EncodedPacketSink(track);
  const end = await findEnd(input, track);
  const first = await firstShown(track, sink, end);
  const hz = await meanRate(sink);
  return [
    {
      name: file.name,
      bytes: file.size,
      kind: 'moving',
      codec,
      ...shown,
      turnedDeg: await track.getRotation(),
      lasts: Math.max(0, end - first),
      fileHz: hz,
    },
    { sink, first, grain: 1 / (await track.getTimeResolution()) },
  ];
}

/** Where frames are listed at one place their list is asked; else what the head says, as all of the file would have to be read. */
async function findEnd(input: Input, track: InputVideoTrack): Promise<number> {
  const format = await input.getFormat();
  const isListed = format === MP4 || format === QTFF;
  const said = isListed ? null : await input.getDurationFromMetadata([track]);
  return said ?? (await track.computeDuration());
}

/** What ends before 0 was taken out by the one who made the file. */
async function firstShown(track: InputVideoTrack, sink: EncodedPacketSink, end: number): Promise<number> {
  const begin = await track.getFirstTimestamp();
  if (begin >= 0 || end <= 0) return begin;
  return (await sink.getPacket(0, { metadataOnly: true }))?.timestamp ?? begin;
}

async function meanRate(sink: EncodedPacketSink): Promise<number> {
  let [count, low, high] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for await (const { timestamp } of sink.packets(undefined, undefined, { metadataOnly: true })) {
    low = Math.min(low, timestamp);
    high = Math.max(high, timestamp);
    if (++count === RATED) break;
  }
  if (count === 0) throw clipFault('damaged');
  return count > 1 && high > low ? (count - 1) / (high - low) : 0;
}

function makeClip(facts: OpenClip['facts'], input: Input, track: InputVideoTrack, stampSource: StampSource): InnerClip {
  const shown: PxSize = { width: facts.width, height: facts.height };
  const sink = new VideoSampleSink(track);
  const { first } = stampSource;
  let spanned: { readonly span: StampedSpan; readonly desk: PictureDesk } | undefined;
  let isOpen = true;
  const now = (): NonNullable<typeof spanned> => {
    if (!isOpen) throw new DOMException('The clip is closed.', 'AbortError');
    if (!spanned) throw new Error('Frames are asked for before any are on the ruler.');
    return spanned;
  };
  return {
    facts,
    shown,
    span: async (from, to, seen, signal) => {
      try {
        const span = await readStamps(stampSource, from, to, seen, signal);
        if (!isOpen) throw new DOMException('The clip is closed.', 'AbortError');
        spanned?.desk.close();
        spanned = { span, desk: new PictureDesk({ sink, first, span }, shown) };
        return span;
      } catch (error) {
        signal.throwIfAborted();
        throw isOpen ? faultOf(error) : new DOMException('The clip is closed.', 'AbortError');
      }
    },
    picture: async (k) => now().desk.picture(k),
    held: () => spanned?.desk.held() ?? { pictures: 0, bytes: 0 },
    close: () => {
      isOpen = false;
      spanned?.desk.close();
      input.dispose();
    },
    times: () => now().span,
    each: async function* (from, to) {
      const run = new FrameRun({ sink: new VideoSampleSink(track), first, span: now().span }, from);
      try {
        while (run.at <= to) {
          const frame = await run.read();
          if (!frame) return;
          const { k, sample } = frame;
          try {
            if (k <= to) yield { k, draw: (pen) => sample.draw(pen, 0, 0, pen.canvas.width, pen.canvas.height) };
          } finally {
            sample.close();
          }
        }
      } finally {
        run.close();
      }
    },
  };
}
