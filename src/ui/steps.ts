/** Work in short steps: some at once, the others each in a task of its own, so that the page is never held for long. */
export interface Stepping {
  /** all that is left at once */
  finish(): void;
  stop(): void;
}

/** `done` is called with what it ends with, in the task of its last step. */
export function runSteps<T>(
  steps: Generator<undefined, T, undefined>,
  atOnce: number,
  done: (value: T) => void,
): Stepping {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isOver = false;
  const run = (most: number): void => {
    clearTimeout(timer);
    for (let i = 0; i < most && !isOver; i++) {
      const { done: isDone, value } = steps.next();
      if (!isDone) continue;
      isOver = true;
      done(value);
    }
    if (!isOver) timer = setTimeout(() => run(1));
  };
  run(atOnce);
  return {
    finish: () => run(Number.POSITIVE_INFINITY),
    stop: () => {
      isOver = true;
      clearTimeout(timer);
    },
  };
}
