/** The script of the shell's threads. */
import { parentPort } from 'node:worker_threads';
import { jobKinds } from './job-table.ts';
import type { ToWorker } from './message.ts';
import { serveJobs } from './serve.ts';

const port = parentPort;
if (port) {
  const receive = serveJobs({
    kinds: jobKinds,
    post: (message) => port.postMessage(message),
    clock: () => performance.now(),
    yieldToEventLoop: () => new Promise((resolve) => setImmediate(resolve)),
  });
  port.on('message', (message: ToWorker) => receive(message));
}
