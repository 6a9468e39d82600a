/** Pictures that follow signals: drawn in the task that changed them, or, where that has enough to do, in the next frame. */
import { createReaction, onCleanup, onMount, untrack } from 'solid-js';

/**
 * Runs `paint` whenever something that it read has changed. When `subject` (what is drawn; a flight) is another one, the drawing
 * waits for the next frame: that task made it, and is long enough. The frame comes before anything of the page is painted:
 * words and picture are never those of two subjects.
 */
export function drawOnFrame(subject: () => unknown, paint: () => void): void {
  let frame = 0;
  let drawn: unknown;
  const draw = (): void => {
    frame = 0;
    drawn = untrack(subject);
    follow(paint);
  };
  const follow = createReaction(() => {
    if (subject() === drawn) draw();
    else frame ||= requestAnimationFrame(draw);
  });
  // a part that comes has made its elements in this task
  onMount(() => {
    frame = requestAnimationFrame(draw);
  });
  onCleanup(() => cancelAnimationFrame(frame));
}

/** What follows a press that has already changed the page: in a task of its own. */
export const inNextTask = (run: () => void): void => {
  setTimeout(run);
};

export const nextTask = (): Promise<void> => new Promise(inNextTask);

/** When the page has nothing else to do, or after `withinMs`; returns what takes it back. Safari has no such time: there it is after `withinMs`. */
export function whenIdle(run: () => void, withinMs = 2000): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(run, withinMs);
    return () => clearTimeout(timer);
  }
  const request = requestIdleCallback(run, { timeout: withinMs });
  return () => cancelIdleCallback(request);
}
