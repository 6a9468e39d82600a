/** What open tools add to the pictures: each provides its own part, and the stage reads them as one. */
import { type Accessor, createMemo, createSignal, onCleanup } from 'solid-js';
import type { StageExtras } from '../pictures/stage-input.ts';

export interface StageProviders {
  /** until the owner that provides it is cleaned up */
  provide(part: Accessor<StageExtras>): void;
  readonly extras: Accessor<StageExtras>;
  /** a picture was drawn, or none can be */
  readonly isDrawn: Accessor<boolean>;
  drawn(): void;
}

export function createStageProviders(): StageProviders {
  const [isDrawn, setDrawn] = createSignal(false);
  const [parts, setParts] = createSignal<readonly Accessor<StageExtras>[]>([]);
  return {
    isDrawn,
    drawn: () => {
      setDrawn(true);
    },
    provide: (part) => {
      setParts((all) => [...all, part]);
      onCleanup(() => setParts((all) => all.filter((one) => one !== part)));
    },
    // the tool that came last has a field to itself: two tools' versions have the same letters
    extras: createMemo(() => parts().reduce<StageExtras>((sum, part) => join(sum, part()), {})),
  };
}

function join(a: StageExtras, b: StageExtras): StageExtras {
  return { versions: b.versions ?? a.versions, plainBodies: b.plainBodies ?? a.plainBodies };
}
