/** A worker in this thread: messages wait their turn, as between threads, and are copied as threads copy them. */
import { jobKinds } from '../../src/jobs/job-table.ts';
import type { FromWorker, JobPort, ToWorker } from '../../src/jobs/message.ts';
import { serveJobs } from '../../src/jobs/serve.ts';

export function startClonedPort(): JobPort & { readonly sent: ToWorker[] } {
  const sent: ToWorker[] = [];
  let tell: (message: FromWorker) => void = () => {};
  const receive = serveJobs({
    kinds: jobKinds,
    post: (message) => void setTimeout(() => tell(structuredClone(message))),
    clock: () => performance.now(),
    yieldToEventLoop: () => new Promise((resolve) => setTimeout(resolve)),
  });
  return {
    sent,
    post: (message) => {
      sent.push(message);
      setTimeout(() => receive(structuredClone(message)));
    },
    listen: (onMessage) => {
      tell = onMessage;
    },
    close: () => {
      tell = () => {};
    },
  };
}
