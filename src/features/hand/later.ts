/** What takes a while to draw is drawn in tasks of its own, after the press that asked for it was answered. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { Pieces } from '../../scene/pieces.ts';

/** A task ends with the piece that is at work when so many ms are over: what is pressed meanwhile is answered. */
const TASK_MS = 8;

export interface Later<T> {
  /** the last that was made: seen until the next is there */
  readonly shown: Accessor<T | undefined>;
  /** of what is asked for now, and of nothing before: what is printed, kept or handed on */
  readonly made: Accessor<T | undefined>;
}

export function useLater<T>(ask: Accessor<(() => Pieces<T>) | undefined>): Later<T> {
  const asked = createMemo(ask);
  const [last, setLast] = createSignal<{ readonly of: () => Pieces<T>; readonly value: T }>();
  createEffect(() => {
    const make = asked();
    if (make) onCleanup(takePieces(make(), (value) => setLast({ of: make, value })));
  });
  return {
    shown: () => last()?.value,
    made: () => {
      const one = last();
      return one !== undefined && one.of === asked() ? one.value : undefined;
    },
  };
}

/** Returns what stops it. */
export function takePieces<T>(pieces: Pieces<T>, end: (value: T) => void): () => void {
  const task = (): void => {
    const until = performance.now() + TASK_MS;
    do {
      const step = pieces.next();
      if (step.done) {
        end(step.value);
        return;
      }
    } while (performance.now() < until);
    timer = setTimeout(task);
  };
  let timer = setTimeout(task);
  return () => clearTimeout(timer);
}
