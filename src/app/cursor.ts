/** The one cursor through everything: where it is, how it moves and plays, and the pin that it is compared with. */
import { type Accessor, createSignal } from 'solid-js';
import type { FlightState } from './flight.ts';
import { findOpening } from './opening-instant.ts';
import { makePlayback, type Playback } from './playback.ts';

export interface CursorState {
  /** s since take-off */
  readonly at: Accessor<number>;
  /** within the flight */
  set(s: number): void;
  /** the flight may have become shorter */
  clamp(): void;
  readonly play: Playback;
  moveBy(s: number): void;
  goTo(event: 'takeoff' | 'apex' | 'touchdown'): void;
  goToShape(direction: 1 | -1): void;
  readonly pin: Accessor<number | undefined>;
  setPin(s: number | undefined): void;
}

/** Nearer than this, s, the cursor is at an edge. */
const NEAR = 1e-6;

interface CursorHost {
  readonly flight: Pick<FlightState, 'result' | 'anchors' | 'spans'>;
  readonly keptS?: number;
  /** it was moved */
  moved(): void;
}

export function createCursor({ flight, keptS, moved }: CursorHost): CursorState {
  const end = (): number => flight.result().flight.duration;
  const within = (s: number): number => Math.min(Math.max(s, 0), end());
  const [at, setAt] = createSignal(within(keptS ?? findOpening(flight.result(), flight.spans())));
  const [pin, setPin] = createSignal<number>();
  const set = (s: number): void => {
    setAt(within(s));
    moved();
  };
  const play = makePlayback(at, set, { from: () => 0, to: end });
  return {
    at,
    set,
    clamp: () => {
      if (at() > end()) setAt(end());
    },
    play,
    moveBy: (s) => {
      play.pause();
      set(Math.round((at() + s) * 100) / 100);
    },
    goTo: (event) => {
      play.pause();
      const { apex, touchdown } = flight.anchors();
      set(event === 'takeoff' ? 0 : event === 'apex' ? apex : touchdown);
    },
    goToShape: (direction) => {
      play.pause();
      const starts = flight.spans().map((s) => Math.max(s.from, 0));
      const here = at();
      set(
        direction > 0
          ? (starts.find((s) => s > here + NEAR) ?? flight.anchors().touchdown)
          : ([...starts].reverse().find((s) => s < here - NEAR) ?? 0),
      );
    },
    pin,
    setPin,
  };
}
