/** The worker's side: takes pieces in their order, opens the subject of a call once, reports, and stops between two steps. */
import type { JobKind } from './job.ts';
import type { JobName } from './job-table.ts';
import { dataOfError, type FromWorker, type ToWorker } from './message.ts';
import { takeSteps } from './take-steps.ts';

export type JobKinds = Readonly<
  Record<string, Pick<JobKind<never, never, unknown, unknown>, 'open' | 'latestEveryMs'>>
>;

interface ServeTools {
  readonly kinds: JobKinds;
  readonly post: (message: FromWorker) => void;
  /** ms */
  readonly clock: () => number;
  /** lets waiting messages in */
  readonly yieldToEventLoop: () => Promise<void>;
}

type PieceMessage = Extract<ToWorker, { kind: 'piece' }>;
type Run = Awaited<ReturnType<JobKinds[string]['open']>>;

export function serveJobs({ kinds, post, clock, yieldToEventLoop }: ServeTools): (message: ToWorker) => void {
  const queue: PieceMessage[] = [];
  const cancelled = new Set<number>();
  const finishing = new Set<number>();
  let open: { readonly call: number; readonly job: JobName; readonly run: Run } | undefined;
  let isWorking = false;

  const compute = async ({ call, index, piece, opens }: PieceMessage): Promise<FromWorker> => {
    if (opens && open?.call !== call)
      open = { call, job: opens.job, run: await kinds[opens.job].open(opens.subject as never) };
    if (open?.call !== call) throw new RangeError(`call ${call} was not opened here`);
    const report = (progress: unknown): void => post({ kind: 'progress', call, index, progress });
    const taken = await takeSteps(open.run(piece as never, report), {
      everyMs: kinds[open.job].latestEveryMs,
      clock,
      yieldToEventLoop,
      report,
      isFinishing: () => finishing.has(call),
      isCancelled: () => cancelled.has(call),
    });
    return taken ? { kind: 'result', call, index, result: taken.result } : { kind: 'dropped', call, index };
  };

  const work = async (): Promise<void> => {
    isWorking = true;
    for (let next = queue.shift(); next; next = queue.shift()) {
      const { call, index } = next;
      try {
        post(cancelled.has(call) ? { kind: 'dropped', call, index } : await compute(next));
      } catch (error) {
        post({ kind: 'failed', call, index, error: dataOfError(error) });
      }
      await yieldToEventLoop();
    }
    isWorking = false;
    cancelled.clear();
    finishing.clear();
  };

  return (message) => {
    if (message.kind === 'cancel') cancelled.add(message.call);
    else if (message.kind === 'finish') finishing.add(message.call);
    else {
      queue.push(message);
      if (!isWorking) void work();
    }
  };
}
