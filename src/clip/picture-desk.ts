/** Frames of a span by index: one is brought at a time, steps either way come from what was decoded with the last, and a hand that drags is followed. */
import type { VideoSample } from 'mediabunny';
import { clipFault, faultOf } from './clip-fault.ts';
import { fitWithin, MOST_KEPT_PX, type PxSize } from './clip-sizes.ts';
import type { ClipPicture } from './clip-source.ts';
import { FrameRun, isKey, type RunSource } from './frame-run.ts';
import { FrameStore } from './frame-store.ts';
import { nextTurn } from './turns.ts';

/** Frames decoded after the one shown, and before it where one steps back. */
const AHEAD = 3;
const BACK = 16;
/** So near it is run to, though a key frame lies between; one in work that is farther off is given up for one that lies elsewhere. */
const NEAR = 8;
/** Where nothing after a frame can be decoded, so many before it are looked at first. */
const LOOK_BACK = 64;

interface Asked {
  readonly k: number;
  readonly promise: Promise<ClipPicture>;
  readonly come: (picture: ClipPicture) => void;
  readonly fail: (error: unknown) => void;
}

const givenUp = (): DOMException => new DOMException('Another frame was asked for.', 'AbortError');

function ask(k: number): Asked {
  let come!: Asked['come'];
  let fail!: Asked['fail'];
  const promise = new Promise<ClipPicture>((resolve, reject) => {
    come = resolve;
    fail = reject;
  });
  return { k, promise, come, fail };
}

export class PictureDesk {
  private readonly store: FrameStore;
  private readonly size: PxSize;
  private readonly source: RunSource;
  private readonly pen: OffscreenCanvasRenderingContext2D;
  private run: FrameRun | undefined;
  private working: Asked | undefined;
  private waiting: Asked | undefined;
  private isBusy = false;
  private isClosed = false;
  /** frame asked for last */
  private last = 0;
  /** which frame is shown for one that is damaged */
  private readonly instead = new Map<number, number>();

  constructor(source: RunSource, shown: PxSize) {
    this.source = source;
    this.size = fitWithin(shown, MOST_KEPT_PX);
    this.store = new FrameStore(this.size);
    const pen = new OffscreenCanvas(this.size.width, this.size.height).getContext('2d', { alpha: false });
    if (!pen) throw clipFault('noBrowser');
    this.pen = pen;
  }

  picture(k: number): Promise<ClipPicture> {
    const count = this.source.span.stamps.length;
    if (!(Number.isInteger(k) && k >= 0 && k < count))
      return Promise.reject(new RangeError(`Frame ${k}; allowed: 0 to ${count - 1}.`));
    if (this.isClosed) return Promise.reject(givenUp());
    if (this.waiting?.k === k) return this.waiting.promise;
    this.waiting?.fail(givenUp());
    this.waiting = undefined;
    if (this.working?.k === k) return this.working.promise;
    const kept = this.kept(k);
    if (kept) {
      const isOn = k >= this.last;
      this.last = k;
      if (isOn) void this.work();
      return Promise.resolve(kept);
    }
    const asked = ask(k);
    this.waiting = asked;
    void this.work();
    return asked.promise;
  }

  held(): { readonly pictures: number; readonly bytes: number } {
    return this.store.held();
  }

  close(): void {
    this.isClosed = true;
    this.working?.fail(givenUp());
    this.waiting?.fail(givenUp());
    this.waiting = undefined;
    this.run?.close();
    this.store.clear();
  }

  private kept(k: number): ClipPicture | undefined {
    const index = this.instead.get(k) ?? k;
    const source = this.store.get(index);
    return source && { source, width: source.width, height: source.height, index };
  }

  private async work(): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    while (this.waiting && !this.isClosed) {
      const asked = this.waiting;
      this.working = asked;
      this.waiting = undefined;
      try {
        const picture = this.kept(asked.k) ?? (await this.bring(asked.k));
        if (picture) asked.come(picture);
        else asked.fail(givenUp());
      } catch (error) {
        asked.fail(this.isClosed ? givenUp() : faultOf(error));
      }
      this.working = undefined;
    }
    // what failed ahead fails again when it is asked for
    await this.goAhead(this.last).catch(() => undefined);
    this.isBusy = false;
    if (this.waiting) void this.work();
  }

  /** undefined: given up */
  private async bring(k: number): Promise<ClipPicture | undefined> {
    const isBack = k < this.last && this.last - k <= BACK;
    this.last = k;
    const back = isBack ? Math.max(0, k - Math.min(BACK, this.store.most >> 1)) : k;
    let run = this.runTo(k, back);
    const from = Math.max(back, Math.min(run.at, k));
    // begun once more, before it
    let isSecond = false;
    let before = -1;
    for (;;) {
      const frame = await run.read();
      if (this.isClosed) {
        frame?.sample.close();
        return undefined;
      }
      if (!frame) {
        if (before < 0 && !isSecond && k > 0) {
          isSecond = true;
          run = this.begin(Math.max(0, k - LOOK_BACK));
          continue;
        }
        if (before < 0) throw clipFault('damaged');
        return this.instandOf(k, before);
      }
      if (frame.k >= from || isSecond) {
        this.keep(frame.k, frame.sample);
        before = frame.k;
        await nextTurn();
        if (this.isClosed) return undefined;
      } else frame.sample.close();
      if (frame.k >= k) return this.instandOf(k, frame.k);
      if (this.isGivenUp(k, run.at)) return undefined;
    }
  }

  private instandOf(k: number, index: number): ClipPicture | undefined {
    if (index !== k) this.instead.set(k, index);
    return this.kept(k);
  }

  /** One that lies on the way there, or behind the run while there is far to go, is wanted more. */
  private isGivenUp(k: number, at: number): boolean {
    const wanted = this.waiting?.k;
    if (wanted === undefined || wanted > k) return false;
    return wanted >= at || k - at > NEAR;
  }

  private runTo(k: number, from: number): FrameRun {
    const { run, source } = this;
    if (!run || run.at > k) return this.begin(from);
    if (k - run.at <= NEAR) return run;
    for (let i = run.at + 1; i <= k; i++) if (isKey(source.span, i)) return this.begin(from);
    return run;
  }

  private begin(k: number): FrameRun {
    this.run?.close();
    this.run = new FrameRun(this.source, k);
    return this.run;
  }

  private keep(k: number, sample: VideoSample): void {
    const { width, height } = this.size;
    try {
      // it may just have been handed out
      if (this.store.get(k)) return;
      sample.draw(this.pen, 0, 0, width, height);
      this.store.put(k, this.pen.canvas.transferToImageBitmap());
    } finally {
      sample.close();
    }
  }

  private async goAhead(k: number): Promise<void> {
    const end = Math.min(k + Math.min(AHEAD, this.store.most - 2), this.source.span.stamps.length - 1);
    while (!this.waiting && !this.isClosed && this.run && this.run.at > k && this.run.at <= end) {
      const frame = await this.run.read();
      if (!frame) return;
      if (this.isClosed) frame.sample.close();
      else this.keep(frame.k, frame.sample);
      await nextTurn();
    }
  }
}
