/** A skill from its code: the code is read at once, the draft is made in a worker that can be stopped. */
import { type DraftSpec, draftOfCode } from '../../sim/index.ts';
import type { DraftReply, DraftRequest } from './draft-messages.ts';

export interface Drafted {
  readonly file: DraftReplyDone['file'];
  /** what the draft does not reach, in words */
  readonly falls: readonly string[];
}
type DraftReplyDone = Extract<DraftReply, { kind: 'done' }>;

export interface DraftRun {
  /** rejects with the reason; never settles after a stop */
  readonly done: Promise<Drafted>;
  stop(): void;
}

export interface Drafting {
  /** throws a FieldError with what is allowed */
  readCode(code: string, direction?: DraftSpec['direction']): DraftSpec;
  draft(request: DraftRequest, onFlights: (n: number) => void): DraftRun;
}

export const drafting: Drafting = {
  readCode: draftOfCode,
  draft: (request, onFlights) => {
    const worker = new Worker(new URL('./draft-worker.ts', import.meta.url), { type: 'module' });
    const done = new Promise<Drafted>((resolve, reject) => {
      worker.addEventListener('message', ({ data }: MessageEvent<DraftReply>) => {
        if (data.kind === 'flights') return onFlights(data.n);
        worker.terminate();
        if (data.kind === 'done') resolve({ file: data.file, falls: data.falls });
        else reject(Object.assign(new Error(data.reason), { name: data.name }));
      });
      worker.addEventListener('error', (event) => {
        worker.terminate();
        reject(new Error(event.message || 'the worker did not start'));
      });
    });
    worker.postMessage(request);
    return { done, stop: () => worker.terminate() };
  },
};
