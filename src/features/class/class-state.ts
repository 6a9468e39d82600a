/** The room of a class: which of its views is open, the worksheet that is answered, the files that were handed in. Kept while it is closed. */
import { type Accessor, batch, createSignal, getOwner, runWithOwner } from 'solid-js';
import type { GivenFile, Worksheet } from '../../../sim/index.ts';
import { readGiven } from '../../app/dropped-files.ts';
import { pickFiles } from '../../app/file-door.ts';
import { keptState, type Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Classing } from '../../engine/class.ts';

type ClassView = 'start' | 'answer' | 'write' | 'table';

/** What could not be opened: which file, and why. */
interface ClassFault {
  readonly name: string;
  readonly reason: string;
}

export interface ClassRoomState {
  readonly page: Page;
  readonly classing: Classing;
  readonly view: Accessor<ClassView>;
  show(view: ClassView): void;
  readonly fault: Accessor<ClassFault | undefined>;
  setFault(fault: ClassFault | undefined): void;
  /** of a file, a link, or the ready ones: one worksheet is answered, several files are a class */
  receive(files: readonly GivenFile[]): void;
  /** asks for files, and receives them */
  pick(): void;
  /** the worksheet that is answered, or looked at */
  readonly worksheet: Accessor<Worksheet | undefined>;
  open(worksheet: Worksheet): void;
  /** what a class handed in, as it was given: the table is of these */
  readonly files: Accessor<readonly GivenFile[]>;
  addFiles(files: readonly GivenFile[]): void;
  clearFiles(): void;
}

function makeClassRoom(page: Page, classing: Classing): ClassRoomState {
  const [view, setView] = createSignal<ClassView>('start');
  const [fault, setFault] = createSignal<ClassFault>();
  const [worksheet, setWorksheet] = createSignal<Worksheet>();
  const [files, setFiles] = createSignal<readonly GivenFile[]>([]);
  const show = (next: ClassView): void => {
    setFault(undefined);
    setView(next);
  };
  const open = (given: Worksheet): void => {
    batch(() => {
      setWorksheet(given);
      show('answer');
    });
  };
  const addFiles = (given: readonly GivenFile[]): void => {
    batch(() => {
      setFiles([...files(), ...given]);
      show('table');
    });
  };
  const receive = (given: readonly GivenFile[]): void => {
    if (given.length === 0) return;
    if (given.length > 1 || view() === 'table') {
      addFiles(given);
      return;
    }
    const [one] = given;
    if ('reason' in one) {
      setFault(one);
      return;
    }
    try {
      open(classing.read(one.text));
    } catch (error) {
      setFault({ name: one.name, reason: wordFault(error) });
    }
  };
  return {
    page,
    classing,
    view,
    show,
    fault,
    setFault,
    receive,
    pick: () => pickFiles((picked) => void readGiven(picked).then(receive)),
    worksheet,
    open,
    files,
    addFiles,
    clearFiles: () => setFiles([]),
  };
}

/** Made by the first who has what computes it. */
const makeOnce = (page: Page): ((classing: Classing) => ClassRoomState) => {
  const owner = getOwner();
  let room: ClassRoomState | undefined;
  return (classing) => {
    room ??= runWithOwner(owner, () => makeClassRoom(page, classing));
    return room as ClassRoomState;
  };
};

export const useClassRoom = keptState(makeOnce);
