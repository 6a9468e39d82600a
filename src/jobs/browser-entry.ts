/** The one script of the page's workers. */
import { jobKinds } from './job-table.ts';
import type { ToWorker } from './message.ts';
import { serveJobs } from './serve.ts';

// a message to oneself: timers wait 4 ms once they are nested
const { port1, port2 } = new MessageChannel();
let resume: () => void = () => {};
port1.onmessage = () => resume();

const receive = serveJobs({
  kinds: jobKinds,
  post: (message) => postMessage(message),
  clock: () => performance.now(),
  yieldToEventLoop: () =>
    new Promise((resolve) => {
      resume = resolve;
      port2.postMessage(undefined);
    }),
});

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
