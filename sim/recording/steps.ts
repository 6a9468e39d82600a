/** Work that pauses often, so that a page stays awake: each pause comes after some milliseconds. */

export interface ReadStep {
  /** share of the work done, 0 to 1 */
  readonly done: number;
}

export type Steps<T> = Generator<ReadStep, T, void>;

/** All of it at once. */
export function runSteps<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same steps as a share of something longer. */
export function* scaleSteps<T>(steps: Steps<T>, from: number, to: number): Steps<T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { done: from + (to - from) * step.value.done };
  }
}
