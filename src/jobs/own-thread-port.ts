/** The asking thread itself as a worker: its code is loaded and warm already. Messages are not copied. */
import { jobKinds } from './job-table.ts';
import type { FromWorker, JobPort } from './message.ts';
import { serveJobs } from './serve.ts';

export function startOwnThread(yieldToEventLoop: () => Promise<void>): JobPort {
  let post: ((message: FromWorker) => void) | undefined;
  const receive = serveJobs({
    kinds: jobKinds,
    post: (message) => post?.(message),
    clock: () => performance.now(),
    yieldToEventLoop,
  });
  return {
    // who asks goes on first, as with any worker
    post: (message) => void yieldToEventLoop().then(() => receive(message)),
    listen: (onMessage) => {
      post = onMessage;
    },
    close: () => {
      post = undefined;
    },
  };
}
