/**
 * A mark, set before the first flight of a kept document begins at a start and taken away when it has come to its end: a start that finds
 * it knows that the one before did not. The page that goes away in good order takes it away too.
 */
import type { SkillFile } from '../../sim/index.ts';
import { readStored, writeStored } from '../ui/stored.ts';

const KEY = 'shapeflight.starting';

export interface StartMark {
  /** the first flight of this document did not come to its end at the last start */
  wasCutShort(doc: SkillFile): boolean;
  set(doc: SkillFile): void;
  clear(): void;
}

interface MarkStore {
  read(): string | null;
  write(value: string): void;
}
const inBrowser: MarkStore = { read: () => readStored(KEY), write: (value) => writeStored(KEY, value) };

/** Its title and how many phases it has: enough to tell it from what another tab begins with. */
const nameOf = ({ title, phases }: SkillFile): string => JSON.stringify([title, phases.length]);

export function makeStartMark(store: MarkStore = inBrowser): StartMark {
  // what was kept may come late, when the flight shown until then has taken the mark away
  const left = store.read();
  return {
    wasCutShort: (doc) => left === nameOf(doc),
    set: (doc) => store.write(nameOf(doc)),
    clear: () => {
      if (store.read()) store.write('');
    },
  };
}
