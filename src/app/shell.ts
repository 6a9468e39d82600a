/** The page around the skill: which panel and tool are open, the large stage, colours, notices, what tools add to the stage. */
import { type Accessor, createComputed, createSignal, on } from 'solid-js';
import type { DeferredCommand, ToolName } from '../commands/actions.ts';
import { readClassTab } from '../ui/stored.ts';
import { setTheme, type Theme } from '../ui/theme.ts';
import { readAddress, writeHall, writeRows } from './address.ts';
import { type AnswerState, createAnswer } from './answer.ts';
import { type BesideState, createBeside } from './beside.ts';
import { type ClassDoor, createClassDoor } from './class-door.ts';
import { type ClipDoor, createClipDoor } from './clip-door.ts';
import type { CursorState } from './cursor.ts';
import type { DocumentState } from './document.ts';
import type { FlightState } from './flight.ts';
import { createFloorTaking, type FloorTaking } from './floor-time.ts';
import { createLarge, type LargeStage } from './large.ts';
import type { ReadPlace } from './reading.ts';
import { createRows, type RowsState } from './rows.ts';
import { createSheetDoor, type SheetDoor } from './sheet-door.ts';
import { createStageProviders, type StageProviders } from './stage-extras.ts';
import { createToolPlaces, type ToolPlaces } from './tool-places.ts';
import type { Undoing } from './undoing.ts';

export type PanelName =
  | 'skills'
  | 'shapes'
  | 'values'
  | 'athlete'
  | 'help'
  | 'joints'
  | 'menu'
  | 'commands'
  | 'print'
  | 'about'
  | 'start';

/** These say nothing of a flight. */
const OVER_CLASS: readonly PanelName[] = ['menu', 'commands', 'help'];

export interface Notice {
  readonly text: string;
  readonly action?: { readonly title: string; run(): void };
  /** what the press that puts it away says; left out: Close */
  readonly dismiss?: string;
}

export interface ShellState {
  readonly panel: Accessor<PanelName | undefined>;
  /** the same panel again closes it; one about the skill of the bench leads back there */
  openPanel(panel: PanelName | undefined): void;
  /** what is read beside the bench */
  readonly reading: Accessor<ReadPlace | undefined>;
  read(place: ReadPlace | undefined): void;
  readonly tool: Accessor<ToolName | undefined>;
  hasTool(tool: ToolName): boolean;
  /** the same tool again closes it */
  openTool(tool: ToolName | undefined): void;
  /** the open tool has the height of the pictures too; undefined: as it is usual for the tool on this page */
  readonly tall: Accessor<boolean | undefined>;
  setTall(on: boolean): void;
  /** where the open tool puts its parts */
  readonly places: ToolPlaces;
  /** a tool about more than the flight has its own time on the floor */
  readonly floor: FloorTaking;
  readonly large: LargeStage;
  toggleLarge(): void;
  /** which rows of the bench are open; the address says it too */
  readonly rows: RowsState;
  /** a worksheet that is opened anywhere on the page */
  readonly classDoor: ClassDoor;
  /** a line for the open estimate sheet */
  readonly sheetDoor: SheetDoor;
  /** a clip that may go along where it is asked for */
  readonly clipDoor: ClipDoor;
  /** for a projector and a bright gym: large text, strong lines, no names */
  readonly hall: Accessor<boolean>;
  setHall(on: boolean): void;
  /** what open tools add to the pictures above the floor */
  readonly stage: StageProviders;
  /** another way of the skill, in the same rows */
  readonly beside: BesideState;
  /** what undo and redo go to: the skill, or what has taken them for as long as it has */
  readonly undoing: Accessor<Undoing>;
  takeUndo(by: Undoing | undefined): void;
  readonly theme: Accessor<Theme>;
  setTheme(theme: Theme): void;
  readonly notice: Accessor<Notice | undefined>;
  /** the sentence under the headline */
  readonly answer: AnswerState;
  /** one line that something happened, with a way back or on */
  notify(notice: Notice | undefined): void;
  /** what commands ask, for the part of the page that can answer */
  ask(what: DeferredCommand): void;
  setAnswer(answer: (what: DeferredCommand) => void): void;
}

interface ShellHost {
  readonly flight: Pick<FlightState, 'result' | 'id'>;
  readonly cursor: Pick<CursorState, 'at'>;
  readonly doc: Pick<DocumentState, 'id' | 'undoTitle' | 'redoTitle' | 'undoSoon' | 'redoSoon'>;
  readonly tools: readonly ToolName[];
}

export function createShell({ flight, cursor, doc, tools }: ShellHost): ShellState {
  const [panel, setPanel] = createSignal<PanelName>();
  const [reading, setReading] = createSignal<ReadPlace>();
  // a reload of the room of a class comes back to it: the bench is not shown between
  const [tool, setTool] = createSignal<ToolName | undefined>(readClassTab() === null ? undefined : 'class');
  const [tall, setTall] = createSignal<boolean>();
  const [theme, setThemeSignal] = createSignal<Theme>(setTheme());
  const [notice, setNotice] = createSignal<Notice>();
  const [taken, setTaken] = createSignal<Undoing>();
  const large = createLarge(flight, cursor.at);
  const asked = readAddress(globalThis.location?.search ?? '');
  const [hall, setHall] = createSignal(asked.hall);
  const rows = createRows(asked.rows);
  createComputed(
    on(rows.open, (open) => history.replaceState(null, '', writeRows(location.href, open)), { defer: true }),
  );
  createComputed(
    on(hall, (isHall) => history.replaceState(null, '', writeHall(location.href, isHall)), { defer: true }),
  );
  const ofDocument: Undoing = { ...doc, undo: doc.undoSoon, redo: doc.redoSoon };
  let answer: ((what: DeferredCommand) => void) | undefined;
  const openTool = (name: ToolName | undefined): void => {
    // both want the room under and over the floor
    if (large.isOpen()) large.toggle();
    setTall(undefined);
    setHall(false);
    setTool(tool() === name ? undefined : name);
  };
  return {
    panel,
    openPanel: (name) => {
      if (name && tool() === 'class' && !OVER_CLASS.includes(name)) openTool(undefined);
      setPanel(panel() === name ? undefined : name);
    },
    reading,
    read: (place) => {
      setPanel(undefined);
      setReading(place);
    },
    tool,
    hasTool: (name) => tools.includes(name),
    openTool,
    classDoor: createClassDoor(() => {
      setPanel(undefined);
      if (tool() !== 'class') openTool('class');
    }),
    sheetDoor: createSheetDoor(),
    clipDoor: createClipDoor(),
    tall,
    setTall,
    places: createToolPlaces(),
    floor: createFloorTaking(),
    large,
    toggleLarge: () => {
      setTool(undefined);
      setHall(false);
      large.toggle();
    },
    rows,
    hall,
    setHall: (isHall) => {
      // tools and the large stage are not for a hall
      if (isHall) setTool(undefined);
      if (isHall && large.isOpen()) large.toggle();
      setHall(isHall);
    },
    stage: createStageProviders(),
    beside: createBeside(),
    undoing: () => taken() ?? ofDocument,
    takeUndo: setTaken,
    theme,
    setTheme: (name) => {
      setThemeSignal(setTheme(name));
    },
    answer: createAnswer(doc.id),
    notice,
    notify: setNotice,
    ask: (what) => answer?.(what),
    setAnswer: (given) => {
      answer = given;
    },
  };
}
