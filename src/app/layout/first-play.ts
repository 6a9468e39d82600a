/** A fresh opening plays the flight once. Any press before or meanwhile leaves the cursor where it is. */
import type { Playback } from '../playback.ts';

/** The play button and its key stop by themselves: a second stop would start it again. */
function stopsItself(e: Event): boolean {
  if (!(e.target instanceof Element)) return false;
  if (e instanceof KeyboardEvent) return e.key === ' ' && e.target.closest('button:not(.play), a, input') === null;
  return e.target.closest('button.play') !== null;
}

/** Returns what takes the listeners away. */
export function playFirst(play: Playback): () => void {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return () => {};
  let request = 0;
  const away = (): void => {
    cancelAnimationFrame(request);
    removeEventListener('pointerdown', stop, true);
    removeEventListener('keydown', stop, true);
  };
  const stop = (e: Event): void => {
    away();
    if (!stopsItself(e)) play.pause();
  };
  // not before the first picture is drawn: the figures come later than the curves
  const wait = (): void => {
    if (document.querySelector('canvas[data-ready="true"]')) play.fromTakeoff();
    else request = requestAnimationFrame(wait);
  };
  addEventListener('pointerdown', stop, true);
  addEventListener('keydown', stop, true);
  request = requestAnimationFrame(wait);
  return away;
}
