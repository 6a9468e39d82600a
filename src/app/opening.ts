/** A document that is read or flown beside the page before it is opened: the one before stays, and can be worked on, until it has come. */
import { type Accessor, createSignal, untrack } from 'solid-js';

interface Opening {
  readonly name: string;
  cancel(): void;
}

interface Coming<T> {
  readonly done: Promise<T>;
  cancel(): void;
}

interface Heard<T> {
  come(value: T): void;
  fail(error: unknown): void;
  cancelled(): void;
}

export interface OpeningState {
  /** what is waited for */
  readonly now: Accessor<Opening | undefined>;
  /** leaves everything as it is; false when nothing is waited for */
  cancel(): boolean;
  /** the newest alone: the one before is cancelled. Of one that was cancelled no more is heard than that */
  wait<T>(name: string, coming: Coming<T>, heard: Heard<T>): void;
}

export function createOpening(): OpeningState {
  const [now, setNow] = createSignal<Opening>();
  const cancel = (): boolean => {
    const waiting = untrack(now);
    setNow(undefined);
    waiting?.cancel();
    return waiting !== undefined;
  };
  return {
    now,
    cancel,
    wait: (name, coming, { come, fail, cancelled }) => {
      cancel();
      const mine = {
        name,
        cancel: () => {
          coming.cancel();
          cancelled();
        },
      };
      setNow(mine);
      const end =
        <V>(go: (value: V) => void) =>
        (value: V): void => {
          if (untrack(now) !== mine) return;
          setNow(undefined);
          go(value);
        };
      coming.done.then(end(come), end(fail));
    },
  };
}
