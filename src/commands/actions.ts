export type ToolName = 'pose' | 'compare' | 'account' | 'contact' | 'ask' | 'estimate' | 'film' | 'class' | 'hand';

/** What is answered by the part of the page that knows it: the shelf, the exports, the code line, the units, the voice. */
export type DeferredCommand =
  | 'save-shelf'
  | 'save-copy'
  | 'csv'
  | 'svg'
  | 'png'
  | 'one-file'
  | 'licences'
  | 'say'
  | 'code'
  | 'try'
  | 'metric'
  | 'imperial'
  | 'revolutions'
  | 'degrees';

/** Work on picked keys; where none is picked, on the pose at the cursor. */
export interface KeyActions {
  hasPicked(): boolean;
  /** keys, not only edges of shapes */
  hasKeysPicked(): boolean;
  /** what is picked is at more than one instant */
  hasSpan(): boolean;
  canPaste(): boolean;
  copy(): void;
  paste(): void;
  mirror(): void;
  /** in time, about the first of them */
  scale(factor: number): void;
  remove(): void;
  /** of the open lane, else of the whole skill */
  pickAll(): void;
  /** at the cursor */
  pickHere(): void;
  pickNone(): void;
  nudge(byS: number): void;
}

/** What commands may do. The page lives in the app; the table knows only this. */
export interface Actions {
  readonly keys: KeyActions;
  /** what would be taken back, in words; undefined: nothing */
  readonly undoTitle: () => string | undefined;
  readonly redoTitle: () => string | undefined;
  readonly isPlaying: () => boolean;
  readonly isLooping: () => boolean;
  undo(): void;
  redo(): void;
  /** back to the mark of a gesture under way; false when there was none */
  abandon(): boolean;
  togglePlay(): void;
  toggleLoop(): void;
  setSpeed(rate: number): void;
  moveCursor(byS: number): void;
  goTo(event: 'takeoff' | 'apex' | 'touchdown'): void;
  goToShape(direction: 1 | -1): void;
  /** a moment is marked, to compare the cursor with */
  isMarked(): boolean;
  /** at the cursor, or away */
  toggleMark(): void;
  openPanel(
    panel:
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
      | 'start'
      | undefined,
  ): void;
  /** beside the bench */
  read(place: { readonly page: 'lessons' | 'glossary' }): void;
  hasTool(tool: ToolName): boolean;
  /** the same tool again closes it */
  openTool(tool: ToolName | undefined): void;
  /** the large stage: one view with a camera */
  readonly isLarge: () => boolean;
  toggleLarge(): void;
  zoomLarge(factor: number): void;
  fitLarge(): void;
  /** px */
  panLarge(dx: number, dy: number): void;
  followLarge(): void;
  /** the rows of the bench that are folded at first */
  toggleRows(): void;
  readonly isHall: () => boolean;
  setHall(on: boolean): void;
  ask(what: DeferredCommand): void;
  openFile(): void;
  saveFile(): void;
  /** the skill was made from a file of an older version, and is not saved since */
  hasOriginal(): boolean;
  saveOriginal(): void;
  /** for builds that know version 1 of the skill file only */
  saveVersion1(): void;
  setTheme(theme: 'system' | 'light' | 'dark'): void;
}
