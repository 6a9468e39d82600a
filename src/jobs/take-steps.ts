/** Takes the steps of a job: reports, lets messages in, and ends it early when it is asked to. */
import type { Steps } from './job.ts';

interface StepTools<Progress> {
  /** reports and yields at most this often, ms; left out: at every step */
  readonly everyMs?: number;
  /** ms */
  readonly clock: () => number;
  readonly yieldToEventLoop: () => Promise<void>;
  report(progress: Progress): void;
  /** the job should end with what it has */
  isFinishing(): boolean;
  /** nothing of it is wanted */
  isCancelled(): boolean;
}

/** The result; undefined after a cancel. */
export async function takeSteps<Progress, Result>(
  steps: Steps<Progress, Result>,
  tools: StepTools<Progress>,
): Promise<{ readonly result: Result } | undefined> {
  const { everyMs, clock } = tools;
  let last = clock();
  for (;;) {
    const { done, value } = await steps.next(tools.isFinishing());
    if (done) return { result: value };
    if (everyMs !== undefined && clock() - last < everyMs) continue;
    tools.report(value);
    await tools.yieldToEventLoop();
    last = clock();
    if (tools.isCancelled()) return undefined;
  }
}
