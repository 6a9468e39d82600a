/** Entry of a batch worker of the page. */
import type { BatchAsk } from './batch-messages.ts';
import { serveBatch } from './batch-serve.ts';

const serve = serveBatch({
  post: (reply) => postMessage(reply),
  clock: () => performance.now(),
  breathe: () => new Promise((resolve) => setTimeout(resolve)),
});

addEventListener('message', ({ data }: MessageEvent<BatchAsk>) => void serve(data));
