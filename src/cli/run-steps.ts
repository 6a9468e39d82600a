/** Takes the steps of a search on this thread; Ctrl+C ends it with what it has. */
import type { Steps } from '../jobs/job.ts';
import { takeSteps } from '../jobs/take-steps.ts';
import { onInterrupt, yieldToEventLoop } from './interrupt.ts';
import { makeProgressLine, type ProgressLine } from './progress-line.ts';

/** Signals are looked for this often, ms. */
const LISTEN = 30;

export async function runSteps<Progress, Result>(
  steps: Steps<Progress, Result>,
  /** done, and all */
  countOf: (progress: Progress) => readonly [number, number],
  line: ProgressLine = makeProgressLine('solve'),
): Promise<{ readonly result: Result; readonly isInterrupted: boolean }> {
  let isInterrupted = false;
  const unsubscribe = onInterrupt(() => {
    isInterrupted = true;
  });
  try {
    const taken = await takeSteps(steps, {
      everyMs: LISTEN,
      clock: () => performance.now(),
      yieldToEventLoop,
      report: (progress) => line.show(...countOf(progress)),
      isFinishing: () => isInterrupted,
      isCancelled: () => false,
    });
    if (!taken) throw new Error('a search that was not cancelled has no result');
    return { result: taken.result, isInterrupted };
  } finally {
    unsubscribe();
    line.end();
  }
}
