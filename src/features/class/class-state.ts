/** The room of a class: which of its views is open, the worksheet that is answered, the files that were handed in. Kept while it is closed. */
import { type Accessor, batch, createSignal, getOwner, runWithOwner } from 'solid-js';
import type { GivenFile, Worksheet } from '../../../sim/index.ts';
import { readGiven } from '../../app/dropped-files.ts';
import { pickFiles } from '../../app/file-door.ts';
import { keptState, type Page } from '../../app/page.ts';
import { wordFault, wordFileName } from '../../app/say/fault-words.ts';
import { texts } from '../../app/words.ts';
import { newName } from '../../document/keep-claim.ts';
import { openRecords } from '../../document/keep-store.ts';
import type { Classing } from '../../engine/class.ts';
import { units } from '../../ui/units.ts';
import { type AnswerKeep, idOf, type KeptAnswers, makeAnswerKeep } from './answer-keep.ts';
import { type AnswerWork, makeAnswerWork } from './answer-state.ts';
import { classTexts as t } from './words.ts';

type ClassView = 'start' | 'answer' | 'write' | 'table';

/** What could not be opened: which file, and why. */
interface ClassFault {
  readonly name: string;
  readonly reason: string;
}

/** A worksheet was opened for which answers are kept: whose, and what is to be done. */
export interface KeptOffer {
  readonly worksheet: Worksheet;
  readonly kept: readonly (KeptAnswers & { readonly locked: number })[];
  /** the file that was opened has answers itself */
  readonly hasAnswers: boolean;
  goOn(id: string): void;
  asOpened(): void;
  blank(): void;
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
  /** to be answered; where answers to it are kept, that is asked first */
  open(worksheet: Worksheet): void;
  readonly offer: Accessor<KeptOffer | undefined>;
  /** the sheet that is answered */
  readonly work: Accessor<AnswerWork | undefined>;
  /** goes on with answers that are kept */
  resume(kept: KeptAnswers): void;
  /** what a class handed in, as it was given: the table is of these */
  readonly files: Accessor<readonly GivenFile[]>;
  addFiles(files: readonly GivenFile[]): void;
  clearFiles(): void;
}

interface ClassPorts {
  readonly keep: AnswerKeep;
  readonly now: () => Date;
  readonly newName: () => string;
}

export function makeClassRoom(page: Page, classing: Classing, ports: ClassPorts): ClassRoomState {
  const [view, setView] = createSignal<ClassView>('start');
  const [fault, putFault] = createSignal<ClassFault>();
  const setFault = (next: ClassFault | undefined): void => {
    putFault(next && { name: wordFileName(next.name), reason: next.reason.replace(/[^.]$/, '$&.') });
  };
  const [work, setWork] = createSignal<AnswerWork>();
  const [offer, setOffer] = createSignal<KeptOffer>();
  const [files, setFiles] = createSignal<readonly GivenFile[]>([]);
  const show = (next: ClassView): void => {
    batch(() => {
      setFault(undefined);
      setOffer(undefined);
      setView(next);
    });
  };
  const begin = (given: Omit<Parameters<typeof makeAnswerWork>[1], 'isKept'> & { isKept?: true }): void => {
    batch(() => {
      setWork(
        makeAnswerWork(
          {
            classing,
            ...ports,
            measure: () => units().measure,
            wordError: wordFault,
            sayBeside: () => page.shell.notify({ text: t.answeredBeside }),
          },
          given,
        ),
      );
      show('answer');
    });
  };
  const goOn = (kept: KeptAnswers): void => {
    const { id, text, name, group } = kept;
    try {
      begin({ id, worksheet: classing.read(text), name, group, isKept: true, seen: kept });
    } catch (error) {
      setFault({ name, reason: wordFault(error) });
    }
  };
  const listKept = (digest: string): Promise<readonly KeptAnswers[]> =>
    ports.keep.list(digest).catch(() => {
      page.shell.notify({ text: t.answersUnread });
      return [];
    });
  const countLocked = ({ text }: KeptAnswers): number => {
    try {
      return classing.read(text).answers.filter(({ lockedAt }) => lockedAt !== undefined).length;
    } catch {
      return 0;
    }
  };
  const isSame = (kept: KeptAnswers, text: string): boolean => {
    const { name, group } = kept;
    try {
      return (
        classing.write(
          classing.rules.nameStudent(classing.read(kept.text), { name: name.trim(), class: group.trim() }),
        ) === text
      );
    } catch {
      return false;
    }
  };
  /** each opening takes the place of the one before */
  let opening = 0;
  const open = async (worksheet: Worksheet): Promise<void> => {
    const mine = ++opening;
    const digest = classing.digest(worksheet);
    const kept = await listKept(digest);
    if (mine !== opening) return;
    const text = classing.write(worksheet);
    const same = kept.find((one) => isSame(one, text));
    const fresh = (given: Worksheet): void => begin({ id: idOf(digest, ports.newName()), worksheet: given });
    if (same) goOn(same);
    else if (kept.length === 0) fresh(worksheet);
    else
      batch(() => {
        setWork(undefined);
        show('answer');
        setOffer({
          worksheet,
          kept: kept.map((one) => ({ ...one, locked: countLocked(one) })),
          hasAnswers: worksheet.student !== undefined || worksheet.answers.some((one) => Object.keys(one).length > 0),
          goOn: (id) => {
            const chosen = kept.find((one) => one.id === id);
            if (chosen) goOn(chosen);
          },
          asOpened: () => fresh(worksheet),
          blank: () => fresh(classing.rules.blankOf(worksheet)),
        });
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
      setFault(undefined);
      void open(classing.read(one.text));
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
    pick: () =>
      pickFiles((picked) => {
        page.services.load
          .filing()
          .then((by) => readGiven(picked, by))
          .then(receive, () => setFault({ name: picked[0].name, reason: texts.panelFailed }));
      }),
    open: (worksheet) => void open(worksheet),
    offer,
    work,
    resume: goOn,
    files,
    addFiles,
    clearFiles: () => setFiles([]),
  };
}

/** Made by the first who has what computes it. */
const makeOnce = (page: Page): ((classing: Classing, resume: string) => ClassRoomState) => {
  const owner = getOwner();
  let room: ClassRoomState | undefined;
  return (classing, resume) => {
    if (room) return room;
    const keep = makeAnswerKeep(openRecords('shapeflight-worksheets'));
    const ports = { keep, now: () => new Date(), newName };
    const made = runWithOwner(owner, () => makeClassRoom(page, classing, ports)) as ClassRoomState;
    room = made;
    // after a reload: the sheet that was open in this tab
    if (resume)
      void keep.get(resume).then(
        (kept) => kept && made.view() === 'start' && made.resume(kept),
        () => page.shell.notify({ text: t.answersUnread }),
      );
    return made;
  };
};

export const useClassRoom = keptState(makeOnce);
