// What of the reader of clips needs no browser: times of frames, what is a still picture, how large a clip is written.
import { describe, expect, it } from 'vitest';
import { fitWithin, isTooLarge } from '../../src/clip/clip-sizes.ts';
import { FrameStore } from '../../src/clip/frame-store.ts';
import { frameAt, isUneven, middleOf } from '../../src/clip/read-stamps.ts';
import { findStillKind } from '../../src/clip/still-kind.ts';
import { MOST_WRITTEN, planWriting } from '../../src/clip/write-clip.ts';

const rounded = (count: number, hz: number, grain: number): Float64Array =>
  Float64Array.from({ length: count }, (_, k) => Math.round(k / hz / grain) * grain);

describe('times of frames', () => {
  it('an even rate stays one when the file rounds it, and a frame that is left out does not', () => {
    for (const hz of [29.97, 60, 120, 240])
      for (const grain of [1e-3, 1 / 600, 1 / 90_000]) {
        const stamps = rounded(200, hz, grain);
        expect(isUneven(stamps, grain), `${hz} ${grain}`).toBe(false);
        expect(
          isUneven(
            stamps.filter((_, k) => k !== 90),
            grain,
          ),
          `${hz} ${grain}`,
        ).toBe(true);
      }
    expect([isUneven(Float64Array.of(0), 1e-3), isUneven(Float64Array.of(0, 0.04), 1e-3)]).toEqual([false, false]);
  });

  it('a frame is shown from its stamp to the next, and is asked for in its middle', () => {
    const span = { stamps: Float64Array.of(0, 0.033, 0.067, 0.2), lastLasts: 0.04, isVariable: true };
    for (let k = 0; k < 4; k++) {
      expect(frameAt(span.stamps, middleOf(span, k))).toBe(k);
      expect(frameAt(span.stamps, span.stamps[k])).toBe(k);
    }
    expect([frameAt(span.stamps, -0.001), frameAt(span.stamps, 9)]).toEqual([-1, 3]);
    expect(middleOf({ ...span, stamps: Float64Array.of(1), lastLasts: 0 }, 0)).toBeGreaterThan(1);
  });
});

describe('sizes', () => {
  it('of a picture that is kept are of its shape, and no longer than is asked', () => {
    expect(fitWithin({ width: 3840, height: 2160 }, 1920)).toEqual({ width: 1920, height: 1080 });
    expect(fitWithin({ width: 720, height: 1280 }, 1920)).toEqual({ width: 720, height: 1280 });
    expect(fitWithin({ width: 9000, height: 1 }, 100)).toEqual({ width: 100, height: 1 });
    expect([isTooLarge({ width: 7680, height: 4320 }), isTooLarge({ width: 60_000, height: 60_000 })]).toEqual([
      false,
      true,
    ]);
  });

  it('frames that were asked for longest ago are let go, and three of any size are kept', () => {
    const closed: number[] = [];
    const frame = (k: number): ImageBitmap => ({ width: 4000, height: 4000, close: () => closed.push(k) });
    const store = new FrameStore({ width: 4000, height: 4000 });
    for (const k of [0, 1, 2]) store.put(k, frame(k));
    store.get(0);
    store.put(3, frame(3));
    expect(closed).toEqual([1]);
    expect(store.held()).toEqual({ pictures: 3, bytes: 3 * 64e6 });
    store.clear();
    expect([closed.length, store.held().bytes]).toEqual([4, 0]);
    expect(new FrameStore({ width: 640, height: 480 }).most).toBe(Math.floor((96 * 2 ** 20) / (4 * 640 * 480)));
  });
});

it('a still picture is known by its first bytes', () => {
  const head = (...parts: (string | number)[]): Uint8Array =>
    Uint8Array.from(
      parts.flatMap((part) => (typeof part === 'number' ? [part] : [...part].map((c) => c.charCodeAt(0)))),
    );
  expect(findStillKind(head(0x89, 'PNG\r\n', 0x1a, '\n'))).toBe('png');
  expect(findStillKind(head(0xff, 0xd8, 0xff, 0xe0))).toBe('jpeg');
  expect(findStillKind(head('RIFF....WEBPVP8 '))).toBe('webp');
  expect(findStillKind(head('RIFF....WAVEfmt '))).toBeUndefined();
  expect(findStillKind(head(0, 0, 0, 24, 'ftypheic'))).toBe('heic');
  expect(findStillKind(head(0, 0, 0, 24, 'ftypisom'))).toBeUndefined();
  expect(findStillKind(head())).toBeUndefined();
});

it('what is written aims at less than the most, in even sizes, the smaller the less room there is', () => {
  const shown = { width: 1080, height: 1920 };
  let before = Number.POSITIVE_INFINITY;
  for (const frames of [10, 200, 1000, 4000]) {
    const { size } = planWriting(shown, 720, frames, frames / 30, 1);
    expect([size.width % 2, size.height % 2]).toEqual([0, 0]);
    expect(Math.max(size.width, size.height)).toBeLessThanOrEqual(720);
    expect(size.width * size.height).toBeLessThanOrEqual(before);
    before = size.width * size.height;
    const aimed = planWriting(shown, 720, frames, frames / 30, 1).bytes;
    expect(aimed).toBeLessThan(MOST_WRITTEN);
    expect(planWriting(shown, 720, frames, frames / 30, 0.5).bytes).toBeLessThanOrEqual(aimed);
  }
  // slow motion: the same frames, stretched over more time, have the same bytes
  expect(planWriting(shown, 720, 300, 10, 1).bytes).toBeCloseTo(planWriting(shown, 720, 300, 40, 1).bytes, -2);
});
