/** A decoder that runs on from frame to frame, so that a step forward costs one frame; past what is damaged it goes on from the next key frame. */
import type { VideoSample, VideoSampleSink } from 'mediabunny';
import { faultOf } from './clip-fault.ts';
import { frameAt, middleOf, type StampedSpan } from './read-stamps.ts';

interface RunFrame {
  readonly k: number;
  /** the one who reads it closes it */
  readonly sample: VideoSample;
}

export interface RunSource {
  readonly sink: VideoSampleSink;
  readonly first: number; // s of the file's own times
  readonly span: StampedSpan;
}

/**
 * s of the file's own times. Of its frame: mediabunny deals out the times that went into the decoder in their order, so that after a frame that does not
 * come out every other would have the time of the one before it.
 */
function stampOf(sample: VideoSample): number {
  const frame = sample.toCanvasImageSource();
  return 'timestamp' in frame ? frame.timestamp / 1e6 : sample.timestamp;
}

export const isKey = ({ keys }: StampedSpan, k: number): boolean => keys[k] === 1;

export class FrameRun {
  /** no frame before it comes any more */
  at: number;
  private samples: AsyncGenerator<VideoSample, void, unknown> | undefined;
  private isClosed = false;
  private readonly source: RunSource;

  constructor(source: RunSource, at: number) {
    this.source = source;
    this.at = at;
  }

  /** undefined: no more. What cannot be decoded is left out. */
  async read(): Promise<RunFrame | undefined> {
    const { span } = this.source;
    while (this.at < span.stamps.length && !this.isClosed) {
      try {
        const sample = await this.pull();
        if (!sample) break;
        const k = this.indexOf(sample);
        if (k < this.at || this.isClosed) {
          sample.close();
          continue;
        }
        if (k >= span.stamps.length) {
          sample.close();
          break;
        }
        this.at = k + 1;
        return { k, sample };
      } catch (error) {
        this.stop();
        if (this.isClosed) break;
        if (faultOf(error).code === 'cannotRead') throw faultOf(error);
        const found = await this.single(this.at);
        if (found) return found;
        this.at = this.nextKey(this.at);
      }
    }
    this.at = Math.max(this.at, this.isClosed ? 0 : span.stamps.length);
    return undefined;
  }

  close(): void {
    this.isClosed = true;
    this.stop();
  }

  private async pull(): Promise<VideoSample | undefined> {
    this.samples ??= this.source.sink.samples(this.source.first + this.keyTime(this.at));
    const { value, done } = await this.samples.next();
    return done ? undefined : value;
  }

  /** Where a decoder that runs ahead failed, one that goes no further may do. */
  private async single(k: number): Promise<RunFrame | undefined> {
    const { sink, first, span } = this.source;
    try {
      const sample = await sink.getSample(first + middleOf(span, k));
      if (!sample) return undefined;
      const found = this.indexOf(sample);
      if (found >= k && found < span.stamps.length && !this.isClosed) {
        this.at = found + 1;
        return { k: found, sample };
      }
      sample.close();
    } catch (error) {
      if (faultOf(error).code === 'cannotRead') throw faultOf(error);
    }
    return undefined;
  }

  /** Between two stamps: rounding of a decoder's times is far less than half a frame. Past the span: its length. */
  private indexOf(sample: VideoSample): number {
    const { first, span } = this.source;
    const { stamps } = span;
    const t = stampOf(sample) - first;
    const k = frameAt(stamps, t);
    if (k < 0) return t > stamps[0] - 1e-5 ? 0 : -1;
    const next = k + 1 < stamps.length ? stamps[k + 1] : 2 * middleOf(span, k) - stamps[k];
    return next - t < 1e-5 ? k + 1 : k;
  }

  /** From the key frame on, all of them: which one comes first after a start in between is not sure either. */
  private keyTime(k: number): number {
    const { span } = this.source;
    for (let i = k; i >= 0; i--) if (isKey(span, i)) return middleOf(span, i);
    return Math.min(span.keyBefore, span.stamps[0]);
  }

  private nextKey(k: number): number {
    let next = k + 1;
    while (next < this.source.span.stamps.length && !isKey(this.source.span, next)) next++;
    return next;
  }

  private stop(): void {
    void this.samples?.return().catch(() => undefined);
    this.samples = undefined;
  }
}
