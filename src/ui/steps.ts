/** Work in short steps: some at once, the others each in a task of its own, so that the page is never held for long. */
export interface Stepping {
  /** all that is left at once */
  finish(): void;
  stop(): void;
}

/** `done` is called with what it ends with: at once where the first steps are all, else in a task of its own. */
export function runSteps<T>(
  steps: Generator<undefined, T, undefined>,
  atOnce: number,
  done: (value: T) => void,
): Stepping {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let found: { readonly value: T } | undefined;
  let isOver = false;
  const give = (): void => {
    if (isOver || !found) return;
    isOver = true;
    done(found.value);
  };
  const run = (most: number): void => {
    clearTimeout(timer);
    for (let i = 0; i < most && !found && !isOver; i++) {
      const { done: isDone, value } = steps.next();
      if (isDone) found = { value };
    }
  };
  const runLater = (): void => {
    timer = setTimeout(() => {
      run(1);
      if (found) timer = setTimeout(give);
      else if (!isOver) runLater();
    });
  };
  const finish = (): void => {
    run(Number.POSITIVE_INFINITY);
    give();
  };
  run(atOnce);
  if (found) give();
  else if (!isOver) runLater();
  return {
    finish,
    stop: () => {
      isOver = true;
      clearTimeout(timer);
    },
  };
}
