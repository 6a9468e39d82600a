/** A worker of the browser as a pool sees it. All workers of the page run one script, so they share one download of sim. */
import script from './browser-entry.ts?worker&url';
import type { FromWorker, JobPort } from './message.ts';
import { makePool, type Pool } from './pool.ts';

/** After a loss the address differs: what a browser remembers to have failed it need not ask for again. */
function addressOf(lost: number): URL {
  const url = new URL(script, import.meta.url);
  if (lost > 0) url.searchParams.set('again', String(lost));
  return url;
}

/** Read after "could not be computed: ". */
const NONE =
  'this browser does not let the page compute beside itself; load the page again, or open it in another browser';
const NOT_LOADED =
  'the part of Shapeflight that computes beside the page did not arrive; try again, or load the page again';

function startWorker(lost: number): Worker {
  try {
    return new Worker(addressOf(lost), { type: 'module' });
  } catch {
    throw new Error(NONE);
  }
}

function startBrowserWorker(lost: number): JobPort {
  const worker = startWorker(lost);
  return {
    post: (message) => worker.postMessage(message),
    listen: (onMessage, onFault) => {
      worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => onMessage(data));
      worker.addEventListener('messageerror', () => onFault('a worker sent what could not be read'));
      worker.addEventListener('error', (event) => onFault(event.message || NOT_LOADED));
    },
    close: () => worker.terminate(),
  };
}

export const makePagePool = (workers = 1): Pool => makePool(startBrowserWorker, { workers });

const MOST_WORKERS = 8;
/** Workers for long work: where there are more than two processors, one is left to the page. */
export function countWorkers(processors = navigator.hardwareConcurrency || 2): number {
  return Math.min(MOST_WORKERS, processors > 2 ? processors - 1 : processors);
}
