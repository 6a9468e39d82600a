/** A thread of Node as a pool sees it. */
import { Worker } from 'node:worker_threads';
import type { FromWorker, JobPort } from './message.ts';

export function startNodeThread(script: string | URL): JobPort {
  const worker = new Worker(script);
  let isClosed = false;
  return {
    post: (message) => worker.postMessage(message),
    listen: (onMessage, onFault) => {
      worker.on('message', (message: FromWorker) => onMessage(message));
      worker.on('messageerror', (error) => onFault(error.message));
      worker.on('error', (error) => onFault(`a thread failed: ${error.message}`));
      worker.on('exit', (code) => {
        if (!isClosed) onFault(`a thread ended with code ${code}`);
      });
    },
    close: () => {
      isClosed = true;
      void worker.terminate();
    },
  };
}
