/** Work that pauses often, so that a page stays awake: each pause comes after some milliseconds. */

interface ReadStep {
  /** share of the work done, 0 to 1 */
  readonly done: number;
}

export type ReadSteps<T> = Generator<ReadStep, T, void>;

/** All of it at once. */
export function runSteps<T>(steps: ReadSteps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same steps as a share of something longer. */
export function* scaleSteps<T>(steps: ReadSteps<T>, from: number, to: number): ReadSteps<T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { done: from + (to - from) * step.value.done };
  }
}

/** The same for work that counts its progress as a number alone. */
export function* sharesOf<T>(steps: ReadSteps<T>): Generator<number, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield step.value.done;
  }
}
