import * as past from '../document/history.ts';

/** What undo and redo act on: the open skill, or what has the focus and a past of its own. */
export interface Undoing {
  /** what would be taken back, in words; undefined: nothing */
  readonly undoTitle: () => string | undefined;
  readonly redoTitle: () => string | undefined;
  undo(): void;
  redo(): void;
}

interface OwnPast<T> {
  history(): past.History<T>;
  set(next: past.History<T>): void;
  /** makes a step of what is being typed */
  settle(): void;
  /** its title; "" while nothing is typed */
  typing(): string;
}

/** Of a part with a history of its own, in which what is typed becomes a step when it rests. */
export const undoingOf = <T>({ history, set, settle, typing }: OwnPast<T>): Undoing => ({
  undoTitle: () => (history().mark === undefined ? history().done.at(-1)?.title : typing()),
  redoTitle: () => (history().mark === undefined ? history().undone.at(-1)?.title : undefined),
  undo: () => {
    settle();
    set(past.undo(history()));
  },
  redo: () => {
    settle();
    set(past.redo(history()));
  },
});

/** What is pressed on the way to undo (its buttons, the list of commands) has this, and leaves undo with what had it. */
const LEAVES = '[data-leaves-undo], dialog:has([data-leaves-undo])';

/**
 * Gives undo to a part of the page while it is worked in, by focus or by a press. Called with the part; gives the way to stop.
 * Focus that goes to a frame around the part says nothing: it is set there when a button inside it has gone.
 */
export function watchUndoFocus(part: Element, take: (has: boolean) => void): () => void {
  const onEnter = ({ target, type }: Event): void => {
    if (!(target instanceof Element)) return;
    if (part.contains(target)) take(true);
    else if (!target.closest(LEAVES) && !(type === 'focusin' && target.contains(part))) take(false);
  };
  document.addEventListener('focusin', onEnter);
  document.addEventListener('pointerdown', onEnter, true);
  return () => {
    document.removeEventListener('focusin', onEnter);
    document.removeEventListener('pointerdown', onEnter, true);
  };
}
