/** The sheets as the tool sees them: which is open, what was done to them and can be undone, kept in the browser at once. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';
import type { SheetFile } from '../../../sim/index.ts';
import { type Undoing, undoingOf } from '../../app/undoing.ts';
import * as past from '../../document/history.ts';
import { newName } from '../../document/keep-claim.ts';
import { dropOld, nameSheet, parseSheet, readDesk, type SheetStores, writeDesk } from '../../document/keep-sheets.ts';
import {
  addSheet,
  changeSheet,
  isOwn,
  listOwn,
  openSheet,
  removeSheet,
  type SheetDesk,
  type ShownSheet,
} from '../../document/own-sheets.ts';
import { estimateTexts as e } from './words.ts';

/** Of the sheet kept with the skill. */
export const WITH_SKILL = 'skill';

interface SheetDeskPorts {
  readonly stores: SheetStores;
  /** once they are loaded */
  readonly ready: Accessor<readonly ShownSheet[]>;
  /** the ready sheet to begin with */
  readonly first: () => string;
  readonly ofSkill: Accessor<SheetFile | undefined>;
}

export interface SheetDeskState extends Undoing {
  readonly shown: Accessor<ShownSheet | undefined>;
  readonly own: Accessor<readonly ShownSheet[]>;
  readonly isOwn: Accessor<boolean>;
  /** what the open sheet began as, where that is known and it is another now */
  readonly original: Accessor<SheetFile | undefined>;
  /** takes over what an older build kept; called once ready sheets are there */
  begin(): void;
  choose(id: string): void;
  startNew(): void;
  /** adds a sheet of one's own and opens it */
  add(sheet: SheetFile): void;
  edit(next: SheetFile, title: string): void;
  /** part of a longer edit: letters of one line are one step */
  type(next: SheetFile, title: string): void;
  /** the longer edit is over */
  settle(): void;
  /** deletes the open sheet where it is one's own; gives the way back, whatever is done in between */
  remove(): (() => void) | undefined;
  /** the sheet is kept with the skill: that one is open now, without a step */
  showWithSkill(): void;
  /** false: the browser refuses to keep them */
  readonly isKept: Accessor<boolean>;
}

const isSameSheet = (a: SheetFile, b: SheetFile): boolean =>
  a.title === b.title && JSON.stringify(a.lines) === JSON.stringify(b.lines);

export function makeSheetDesk({ stores, ready, first, ofSkill }: SheetDeskPorts): SheetDeskState {
  const kept = readDesk(stores);
  const [history, setHistory] = createSignal(past.makeHistory<SheetDesk>({ own: kept.own, open: kept.open ?? '' }));
  const [isKept, setKept] = createSignal(true);
  let written: SheetDesk = history().doc;
  let typing = '';
  let lastOwn = '';
  const desk = (): SheetDesk => history().doc;

  const find = (id: string): ShownSheet | undefined => {
    const skill = id === WITH_SKILL ? ofSkill() : undefined;
    if (skill) return { id, sheet: skill };
    if (isOwn(desk(), id)) return { id, sheet: desk().own[id].sheet };
    return ready().find((one) => one.id === id);
  };
  /** the open one may be gone: kept with a skill that is no longer open, or deleted in another tab */
  const shown = (): ShownSheet | undefined => find(desk().open) ?? find(lastOwn) ?? find(first()) ?? ready()[0];

  const set = (next: past.History<SheetDesk>): void => {
    setHistory(next);
    if (isOwn(next.doc, next.doc.open)) lastOwn = next.doc.open;
    setKept(writeDesk(stores, next.doc, written));
    written = next.doc;
  };
  const settle = (): void => {
    if (typing === '') return;
    set(past.settle(history(), typing));
    typing = '';
  };
  const step = (next: SheetDesk, title: string): void => {
    settle();
    set(past.edit(history(), next, title));
  };
  const changed = (next: SheetFile): SheetDesk => {
    const now = shown();
    return now ? changeSheet(desk(), now, next, { newId: newName, copyOf: e.copyOf }) : desk();
  };

  // another tab writes a sheet of its own, or deletes one
  const onStorage = ({ key, newValue, storageArea }: StorageEvent): void => {
    if (storageArea !== stores.local) return;
    if (key === null) {
      // all of it was cleared: what this tab has is written again
      setKept(writeDesk(stores, desk(), undefined));
      return;
    }
    const id = nameSheet(key);
    const found = parseSheet(newValue);
    if (id === undefined || (found === undefined && (newValue !== null || id === shown()?.id))) return;
    const wasThere = isOwn(desk(), id);
    const next = found ? { ...desk(), own: { ...desk().own, [id]: found } } : removeSheet(desk(), id, desk().open);
    // steps that change the same sheet no longer fit it
    setHistory(wasThere ? past.makeHistory(next) : { ...history(), doc: next });
    if (wasThere) typing = '';
    written = next;
  };
  window.addEventListener('storage', onStorage);
  onCleanup(() => window.removeEventListener('storage', onStorage));

  return {
    shown,
    own: () => listOwn(desk()),
    isOwn: () => isOwn(desk(), shown()?.id ?? ''),
    original: () => {
      const now = shown();
      const from = now && isOwn(desk(), now.id) ? desk().own[now.id].from : undefined;
      const found = from === undefined ? undefined : find(from);
      if (!now || !found) return undefined;
      return isSameSheet({ ...found.sheet, title: now.sheet.title }, now.sheet) ? undefined : found.sheet;
    },
    begin: () => {
      const { old } = kept;
      if (old) {
        const begun = old.from === undefined ? undefined : find(old.from);
        const isSame = begun !== undefined && isSameSheet(begun.sheet, old.sheet);
        const title = begun && begun.sheet.title === old.sheet.title ? e.copyOf(old.sheet.title) : old.sheet.title;
        const next = isSame
          ? openSheet(desk(), begun.id)
          : addSheet(desk(), newName(), { ...old.sheet, title }, old.from);
        set(past.makeHistory(next));
        dropOld(stores);
      } else if (!find(desk().open)) {
        setHistory(past.makeHistory(openSheet(desk(), ofSkill() ? WITH_SKILL : first())));
      }
    },
    choose: (id) => {
      const found = find(id);
      if (found && id !== shown()?.id) step(openSheet(desk(), id), e.opened(found.sheet.title));
    },
    startNew: () => {
      const blank: SheetFile = { format: 'shapeflight-sheet', version: 1, title: e.ownTitle, lines: [''] };
      const untouched = listOwn(desk()).find(({ sheet }) => isSameSheet({ ...sheet, title: blank.title }, blank));
      step(untouched ? openSheet(desk(), untouched.id) : addSheet(desk(), newName(), blank), e.opened(e.newSheet));
    },
    add: (sheet) => step(addSheet(desk(), newName(), sheet), e.opened(sheet.title)),
    edit: (next, title) => step(changed(next), title),
    type: (next, title) => {
      if (typing !== title) settle();
      typing = title;
      set(past.setDraft(history(), changed(next)));
    },
    settle,
    remove: () => {
      const now = shown();
      if (!now || !isOwn(desk(), now.id)) return undefined;
      const one = desk().own[now.id];
      const next = one.from !== undefined && find(one.from) ? one.from : first();
      step(removeSheet(desk(), now.id, next), e.removed(now.sheet.title));
      const removal = history().done.at(-1);
      return () => {
        if (history().done.at(-1) === removal && history().mark === undefined) set(past.undo(history()));
        else step({ own: { ...desk().own, [now.id]: one }, open: now.id }, e.broughtBack(now.sheet.title));
      };
    },
    showWithSkill: () => {
      settle();
      set({ ...history(), doc: openSheet(desk(), WITH_SKILL) });
    },
    isKept,
    ...undoingOf({ history, set, settle, typing: () => typing }),
  };
}
