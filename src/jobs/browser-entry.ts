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

// what cannot be read, and what nobody has caught, the page hears of as an error of this worker
addEventListener('messageerror', () => reportError(new Error('a worker was sent what it could not read')));
addEventListener('unhandledrejection', ({ reason }) => reportError(reason));
addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
