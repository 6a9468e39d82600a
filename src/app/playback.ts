/** Plays a flight, or a whole skill: real time slowed by a rate, stopping at the landing or starting again. */
import { type Accessor, createSignal } from 'solid-js';

export interface Playback {
  readonly playing: Accessor<boolean>;
  readonly looping: Accessor<boolean>;
  readonly rate: Accessor<number>;
  toggle(): void;
  pause(): void;
  /** from take-off to the landing */
  fromTakeoff(): void;
  toggleLoop(): void;
  setRate(rate: number): void;
}

export function makePlayback(
  cursor: Accessor<number>,
  setCursor: (s: number) => void,
  { from, to: end }: { readonly from: () => number; readonly to: () => number },
): Playback {
  const [playing, setPlaying] = createSignal(false);
  const [looping, setLooping] = createSignal(false);
  const [rate, setRate] = createSignal(0.25);
  let request = 0;
  let last = 0;
  const pause = (): void => {
    cancelAnimationFrame(request);
    setPlaying(false);
  };
  const step = (now: number): void => {
    // a tab that slept must not jump to the end
    const dt = Math.min((now - last) / 1000, 0.1) * rate();
    last = now;
    const next = cursor() + dt;
    if (next < end()) setCursor(next);
    else if (looping()) setCursor(from());
    else {
      setCursor(end());
      pause();
      return;
    }
    request = requestAnimationFrame(step);
  };
  const start = (): void => {
    setPlaying(true);
    last = performance.now();
    request = requestAnimationFrame(step);
  };
  return {
    playing,
    looping,
    rate,
    pause,
    toggle: () => {
      if (playing()) {
        pause();
        return;
      }
      if (cursor() >= end() - 1e-6) setCursor(from());
      start();
    },
    fromTakeoff: () => {
      pause();
      setCursor(0);
      start();
    },
    toggleLoop: () => setLooping(!looping()),
    setRate,
  };
}
