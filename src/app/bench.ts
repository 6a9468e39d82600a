/**
 * The bench: the document's history, the flight it makes, and the one cursor through everything. Coarse signals only:
 * an edit flies the skill at once, and whoever shows it draws in the same frame.
 */
import { type Accessor, batch, createMemo, createSignal } from 'solid-js';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import type { Asked, BenchActions, ToolName } from '../commands/actions.ts';
import * as past from '../document/history.ts';
import { getLanes, type Lane } from '../document/lanes.ts';
import { type BlockSpan, findSpan, getSpans } from '../document/spans.ts';
import type { AnchorSeconds } from '../document/times.ts';
import { readVersions, type Versions, writeVersions } from '../document/versions.ts';
import type { Caution, FlightResult, Outcome, Outline } from '../engine/result.ts';
import type { StageExtras } from '../pictures/stage-input.ts';
import { setTheme, type Theme } from '../ui/theme.ts';
import { fileName, pickFile, saveText } from './file-door.ts';
import { type KeyWork, makeKeyWork } from './key-work.ts';
import { createLarge, type LargeStage } from './large.ts';
import { makePlayback, type Playback } from './playback.ts';
import type { BenchPorts } from './ports.ts';
import { wordFault } from './say/fault-words.ts';
import { shelfTexts } from './shelf-words.ts';
import type { Undoing } from './undoing.ts';
import { texts } from './words.ts';

export type PanelName = 'skills' | 'shapes' | 'values' | 'help' | 'joints' | 'menu' | 'commands' | 'print';

export interface Notice {
  readonly text: string;
  readonly action?: { readonly title: string; run(): void };
}

export interface Bench extends BenchActions {
  readonly ports: BenchPorts;
  /** several keys at once */
  readonly keys: KeyWork;
  readonly file: Accessor<SkillFile>;
  /** the athlete of the document, looked up where it is a reference */
  readonly athlete: Accessor<Athlete>;
  readonly outcome: Accessor<Outcome>;
  readonly result: Accessor<FlightResult>;
  readonly anchors: Accessor<AnchorSeconds>;
  readonly spans: Accessor<BlockSpan[]>;
  readonly lanes: Accessor<Lane[]>;
  readonly cursor: Accessor<number>;
  setCursor(s: number): void;
  readonly play: Playback;
  /** undo and redo go to what has taken them, as long as it has; otherwise to the skill */
  takeUndo(by: Undoing | undefined): void;
  /** what was done to the skill */
  readonly skillUndo: Undoing;
  /** joints beyond their limits, and what passes through the body; the latter rest while a hand is at work */
  readonly cautions: Accessor<readonly Caution[]>;
  /** the result before the gesture under way */
  readonly before: Accessor<Outline | undefined>;
  /** starts a gesture and gives the document it starts from */
  begin(): SkillFile;
  draft(file: SkillFile): void;
  settle(title: string): void;
  edit(file: SkillFile, title: string): void;
  /** versions beside the document, and a step that changes both */
  readonly versions: Accessor<Versions>;
  editVersions(file: SkillFile, versions: Versions, title: string): void;
  readonly panel: Accessor<PanelName | undefined>;
  readonly tool: Accessor<ToolName | undefined>;
  /** what the open tools add to the pictures above the floor */
  readonly stageExtras: Accessor<StageExtras>;
  addStageExtras(extras: StageExtras): void;
  readonly large: LargeStage;
  /** grows when a flight that was waited for can be flown: what comes before it is known */
  readonly released: Accessor<number>;
  readonly theme: Accessor<Theme>;
  readonly kept: Accessor<boolean>;
  readonly pin: Accessor<number | undefined>;
  setPin(s: number | undefined): void;
  readonly fileFault: Accessor<{ name: string; reason: string } | undefined>;
  clearFileFault(): void;
  readText(name: string, text: string): void;
  keepNow(): void;
  /** the page is looked at again */
  checkKept(): void;
  /** the page goes away */
  leave(): void;
  /** the entry of the shelf that the document belongs to */
  readonly origin: Accessor<past.Origin | undefined>;
  setOrigin(origin: past.Origin | undefined): void;
  /** another document in one step */
  open(file: SkillFile, title: string, origin?: past.Origin): void;
  /** the athlete of a file that was opened or dropped: whoever keeps the shelf takes it */
  readonly athleteRead: Accessor<Athlete | undefined>;
  readonly notice: Accessor<Notice | undefined>;
  /** whoever can answer what commands ask */
  setAnswer(answer: (what: Asked) => void): void;
  /** one line that something happened, with a way back or on */
  tell(notice: Notice | undefined): void;
  /** nothing was kept: the demo opens with its own cursor */
  readonly fresh: boolean;
}

export function createBench(ports: BenchPorts): Bench {
  const { kept } = ports.keeper;
  const [history, setHistory] = createSignal(past.makeHistory(ports.first));
  if (kept) setHistory(kept.history);
  let firstFault: string | undefined;
  try {
    ports.fly(history().doc);
  } catch (error) {
    // a kept document that no longer flies must not lock the bench: the demo opens, undo still reaches the past
    firstFault = error instanceof Error ? error.message : String(error);
    if (kept) setHistory(past.edit(history(), ports.first, texts.files.opened(ports.first.title)));
  }
  const [cursor, setCursorSignal] = createSignal(0);
  const [panel, setPanel] = createSignal<PanelName>();
  const [tool, setTool] = createSignal<ToolName>();
  const [stageExtras, setStageExtras] = createSignal<StageExtras>({});
  const [isKept, setKept] = createSignal(true);
  const [pin, setPin] = createSignal<number>();
  const [theme, setThemeSignal] = createSignal<Theme>(setTheme());
  const [fileFault, setFileFault] = createSignal<{ name: string; reason: string } | undefined>(
    firstFault && kept ? { name: kept.history.doc.title, reason: firstFault } : undefined,
  );
  const [athleteRead, setAthleteRead] = createSignal<Athlete | undefined>(undefined, { equals: false });
  const [notice, setNotice] = createSignal<Notice>();
  let answer: ((what: Asked) => void) | undefined;
  const file = createMemo(() => history().doc);
  const beside = createMemo(() => history().beside);
  const versions = createMemo(() => readVersions(beside()));

  const [released, setReleased] = createSignal(0);
  ports.onRelease(() => setReleased(released() + 1));
  let flownAt = 0;
  const outcome = createMemo<Outcome>((last) => {
    const doc = file();
    const isSame = released() === flownAt;
    flownAt = released();
    const inDrag = history().mark !== undefined;
    if (last && isSame && last.result.file === doc && (inDrag || !last.result.draft)) return { result: last.result };
    try {
      return { result: ports.fly(doc, inDrag ? last?.result : undefined) };
    } catch (error) {
      if (last && isPending(error)) return { result: last.result, isWaiting: true };
      if (last) return { result: last.result, fault: { message: wordFault(error) } };
      throw error;
    }
  });
  const result = createMemo(() => outcome().result);
  const anchors = createMemo<AnchorSeconds>(() => ({
    apex: result().outline.apex,
    touchdown: result().flight.duration,
  }));
  // spans follow the document that was flown, so that picture and edges never disagree
  const spans = createMemo(() => getSpans(result().file, ports.shapes, anchors()));
  const lanes = createMemo(() => getLanes(result().file, result().flight.body, result().frames, spans(), anchors()));

  let beforeOutline: Outline | undefined;
  const [before, setBefore] = createSignal<Outline>();
  const cautions = createMemo<readonly Caution[]>(() =>
    before() ? result().cautions : [...result().cautions, ...ports.overlaps(result())],
  );

  const keepNow = (): void => {
    void ports.keeper.write({ history: history(), cursorS: cursor() }).then(setKept);
  };
  ports.keeper.watch((news) => {
    if (news === 'newer') setNotice({ text: shelfTexts.newerKept });
    else setKept(news === 'kept');
    if (news === 'deleted') setNotice({ text: shelfTexts.databaseDeleted });
  });
  let keepTimer: ReturnType<typeof setTimeout> | undefined;
  const keepSoon = (): void => {
    clearTimeout(keepTimer);
    keepTimer = setTimeout(keepNow, 400);
  };
  const change = (next: past.History<SkillFile>): void => {
    batch(() => {
      setHistory(next);
      if (next.mark === undefined) {
        beforeOutline = undefined;
        setBefore(undefined);
      }
      const end = result().flight.duration;
      if (cursor() > end) setCursorSignal(end);
    });
    if (next.mark === undefined) keepNow();
  };
  const setCursor = (s: number): void => {
    setCursorSignal(Math.min(Math.max(s, 0), result().flight.duration));
    keepSoon();
  };
  const large = createLarge(result, cursor);
  const play = makePlayback(cursor, setCursor, () => result().flight.duration);

  const begin = (): SkillFile => {
    const h = history();
    if (h.mark === undefined) {
      beforeOutline = result().outline;
      setHistory(past.setMark(h));
    }
    return h.mark ?? h.doc;
  };
  const readText = (name: string, text: string): void => {
    const fail = (reason: string): void => {
      setFileFault({ name, reason });
    };
    let json: unknown;
    try {
      json = JSON.parse(text);
    } catch (error) {
      fail(texts.files.notJson(error instanceof Error ? error.message : String(error)));
      return;
    }
    try {
      if (isAthlete(json)) {
        const athlete = ports.readAthlete(json);
        setFileFault(undefined);
        setAthleteRead(athlete);
        return;
      }
      const read = ports.readFile(json);
      try {
        ports.fly(read);
      } catch (error) {
        // its swing is being computed: it is flown when that is known
        if (!isPending(error)) throw error;
      }
      setFileFault(undefined);
      change(past.open(history(), read, texts.files.opened(read.title)));
    } catch (error) {
      fail(`${wordFault(error)}.`);
    }
  };

  if (kept) setCursorSignal(Math.min(Math.max(kept.cursorS, 0), result().flight.duration));
  else setCursorSignal(Math.round(result().flight.duration * 45) / 100);

  const skillUndo: Undoing = {
    undoTitle: () => history().done.at(-1)?.title,
    redoTitle: () => history().undone.at(-1)?.title,
    undo: () => change(past.undo(history())),
    redo: () => change(past.redo(history())),
  };
  const [undoing, setUndo] = createSignal(skillUndo);
  const setUndoing = (by: Undoing | undefined): void => void setUndo(() => by ?? skillUndo);

  const bench: Omit<Bench, 'keys'> = {
    ports,
    file,
    athlete: () => ports.findAthlete(file()),
    outcome,
    result,
    anchors,
    spans,
    lanes,
    cursor,
    setCursor,
    play,
    cautions,
    before,
    begin,
    draft: (doc) => {
      batch(() => {
        setHistory(past.setDraft(history(), doc));
        if (beforeOutline) setBefore(beforeOutline);
      });
    },
    settle: (title) => change(past.settle(history(), title)),
    edit: (doc, title) => change(past.edit(past.abandon(history()), doc, title)),
    versions,
    editVersions: (doc, list, title) => change(past.edit(past.abandon(history()), doc, title, writeVersions(list))),
    takeUndo: setUndoing,
    skillUndo,
    undoTitle: () => undoing().undoTitle(),
    redoTitle: () => undoing().redoTitle(),
    undo: () => undoing().undo(),
    redo: () => undoing().redo(),
    abandon: () => {
      if (history().mark === undefined) return false;
      change(past.abandon(history()));
      return true;
    },
    isPlaying: play.playing,
    isLooping: play.looping,
    togglePlay: play.toggle,
    toggleLoop: play.toggleLoop,
    setSpeed: play.setRate,
    moveCursor: (byS) => {
      play.pause();
      setCursor(Math.round((cursor() + byS) * 100) / 100);
    },
    goTo: (event) => {
      play.pause();
      const { apex, touchdown } = anchors();
      setCursor(event === 'takeoff' ? 0 : event === 'apex' ? apex : touchdown);
    },
    goToShape: (direction) => {
      play.pause();
      const starts = spans().map((s) => Math.max(s.from, 0));
      const here = cursor();
      const next =
        direction > 0
          ? (starts.find((s) => s > here + 1e-6) ?? anchors().touchdown)
          : ([...starts].reverse().find((s) => s < here - 1e-6) ?? 0);
      setCursor(next);
    },
    panel,
    openPanel: (name) => setPanel(panel() === name ? undefined : name),
    tool,
    hasTool: (name) => ports.tools.includes(name),
    openTool: (name) => {
      // both want the room under and over the floor
      if (large.isOpen()) large.toggle();
      setTool(tool() === name ? undefined : name);
    },
    stageExtras,
    large,
    released,
    toggleLarge: () => {
      setTool(undefined);
      large.toggle();
    },
    isLarge: large.isOpen,
    zoomLarge: (factor) => large.zoom(factor),
    fitLarge: () => large.fit(),
    panLarge: (dx, dy) => large.pan(dx, dy),
    followLarge: () => large.toggleFollow(),
    addStageExtras: (extras) => setStageExtras({ ...stageExtras(), ...extras }),
    openFile: () => pickFile(readText),
    saveFile: () => saveText(fileName(file().title), `${JSON.stringify(file(), null, 2)}\n`),
    theme,
    setTheme: (name) => {
      setThemeSignal(setTheme(name));
    },
    kept: isKept,
    pin,
    setPin,
    fileFault,
    clearFileFault: () => setFileFault(undefined),
    readText,
    keepNow,
    checkKept: () => void ports.keeper.check(),
    fresh: kept === undefined,
    leave: () => ports.keeper.leave({ history: history(), cursorS: cursor() }),
    origin: () => history().origin,
    setOrigin: (origin) => change(past.withOrigin(history(), origin)),
    open: (doc, title, origin) => change(past.open(history(), doc, title, origin)),
    athleteRead,
    notice,
    tell: setNotice,
    ask: (what) => answer?.(what),
    setAnswer: (given) => {
      answer = given;
    },
  };
  return { ...bench, keys: makeKeyWork(bench) };
}

/** What comes before the flight is being computed. */
export const isPending = (error: unknown): boolean => error instanceof Error && error.name === 'ReleasePendingError';

/** An athlete's file says so, or it is the athlete alone. */
function isAthlete(json: unknown): boolean {
  if (typeof json !== 'object' || json === null) return false;
  const { format, kind } = json as Record<string, unknown>;
  return format === undefined ? kind === 'human' || kind === 'tree' : format === 'shapeflight-athlete';
}

/** The shape at t in words: "wrapped", or "moving to wrapped". */
export function nameShape(spans: readonly BlockSpan[], t: number): string {
  const found = findSpan(spans, t);
  if (!found) return '';
  return found.held ? found.span.title : texts.cut.inMove(found.span.word);
}
