/** The page around the skill: which panel and tool are open, the large stage, colours, notices, what tools add to the stage. */
import { type Accessor, createSignal } from 'solid-js';
import type { DeferredCommand, ToolName } from '../commands/actions.ts';
import { setTheme, type Theme } from '../ui/theme.ts';
import type { CursorState } from './cursor.ts';
import type { FlightState } from './flight.ts';
import { createLarge, type LargeStage } from './large.ts';
import { createStageProviders, type StageProviders } from './stage-extras.ts';
import type { Undoing } from './undoing.ts';

export type PanelName = 'skills' | 'shapes' | 'values' | 'help' | 'joints' | 'menu' | 'commands' | 'print';

export interface Notice {
  readonly text: string;
  readonly action?: { readonly title: string; run(): void };
}

export interface ShellState {
  readonly panel: Accessor<PanelName | undefined>;
  /** the same panel again closes it */
  openPanel(panel: PanelName | undefined): void;
  readonly tool: Accessor<ToolName | undefined>;
  hasTool(tool: ToolName): boolean;
  /** the same tool again closes it */
  openTool(tool: ToolName | undefined): void;
  readonly large: LargeStage;
  toggleLarge(): void;
  /** what open tools add to the pictures above the floor */
  readonly stage: StageProviders;
  /** what undo and redo go to: the skill, or what has taken them for as long as it has */
  readonly undoing: Accessor<Undoing>;
  takeUndo(by: Undoing | undefined): void;
  readonly theme: Accessor<Theme>;
  setTheme(theme: Theme): void;
  readonly notice: Accessor<Notice | undefined>;
  /** one line that something happened, with a way back or on */
  notify(notice: Notice | undefined): void;
  /** what commands ask, for the part of the page that can answer */
  ask(what: DeferredCommand): void;
  setAnswer(answer: (what: DeferredCommand) => void): void;
}

interface ShellHost {
  readonly flight: Pick<FlightState, 'result' | 'id'>;
  readonly cursor: Pick<CursorState, 'at'>;
  readonly doc: Undoing;
  readonly tools: readonly ToolName[];
}

export function createShell({ flight, cursor, doc, tools }: ShellHost): ShellState {
  const [panel, setPanel] = createSignal<PanelName>();
  const [tool, setTool] = createSignal<ToolName>();
  const [theme, setThemeSignal] = createSignal<Theme>(setTheme());
  const [notice, setNotice] = createSignal<Notice>();
  const [taken, setTaken] = createSignal<Undoing>();
  const large = createLarge(flight, cursor.at);
  let answer: ((what: DeferredCommand) => void) | undefined;
  return {
    panel,
    openPanel: (name) => setPanel(panel() === name ? undefined : name),
    tool,
    hasTool: (name) => tools.includes(name),
    openTool: (name) => {
      // both want the room under and over the floor
      if (large.isOpen()) large.toggle();
      setTool(tool() === name ? undefined : name);
    },
    large,
    toggleLarge: () => {
      setTool(undefined);
      large.toggle();
    },
    stage: createStageProviders(),
    undoing: () => taken() ?? doc,
    takeUndo: setTaken,
    theme,
    setTheme: (name) => {
      setThemeSignal(setTheme(name));
    },
    notice,
    notify: setNotice,
    ask: (what) => answer?.(what),
    setAnswer: (given) => {
      answer = given;
    },
  };
}
