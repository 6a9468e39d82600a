/** The clip that is open, for the part of the page that hands on: it goes along only where that is ticked. */
import { type Accessor, createMemo, createSignal, onCleanup } from 'solid-js';

export interface OfferedClip {
  readonly name: string;
  /** so that no face can be known again */
  readonly isBlurred: boolean;
  /** what is marked, with a little before and after, written again: nothing else of the file */
  write(made: (frames: number, of: number) => void, signal: AbortSignal): Promise<Blob>;
}

export interface ClipDoor {
  readonly offered: Accessor<OfferedClip | undefined>;
  /** until the owner that offers it is cleaned up */
  offer(clip: Accessor<OfferedClip | undefined>): void;
  readonly sends: Accessor<boolean>;
  setSends(on: boolean): void;
}

export function createClipDoor(): ClipDoor {
  const [source, setSource] = createSignal<Accessor<OfferedClip | undefined>>();
  const [asked, setAsked] = createSignal<string>();
  const offered = createMemo(() => source()?.());
  return {
    offered,
    offer: (clip) => {
      setSource(() => clip);
      onCleanup(() => setSource((now) => (now === clip ? undefined : now)));
    },
    // asked for one clip, it is not asked for the next
    sends: () => asked() !== undefined && asked() === offered()?.name,
    setSends: (on) => setAsked(on ? offered()?.name : undefined),
  };
}
