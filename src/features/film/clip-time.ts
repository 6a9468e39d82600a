/** Time of a clip on the ruler: whole frames, zero at take-off. What plays or is dragged is anywhere between; what is shown is the nearest frame. */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { ClipFrames, ClipTimes } from '../../../sim/index.ts';
import { makePlayback, type Playback } from '../../app/playback.ts';

export interface ClipTime {
  readonly frame: Accessor<number>;
  setFrame(k: number): void;
  timeOf(frame: number): number;
  /** index of the frame nearest to s from take-off */
  frameAt(s: number): number;
  /** s of the frame that is shown */
  readonly at: Accessor<number>;
  setAt(s: number): void;
  /** by s, but at least a frame */
  moveBy(s: number): void;
  readonly play: Playback;
  /** the flight alone is on the ruler, not all of the clip */
  readonly isClose: Accessor<boolean>;
  setClose(on: boolean): void;
  /** s, first and last on the ruler */
  readonly range: Accessor<readonly [number, number]>;
}

/** s beside the first and the last mark */
const BESIDE = 0.09;

export function makeClipTime(
  frames: Accessor<ClipFrames | undefined>,
  times: Accessor<ClipTimes | undefined>,
  flightLasts: Accessor<number>,
): ClipTime {
  const [frame, setFrameNow] = createSignal(0);
  /** where play is between two frames, s from take-off */
  let between = 0;
  const [isClose, setClose] = createSignal(true);
  const zero = createMemo((): number => {
    const at = times()?.zero ?? Number.NaN;
    return Number.isNaN(at) ? (frames()?.t[0] ?? 0) : at;
  });
  const last = (): number => Math.max(0, (frames()?.t.length ?? 1) - 1);
  const timeOf = (k: number): number => (frames()?.t[Math.min(Math.max(k, 0), last())] ?? 0) - zero();
  const setFrame = (k: number): void => {
    const next = Math.min(Math.max(Math.round(k), 0), last());
    setFrameNow(next);
    between = timeOf(next);
    // what is shown is on the ruler
    const [from, to] = range();
    if (between < from - 1e-9 || between > to + 1e-9) setClose(false);
  };
  const frameAt = (s: number): number => {
    const list = frames()?.t;
    if (!list) return 0;
    let [low, high] = [0, list.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (list[middle] - zero() <= s) low = middle;
      else high = middle;
    }
    return s - (list[low] - zero()) < list[high] - zero() - s ? low : high;
  };
  const setAt = (s: number): void => {
    const [from, to] = range();
    between = Math.min(Math.max(s, timeOf(0), from), timeOf(last()), to);
    setFrameNow(frameAt(between));
  };
  const at = (): number => timeOf(Math.min(frame(), last()));
  const range = createMemo((): readonly [number, number] => {
    const [from, to] = [timeOf(0), timeOf(last())];
    const marked = times()?.marks.map(({ at: { value } }) => value) ?? [];
    const flown = times()?.airTime !== undefined;
    if (!isClose() || !flown) return [from, Math.max(to, from + 0.05)];
    return [
      Math.max(from, Math.min(0, ...marked) - BESIDE),
      Math.max(Math.min(to, Math.max(...marked) + BESIDE), flightLasts()),
    ];
  });
  const play = makePlayback(
    () => between,
    (s) => {
      setAt(s);
    },
    { from: () => range()[0], to: () => Math.min(range()[1], timeOf(last())) },
  );
  return {
    frame: () => Math.min(frame(), last()),
    setFrame,
    timeOf,
    frameAt,
    at,
    setAt,
    moveBy: (s) => {
      const next = frameAt(at() + s);
      setFrame(next === frame() ? frame() + Math.sign(s) : next);
    },
    play,
    isClose,
    setClose: (on) => {
      setClose(on);
      if (on) setAt(at());
    },
    range,
  };
}
