/** One page: its document, the flight of that, the cursor and the shell, made once and handed to components by contexts. */
import {
  batch,
  createContext,
  createEffect,
  createSignal,
  getOwner,
  type Owner,
  runWithOwner,
  useContext,
} from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import * as past from '../document/history.ts';
import type { KeptSession } from '../document/keep-record.ts';
import { type Athletes, createAthletes } from './athletes.ts';
import { type CursorState, createCursor } from './cursor.ts';
import { createDocument, type DocumentState } from './document.ts';
import type { FileFault } from './file-door.ts';
import { type Checked, createFlight, type FlightState, isAwaited, isBeside, isPending, makeChecked } from './flight.ts';
import { createKeeping, type Keeping } from './keeping.ts';
import { loadPart } from './load-part.ts';
import { wordFault, wordFileName } from './say/fault-words.ts';
import type { Services } from './services.ts';
import { shelfTexts } from './shelf-words.ts';
import { createShell, type ShellState } from './shell.ts';
import { makeStartMark, type StartMark } from './start-mark.ts';
import { texts } from './words.ts';

export interface Page {
  readonly doc: DocumentState;
  readonly flight: FlightState;
  readonly cursor: CursorState;
  readonly athletes: Athletes;
  readonly shell: ShellState;
  readonly keeping: Keeping;
  readonly services: Services;
  /** state that a feature keeps while it is closed */
  keepState<T>(make: (page: Page) => T): T;
  /** nothing was kept: the demo opens with its own cursor */
  readonly isFresh: boolean;
}

interface Start {
  readonly history: past.History<SkillFile>;
  readonly fault?: FileFault;
  /** kept, and not opened: the page did not come to the end of its flight the last time */
  readonly cutShort?: past.History<SkillFile>;
}

/**
 * A kept document that no longer flies must not lock the page: the demo opens, and undo still reaches the past. One whose
 * swing is still computed, or was lost with its worker, is open as it was kept.
 */
function findStart(
  { flying, presets: { first } }: Services,
  checked: Checked,
  kept: KeptSession | undefined,
  mark: StartMark,
): Start {
  const history = kept?.history ?? past.makeHistory(first);
  if (kept && mark.wasCutShort(history.doc)) {
    const shown = former(history) ?? first;
    mark.clear();
    return { history: past.open(history, shown, texts.files.opened(shown.title)), cutShort: history };
  }
  if (kept) mark.set(history.doc);
  try {
    flying.checkChain(history.doc);
    checked.check(flying.legs.fileOf(history.doc, 0));
    return { history };
  } catch (error) {
    if (!kept) throw error;
    if (isAwaited(error)) return { history };
    checked.check(first);
    return {
      history: past.open(history, first, texts.files.opened(first.title)),
      fault: { name: wordFileName(history.doc.title), reason: `${wordFault(error)}.` },
    };
  }
}

const loadDropped = loadPart(
  () => import('./dropped-files.ts'),
  (m) => m.readDropped,
);
const loadDroppedText = loadPart(
  () => import('./dropped-text.ts'),
  (m) => m.readDroppedText,
);

/** Letters that were dropped, without a file. */
export function readLetters(page: Page, text: string): void {
  loadDroppedText()
    .then((read) => read(page, text))
    .catch(() => page.shell.notify({ text: texts.panelFailed }));
}

/** Files that were dropped or chosen. */
export function readFiles(page: Page, files: readonly File[]): void {
  if (files.length === 0) return;
  loadDropped()
    .then((read) => read(page, files))
    .catch(() => page.doc.refuse({ name: files[0].name, reason: texts.panelFailed }));
}

/** The document that was open before this one. */
function former(history: past.History<SkillFile>): SkillFile | undefined {
  let at = history;
  while (at.done.length > 0) {
    at = past.undo(at);
    if (past.getId(at) !== past.getId(history)) return at.doc;
  }
  return undefined;
}

export function createPage(services: Services): Page {
  const mark = services.startMark ?? makeStartMark();
  const { flying, keeper, presets } = services;
  const checked = makeChecked(flying.fly);
  const [known, setKnown] = createSignal(0);
  const { cutShort, ...start } = findStart(services, checked, keeper.kept, mark);
  const doc: DocumentState = createDocument({
    flying,
    known,
    ...start,
    dress: (file) => athletes.dress(file),
    begin: () => flight.begin(),
    writeVersion1: () => {
      const { fault, result, isWaiting } = flight.outcome();
      if (fault || isWaiting || result.file !== doc.file()) throw new Error(fault?.message ?? texts.files.notFlown);
      return flying.writeVersion1(result);
    },
    check: (file) => {
      try {
        flying.checkChain(file);
        checked.check(flying.legs.fileOf(file, 0));
      } catch (error) {
        // its swing is being computed: it is flown when that is known
        if (!isPending(error)) throw error;
        return isBeside(error) ? 'beside' : undefined;
      }
    },
    giveFiles: (files) => readFiles(page, files),
    giveWorksheet: (file) => shell.classDoor.give([file]),
    change: (apply, isStep) => {
      batch(() => {
        apply();
        cursor.clamp();
      });
      if (isStep) keeping.keepNow();
    },
  });
  const flight: FlightState = createFlight({
    flying: {
      ...flying,
      onRelease: (listener) =>
        flying.onRelease((file) => {
          batch(() => {
            setKnown(known() + 1);
            listener(file);
          });
        }),
    },
    shapes: presets.shapes,
    document: doc,
    checked,
    standIn: presets.standIn,
  });
  const cursor: CursorState = createCursor({
    flight,
    keptS: keeper.kept?.cursorS,
    moved: () => keeping.keepSoon(),
  });
  const athletes: Athletes = createAthletes({ doc, flight, flying });
  const shell: ShellState = createShell({ flight, cursor, doc, tools: services.tools });
  const offer = ({ doc: left, origin, original }: past.History<SkillFile>): void =>
    shell.notify({
      text: texts.files.cutShort(left.title),
      action: {
        title: texts.files.openIt,
        run: () => doc.openSoon(left, texts.files.opened(left.title), origin, original),
      },
      dismiss: texts.files.leaveIt,
    });
  const keeping: Keeping = createKeeping({
    keeper,
    history: doc.history,
    cursorS: cursor.at,
    notify: shell.notify,
    receive: (late) => {
      const now = doc.history();
      const isUntouched = now.mark === undefined && now.done.length + now.undone.length === 0 && !presets.asked;
      if (isUntouched) {
        const { history, fault, cutShort: left } = findStart(services, checked, late, mark);
        cursor.play.pause();
        doc.restore(history, fault);
        if (left) offer(left);
        cursor.set(late.cursorS);
      } else doc.restore(past.putUnder(late.history, now, shelfTexts.cameBefore), doc.fileFault());
      return isUntouched;
    },
    open: ({ history: { doc: file, origin, original } }) =>
      doc.open(file, texts.files.opened(file.title), origin, original),
  });
  createEffect(() => {
    if (!flight.outcome().isWaiting) mark.clear();
  });
  if (cutShort) offer(cutShort);
  const page: Page = {
    doc,
    flight,
    cursor,
    athletes,
    shell,
    keeping: {
      ...keeping,
      leave: () => {
        mark.clear();
        keeping.leave();
      },
    },
    services,
    keepState: makeStates(getOwner(), () => page),
    isFresh: keeper.kept === undefined,
  };
  return page;
}

/** Each state is made once, by its maker, and lives as long as the page. */
function makeStates(owner: Owner | null, page: () => Page): Page['keepState'] {
  const known = new Map<unknown, unknown>();
  return <T>(make: (page: Page) => T): T => {
    if (!known.has(make))
      known.set(
        make,
        runWithOwner(owner, () => make(page())),
      );
    return known.get(make) as T;
  };
}

export const PageContext = createContext<Page>();

export function usePage(): Page {
  const page = useContext(PageContext);
  if (!page) throw new Error('a component of the page outside of its context');
  return page;
}

export const useDocument = (): DocumentState => usePage().doc;
export const useFlight = (): FlightState => usePage().flight;
export const useCursor = (): CursorState => usePage().cursor;
export const useAthletes = (): Athletes => usePage().athletes;
export const useShell = (): ShellState => usePage().shell;
export const useServices = (): Services => usePage().services;

/** A hook to state that a feature keeps while it is closed: `useHand = keptState(makeHand)`. */
export const keptState =
  <T>(make: (page: Page) => T) =>
  (): T =>
    usePage().keepState(make);
