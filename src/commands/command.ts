/** A command: what it is called, which keys stand for it, when it can run. */
import type { Actions } from './actions.ts';

export type CommandGroup = 'time' | 'edit' | 'tool' | 'file' | 'view' | 'learn';

export interface Command {
  readonly id: string;
  readonly title: string;
  /** the title with what it would do now: "Undo: Edit line 3" */
  readonly titleNow?: (bench: Actions) => string;
  readonly group: CommandGroup;
  /** other words that it is found by */
  readonly words?: readonly string[];
  /** as "Mod+Shift+Z": Mod is Ctrl, or Cmd on a Mac */
  readonly keys: readonly string[];
  readonly when?: (bench: Actions) => boolean;
  /** why it cannot run, where `when` says no */
  readonly why?: string;
  readonly run: (bench: Actions) => void;
}
