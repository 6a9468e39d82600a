/** The time that the floor is about: of the flight, or of the whole skill while a tool that shows all of it has taken the floor. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';
import { type TimeAxis, xOf } from '../ui/plot/axis.ts';
import type { CursorState } from './cursor.ts';
import { useCursor, useShell } from './page.ts';
import type { Playback } from './playback.ts';

export interface FloorTime {
  readonly axis: Accessor<TimeAxis>;
  /** what its slider is called */
  readonly label: string;
  readonly at: Accessor<number>;
  set(s: number): void;
  readonly play: Playback;
  /** keys of this ruler, wherever on the floor they are pressed */
  onKeyDown(e: KeyboardEvent): void;
}

export interface FloorTaking {
  readonly taken: Accessor<FloorTime | undefined>;
  /** until the owner that takes it is cleaned up */
  take(time: FloorTime): void;
}

export function createFloorTaking(): FloorTaking {
  const [taken, setTaken] = createSignal<FloorTime>();
  return {
    taken,
    take: (time) => {
      setTaken(() => time);
      onCleanup(() => setTaken((now) => (now === time ? undefined : now)));
    },
  };
}

export interface FloorHand extends Pick<CursorState, 'at' | 'set' | 'moveBy'> {
  play(): Playback;
  /** `usual`: the ruler of the layout, for the flight */
  axis(usual: TimeAxis): TimeAxis;
  /** px of the cursor */
  x(usual: TimeAxis): number;
  label(usual: string): string;
  onKeyDown(e: KeyboardEvent): void;
}

export function useFloorTime(): FloorHand {
  const cursor = useCursor();
  const { taken } = useShell().floor;
  const at = (): number => (taken() ?? cursor).at();
  const set = (s: number): void => (taken() ?? cursor).set(s);
  const play = (): Playback => (taken() ?? cursor).play;
  const axis = (usual: TimeAxis): TimeAxis => taken()?.axis() ?? usual;
  return {
    at,
    set,
    play,
    axis,
    x: (usual) => xOf(axis(usual), at()),
    label: (usual) => taken()?.label ?? usual,
    moveBy: (s) => {
      play().pause();
      set(Math.round((at() + s) * 100) / 100);
    },
    onKeyDown: (e) => taken()?.onKeyDown(e),
  };
}
