/** The time that the floor is about: of the flight, or of the whole skill while a tool that shows all of it has taken the floor. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';
import type { TimeAxis } from '../ui/plot/axis.ts';
import type { Playback } from './playback.ts';

interface FloorTime {
  readonly axis: Accessor<TimeAxis>;
  /** what its slider is called */
  readonly label: string;
  readonly at: Accessor<number>;
  set(s: number): void;
  /** a step by key or button, where it is not s alone; left out: by s */
  moveBy?(s: number): void;
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
