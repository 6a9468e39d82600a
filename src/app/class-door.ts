/** What was opened, dropped or linked as a worksheet waits here for the part of the page that reads it. */
import { type Accessor, createSignal } from 'solid-js';
import type { GivenFile } from '../../sim/index.ts';

export interface ClassDoor {
  readonly given: Accessor<readonly GivenFile[]>;
  /** opens that part, too */
  give(files: readonly GivenFile[]): void;
  /** all that waits, once */
  take(): readonly GivenFile[];
}

export function createClassDoor(open: () => void): ClassDoor {
  const [given, setGiven] = createSignal<readonly GivenFile[]>([]);
  return {
    given,
    give: (files) => {
      setGiven([...given(), ...files]);
      open();
    },
    take: () => {
      const files = given();
      if (files.length > 0) setGiven([]);
      return files;
    },
  };
}
