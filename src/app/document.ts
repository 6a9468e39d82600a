/** The document: its history, edits, versions beside it, and files that are opened and saved. */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import * as past from '../document/history.ts';
import { readVersions, type Versions, writeVersions } from '../document/versions.ts';
import { inNextTask } from '../ui/frame.ts';
import { fileName, pickFile, saveText } from './file-door.ts';
import { wordFault } from './say/fault-words.ts';
import type { Flying } from './services.ts';
import type { Undoing } from './undoing.ts';
import { texts } from './words.ts';

export interface FileFault {
  readonly name: string;
  readonly reason: string;
}

export interface DocumentState extends Undoing {
  readonly file: Accessor<SkillFile>;
  /** a number given when a document is opened; undo of that gives back the number before */
  readonly id: Accessor<number>;
  readonly history: Accessor<past.History<SkillFile>>;
  /** a gesture is under way */
  readonly isHeld: Accessor<boolean>;
  /** the athlete of the document, looked up where it is a reference */
  readonly athlete: Accessor<Athlete>;
  /** starts a gesture and gives the document it starts from */
  begin(): SkillFile;
  draft(file: SkillFile): void;
  settle(title: string): void;
  /** back to the mark of a gesture under way; false when there was none */
  abandon(): boolean;
  edit(file: SkillFile, title: string): void;
  /** versions beside the document, and a step that changes both */
  readonly versions: Accessor<Versions>;
  editVersions(file: SkillFile, versions: Versions, title: string): void;
  /** the entry of the shelf that the document belongs to */
  readonly origin: Accessor<past.Origin | undefined>;
  setOrigin(origin: past.Origin | undefined): void;
  /** another document in one step */
  open(file: SkillFile, title: string, origin?: past.Origin): void;
  /** the same, flown in the next task and shown in the one after: none of them holds the page for long */
  openSoon(file: SkillFile, title: string, origin?: past.Origin): void;
  /** what was opened or dropped; one that cannot be read or flown changes nothing */
  readText(name: string, text: string): void;
  readonly fileFault: Accessor<FileFault | undefined>;
  clearFileFault(): void;
  /** the athlete of a file that was opened or dropped, for the shelf to take */
  readonly athleteRead: Accessor<Athlete | undefined>;
  openFile(): void;
  saveFile(): void;
}

interface DocumentHost {
  readonly flying: Pick<Flying, 'readFile' | 'readAthlete' | 'findAthlete'>;
  readonly history: past.History<SkillFile>;
  readonly fault?: FileFault;
  /** a gesture begins */
  begin(): void;
  /** throws for a document that cannot be flown */
  check(file: SkillFile): void;
  /** makes a change, with all that has to change with it; a gesture under way is no step yet */
  change(apply: () => void, isStep: boolean): void;
}

export function createDocument(host: DocumentHost): DocumentState {
  const { flying } = host;
  const [history, setHistory] = createSignal(host.history);
  const [fileFault, setFileFault] = createSignal(host.fault);
  const [athleteRead, setAthleteRead] = createSignal<Athlete | undefined>(undefined, { equals: false });
  const file = createMemo(() => history().doc);
  const id = createMemo(() => past.getId(history()));
  const isHeld = createMemo(() => history().mark !== undefined);
  const beside = createMemo(() => history().beside);
  const versions = createMemo(() => readVersions(beside()));

  const change = (next: past.History<SkillFile>): void => host.change(() => setHistory(next), next.mark === undefined);
  const readJson = (name: string, text: string): { readonly json: unknown } | undefined => {
    try {
      return { json: JSON.parse(text) };
    } catch (error) {
      setFileFault({ name, reason: texts.files.notJson(error instanceof Error ? error.message : String(error)) });
      return undefined;
    }
  };
  const readText = (name: string, text: string): void => {
    const read = readJson(name, text);
    if (!read) return;
    try {
      if (isAthlete(read.json)) {
        const athlete = flying.readAthlete(read.json);
        setFileFault(undefined);
        setAthleteRead(athlete);
        return;
      }
      const opened = flying.readFile(read.json);
      host.check(opened);
      setFileFault(undefined);
      change(past.open(history(), opened, texts.files.opened(opened.title)));
    } catch (error) {
      setFileFault({ name, reason: `${wordFault(error)}.` });
    }
  };

  const open: DocumentState['open'] = (doc, title, origin) => change(past.open(history(), doc, title, origin));

  return {
    file,
    id,
    history,
    isHeld,
    athlete: () => flying.findAthlete(file()),
    begin: () => {
      const h = history();
      if (h.mark === undefined) {
        host.begin();
        setHistory(past.setMark(h));
      }
      return h.mark ?? h.doc;
    },
    draft: (doc) => {
      setHistory(past.setDraft(history(), doc));
    },
    settle: (title) => change(past.settle(history(), title)),
    abandon: () => {
      if (history().mark === undefined) return false;
      change(past.abandon(history()));
      return true;
    },
    edit: (doc, title) => change(past.edit(past.abandon(history()), doc, title)),
    versions,
    editVersions: (doc, list, title) => change(past.edit(past.abandon(history()), doc, title, writeVersions(list))),
    undoTitle: () => history().done.at(-1)?.title,
    redoTitle: () => history().undone.at(-1)?.title,
    undo: () => change(past.undo(history())),
    redo: () => change(past.redo(history())),
    origin: () => history().origin,
    setOrigin: (origin) => change(past.withOrigin(history(), origin)),
    open,
    openSoon: (doc, title, origin) =>
      inNextTask(() => {
        try {
          host.check(doc);
        } catch {
          // said when it is opened
        }
        inNextTask(() => open(doc, title, origin));
      }),
    readText,
    fileFault,
    clearFileFault: () => setFileFault(undefined),
    athleteRead,
    openFile: () => pickFile(readText),
    saveFile: () => saveText(fileName(file().title), `${JSON.stringify(file(), null, 2)}\n`),
  };
}

/** An athlete's file says so, or it is the athlete alone. */
function isAthlete(json: unknown): boolean {
  if (typeof json !== 'object' || json === null) return false;
  const { format, kind } = json as Record<string, unknown>;
  return format === undefined ? kind === 'human' || kind === 'tree' : format === 'shapeflight-athlete';
}
