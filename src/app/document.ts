/** The document: its history, edits, versions beside it, and files that are opened and saved. */

import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { Athlete, GivenFile, SkillFile } from '../../sim/index.ts';
import { FieldError } from '../../sim/math/field-error.ts';
import { jsonText } from '../../sim/math/json-text.ts';
import * as past from '../document/history.ts';
import type { SkillEntry } from '../document/shelf.ts';
import { readVersions, type Versions, writeVersions } from '../document/versions.ts';
import { cancelDrag } from '../ui/drag.ts';
import { inNextTask } from '../ui/frame.ts';
import { type FileFault, fileName, type OpeningEnd, pickFiles, saveText } from './file-door.ts';
import { createLegView, LEGS } from './leg-view.ts';
import type { OpeningState } from './opening.ts';
import { createReading } from './reading-files.ts';
import { wordFault, wordFileName } from './say/fault-words.ts';
import type { Flying } from './services.ts';
import { shelfTexts } from './shelf-words.ts';
import { createSoon } from './soon.ts';
import type { Undoing } from './undoing.ts';
import { texts } from './words.ts';

export interface DocumentState extends Undoing {
  /** one flight with what comes before and after it: the document, or the leg of it that is worked on */
  readonly file: Accessor<SkillFile>;
  /** the document as it is saved, all its legs */
  readonly chain: Accessor<SkillFile>;
  /** which leg `file` is, from 0 */
  readonly leg: Accessor<number>;
  readonly legCount: Accessor<number>;
  /** shown as soon as what its flight begins with is known */
  setLeg(leg: number): void;
  /** a change of the chain itself: phases added, moved, removed */
  editChain(chain: SkillFile, title: string): void;
  /** a number given when a document is opened, another for each leg; undo of that gives back the number before */
  readonly id: Accessor<number>;
  readonly history: Accessor<past.History<SkillFile>>;
  /** a gesture is under way */
  readonly isHeld: Accessor<boolean>;
  /** the athlete of the document, looked up where it is a reference */
  readonly athlete: Accessor<Athlete>;
  /**
   * Starts a gesture and gives the document it starts from. One that another document was opened under changes nothing
   * any more, until it settles or is abandoned.
   */
  begin(): SkillFile;
  /** the document that the gesture under way starts from */
  marked(): SkillFile;
  draft(file: SkillFile): void;
  settle(title: string): void;
  /**
   * The hand has let go, and what it did is not computed to the end: `settle` will do that at once. It is called before anything
   * else is done with the document, unless the gesture has settled by then.
   */
  settleLater(settle: () => void): void;
  /** what a hand has let go of is settled */
  finish(): void;
  /** back to the mark of a gesture under way; false when there was none */
  abandon(): boolean;
  edit(file: SkillFile, title: string): void;
  /** the same, flown in the next task and shown in the one after, or before anything else is done */
  editSoon(file: SkillFile, title: string): void;
  /** of a gesture under way: it is taken back and over, and nothing else */
  undoSoon(): void;
  redoSoon(): void;
  /** versions beside the document, and a step that changes both */
  readonly versions: Accessor<Versions>;
  editVersions(file: SkillFile, versions: Versions, title: string): void;
  /** the entry of the shelf that the document belongs to */
  readonly origin: Accessor<past.Origin | undefined>;
  setOrigin(origin: past.Origin | undefined): void;
  /** another document in one step; `original` is the text that it was migrated from */
  open(file: SkillFile, title: string, origin?: past.Origin, original?: string): void;
  /** the same, flown in the next task and shown in the one after: none of them holds the page for long */
  openSoon(file: SkillFile, title: string, origin?: past.Origin, original?: string): void;
  /** an entry of the shelf, as soon; one of a version that is not known changes nothing and says so */
  openEntry(entry: SkillEntry): void;
  /** another past, and what it has come to: what was read late */
  restore(history: past.History<SkillFile>, fault?: FileFault): void;
  /**
   * What was opened or dropped; one that cannot be read or flown changes nothing. `join`: with what came along. `end`: what became of it,
   * for the one who asks to say; left out: a refusal is said over the page.
   */
  readText(name: string, text: string, join?: (file: SkillFile) => SkillFile, end?: (end: OpeningEnd) => void): void;
  /** what is opened as soon as it has been read and flown beside the page */
  readonly opening: Pick<OpeningState, 'now' | 'cancel'>;
  readonly fileFault: Accessor<FileFault | undefined>;
  clearFileFault(): void;
  /** what was to be opened was not: said over the page */
  refuse(fault: FileFault): void;
  /** throws for a document that cannot be flown */
  check(file: SkillFile): void;
  /** the athlete of a file that was opened or dropped, for the shelf to take */
  readonly athleteRead: Accessor<Athlete | undefined>;
  openFile(): void;
  saveFile(): void;
  /** the document is made from a file of an older version, and not saved since: that one is kept as it was */
  hasOriginal(): boolean;
  /** writes that, byte for byte */
  saveOriginal(): void;
  /** for builds that know version 1 of the skill file only */
  saveVersion1(): void;
}

interface DocumentHost {
  readonly flying: Pick<
    Flying,
    'readJson' | 'readFile' | 'readLong' | 'migrate' | 'readAthlete' | 'findAthlete' | 'legs' | 'flown' | 'cancel'
  >;
  readonly history: past.History<SkillFile>;
  readonly fault?: FileFault;
  /** grows when what comes before a flight has become known */
  readonly known: Accessor<number>;
  /** a ready skill, with the athlete that is to fly each */
  dress(file: SkillFile): SkillFile;
  /** a gesture begins */
  begin(): void;
  /** the document as a version 1 file; throws where it cannot be one */
  writeVersion1(): string;
  /** throws for a document that cannot be flown; 'beside': it is being flown beside the page */
  check(file: SkillFile): 'beside' | undefined;
  /** files that were chosen, read and handed back as texts */
  giveFiles(files: readonly File[]): void;
  /** what was opened is a worksheet, which is no skill */
  giveWorksheet(file: GivenFile): void;
  /** makes a change, with all that has to change with it; a gesture under way is no step yet */
  change(apply: () => void, isStep: boolean): void;
}

export function createDocument(host: DocumentHost): DocumentState {
  const { flying } = host;
  const [history, setHistory] = createSignal(host.history);
  const [fileFault, setFault] = createSignal(host.fault);
  const setFileFault = (fault: FileFault | undefined): void => {
    setFault(fault && { ...fault, name: wordFileName(fault.name) });
  };
  const [athleteRead, setAthleteRead] = createSignal<Athlete | undefined>(undefined, { equals: false });
  const { file, leg, setLeg, put, viewOf } = createLegView(flying.legs, history, host.known);
  const id = createMemo(() => past.getId(history()) + leg() / LEGS);
  const isHeld = createMemo(() => history().mark !== undefined);
  const beside = createMemo(() => history().beside);
  const versions = createMemo(() => readVersions(beside()));

  let unsettled: (() => void) | undefined;
  const finish = (): void => {
    const settle = unsettled;
    unsettled = undefined;
    settle?.();
  };
  const finished = (): past.History<SkillFile> => {
    finish();
    return history();
  };
  const soon = createSoon({
    history,
    finish,
    settleLater: (settle) => {
      unsettled = settle;
    },
    isWaiting: (settle) => unsettled === settle,
    change: (next) => change(next),
    fly: ({ doc }) => {
      if (flying.legs.count(doc) === 1) host.check(doc);
    },
  });
  /** the document that the gesture under way began on is no longer the one that is open */
  let isCut = false;
  const change = (next: past.History<SkillFile>): void => {
    const isOther = past.getId(next) !== past.getId(history());
    if (isOther) isCut = history().mark !== undefined;
    host.change(() => setHistory(next), next.mark === undefined);
    if (isOther) cancelDrag();
  };
  // what a hand was doing is a step of the document before, not lost and not done to the one that is opened
  const open: DocumentState['open'] = (doc, title, origin, original) => {
    // what is said of one before it is over
    setFault(undefined);
    change(past.open(past.settle(finished(), shelfTexts.cutShort), doc, title, origin, original));
  };
  const reading = createReading({
    flying,
    check: host.check,
    giveWorksheet: host.giveWorksheet,
    giveAthlete: setAthleteRead,
    setFault: setFileFault,
    open: (doc, original) => open(doc, texts.files.opened(doc.title), undefined, original),
  });
  const openSoon: DocumentState['openSoon'] = (doc, title, origin, original) =>
    inNextTask(() => {
      let shown = origin ? doc : host.dress(doc);
      const show = (): void => open(shown, title, origin, original);
      const isComing = (): boolean => {
        const isBeside = host.check(shown) === 'beside';
        if (isBeside) reading.whenFlown(shown.title, shown, show);
        return isBeside;
      };
      try {
        if (isComing()) return;
      } catch (error) {
        // one that was stopped is asked for again as another; any other fault is said when it is opened
        if (error instanceof Error && error.name === 'FlightStoppedError') {
          shown = structuredClone(shown);
          if (isComing()) return;
        }
      }
      reading.opening.cancel();
      inNextTask(show);
    });

  const abandon = (): boolean => {
    isCut = false;
    if (finished().mark === undefined) return false;
    change(past.abandon(history()));
    return true;
  };
  /** What a hand is at work on is taken back; false when there is nothing. */
  const letGo = (): boolean => {
    if (finished().mark === undefined) return false;
    cancelDrag();
    abandon();
    return true;
  };

  return {
    file,
    chain: () => history().doc,
    leg,
    legCount: () => flying.legs.count(history().doc),
    setLeg: (next) => {
      finish();
      setLeg(next);
    },
    editChain: (doc, title) => {
      isCut = false;
      change(past.edit(past.abandon(finished()), doc, title));
    },
    id,
    history,
    isHeld,
    athlete: () => flying.findAthlete(file()),
    begin: () => {
      const h = finished();
      if (h.mark === undefined && !isCut) {
        host.begin();
        setHistory(past.setMark(h));
      }
      return viewOf(h.mark ?? h.doc);
    },
    marked: () => viewOf(history().mark ?? history().doc),
    draft: (doc) => {
      if (history().mark !== undefined) setHistory(past.setDraft(history(), put(doc)));
    },
    settleLater: (settle) => {
      unsettled = settle;
    },
    finish,
    settle: (title) => {
      unsettled = undefined;
      isCut = false;
      change(past.settle(history(), title));
    },
    abandon,
    edit: (doc, title) => {
      isCut = false;
      change(past.edit(past.abandon(finished()), put(doc), title));
    },
    versions,
    editVersions: (doc, list, title) =>
      change(past.edit(past.abandon(finished()), put(doc), title, writeVersions(list))),
    undoTitle: () => history().done.at(-1)?.title,
    redoTitle: () => history().undone.at(-1)?.title,
    undo: () => change(past.undo(finished())),
    redo: () => change(past.redo(finished())),
    undoSoon: () => letGo() || soon(past.undo),
    redoSoon: () => letGo() || soon(past.redo),
    editSoon: (doc, title) => soon((h) => past.edit(past.abandon(h), put(doc), title)),
    origin: () => history().origin,
    setOrigin: (origin) => change(past.withOrigin(finished(), origin)),
    open,
    openSoon,
    openEntry: ({ id: entryId, revision, value, original }) => {
      const doc = structuredClone(value);
      try {
        // a document of no version that is known: the reader says which it is
        if (!flying.migrate(doc)) flying.readFile(doc);
      } catch (error) {
        reading.fail(doc.title, error);
        return;
      }
      const text = original === undefined ? undefined : JSON.stringify(original);
      openSoon(doc, texts.files.opened(doc.title), { id: entryId, revision }, text);
    },
    restore: (next, fault) => {
      setFileFault(fault);
      change(next);
    },
    readText: reading.readText,
    opening: reading.opening,
    fileFault,
    clearFileFault: () => setFileFault(undefined),
    refuse: setFileFault,
    check: (doc) => void host.check(doc),
    athleteRead,
    openFile: () => pickFiles(host.giveFiles),
    saveFile: () => saveText(fileName(file().title), `${jsonText(finished().doc)}\n`),
    hasOriginal: () => history().original !== undefined,
    saveOriginal: () => {
      const { original } = history();
      if (original !== undefined) saveText(fileName(file().title, 'original'), original);
    },
    saveVersion1: () => {
      try {
        const { phases } = history().doc;
        if (flying.legs.count(history().doc) > 1)
          throw new FieldError('phases', phases, 'one flight in a version 1 file');
        saveText(fileName(file().title, 'v1'), host.writeVersion1());
      } catch (error) {
        const name = file().title;
        setFileFault({ name, reason: `${wordFault(error)}.`, said: texts.files.notSaved(wordFileName(name)) });
      }
    },
  };
}
