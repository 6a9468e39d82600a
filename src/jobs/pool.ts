/**
 * Jobs beside the thread that asks, on a few workers. A call has one piece or many; the newest call goes first, since it is
 * what is looked at. A worker keeps to one call until its pieces have come back, and closes when nothing has needed it.
 */
import type { JobName, PieceOf, ProgressOf, ResultOf, SubjectOf } from './job-table.ts';
import { errorOfData, type FromWorker, type JobPort } from './message.ts';

interface RunOptions<N extends JobName> {
  onProgress?(progress: ProgressOf<N>, index: number): void;
  /** pieces come in any order */
  onResult?(result: ResultOf<N>, index: number): void;
  /** the workers of a call that takes longer are ended, and it is refused */
  readonly limitMs?: number;
  /** a worker that has not come back so long after a cancel is ended */
  readonly patienceMs?: number;
}

export interface JobCall<Result> {
  /** rejects with the job's own error by name, or with one of the errors below */
  readonly done: Promise<Result>;
  cancel(): void;
  /** the job ends with what it has; its result comes as usual */
  finish(): void;
}

export interface Pool {
  run<N extends JobName>(job: N, subject: SubjectOf<N>, options?: RunOptions<N>): JobCall<ResultOf<N>>;
  runPieces<N extends JobName>(
    job: N,
    subject: SubjectOf<N>,
    pieces: readonly PieceOf<N>[],
    options?: RunOptions<N>,
  ): JobCall<readonly ResultOf<N>[]>;
  /** refuses what waits and what comes, and ends the workers */
  close(): void;
}

interface PoolOptions {
  readonly workers: number;
  readonly idleMs?: number;
}

export class JobCancelledError extends Error {
  override readonly name = 'JobCancelledError';
}
export class JobTimeoutError extends Error {
  override readonly name = 'JobTimeoutError';
}
export class PoolClosedError extends Error {
  override readonly name = 'PoolClosedError';
}
/** The worker died, or could not be loaded; the next call starts another. */
export class WorkerLostError extends Error {
  override readonly name = 'WorkerLostError';
}

/** One for all: an error of its own keeps who was on the stack when it was made, and by that a part of the page that is gone. */
const CANCELLED = new JobCancelledError('cancelled');

const IDLE_MS = 30_000;
const PATIENCE_MS = 1000;
/** Pieces that a worker has at once: the next one is there when the asking thread is too busy to send it. */
const AT_ONCE = 2;

interface Call {
  readonly number: number;
  readonly job: JobName;
  readonly subject: unknown;
  readonly pieces: readonly unknown[];
  readonly results: unknown[];
  next: number;
  got: number;
  isFinishing: boolean;
  readonly patienceMs: number;
  limit?: ReturnType<typeof setTimeout>;
  onProgress?(progress: unknown, index: number): void;
  onResult?(result: unknown, index: number): void;
  resolve(results: unknown[]): void;
  reject(error: Error): void;
}

interface Place {
  readonly port: JobPort;
  call?: Call;
  readonly pieces: Set<number>;
  /** the last call whose subject it was sent */
  opened: number;
  /** until it is ended: idle, or not back from a call that was cancelled */
  timer?: ReturnType<typeof setTimeout>;
}

/** `start` is handed how many workers were lost before this one. */
export function makePool(
  start: (lost: number, index: number) => JobPort,
  { workers, idleMs = IDLE_MS }: PoolOptions,
): Pool {
  const places: Place[] = [];
  const calls: Call[] = [];
  let count = 0;
  let lost = 0;
  let isClosed = false;

  const drop = (call: Call): boolean => {
    const at = calls.indexOf(call);
    if (at < 0) return false;
    calls.splice(at, 1);
    clearTimeout(call.limit);
    return true;
  };

  const endPlace = (place: Place): void => {
    const at = places.indexOf(place);
    if (at < 0) return;
    places.splice(at, 1);
    clearTimeout(place.timer);
    place.port.close();
  };

  /** The call is over with an error; its pieces that are under way are called back. */
  const refuse = (call: Call, error: Error, patienceMs = call.patienceMs): void => {
    if (!drop(call)) return;
    for (const place of [...places]) {
      if (place.call !== call) continue;
      if (patienceMs === 0) {
        endPlace(place);
        continue;
      }
      place.port.post({ kind: 'cancel', call: call.number });
      place.timer = setTimeout(() => {
        endPlace(place);
        feed();
      }, patienceMs);
    }
    call.reject(error);
    feed();
  };

  const losePlace = (place: Place, reason: string): void => {
    if (!places.includes(place)) return;
    lost++;
    endPlace(place);
    if (place.call) refuse(place.call, new WorkerLostError(reason));
    feed();
  };

  const receive = (place: Place, message: FromWorker): void => {
    const { call } = place;
    if (!call || call.number !== message.call) return;
    const isWanted = calls.includes(call);
    if (message.kind === 'progress') {
      if (isWanted) call.onProgress?.(message.progress, message.index);
      return;
    }
    place.pieces.delete(message.index);
    if (place.pieces.size === 0) rest(place);
    // what a thread could not load it does not try to load again: it is given nothing more
    if (message.kind === 'failed' && message.error.name === 'PartNotLoadedError') {
      lost++;
      endPlace(place);
    }
    try {
      if (isWanted && message.kind === 'failed') refuse(call, errorOfData(message.error));
      else if (isWanted && message.kind === 'result') {
        call.results[message.index] = message.result;
        call.got++;
        call.onResult?.(message.result, message.index);
        if (call.got === call.pieces.length && drop(call)) call.resolve(call.results);
      }
    } finally {
      feed();
    }
  };

  const rest = (place: Place): void => {
    clearTimeout(place.timer);
    place.call = undefined;
    place.timer = setTimeout(() => endPlace(place), idleMs);
  };

  const addPlace = (): void => {
    const place: Place = { port: start(lost, places.length), pieces: new Set(), opened: -1 };
    places.push(place);
    place.port.listen(
      (message) => receive(place, message),
      (reason) => losePlace(place, reason),
    );
  };

  const give = (place: Place, call: Call): void => {
    const index = call.next++;
    clearTimeout(place.timer);
    place.call = call;
    place.pieces.add(index);
    const isNew = place.opened !== call.number;
    place.opened = call.number;
    place.port.post({
      kind: 'piece',
      call: call.number,
      index,
      piece: call.pieces[index],
      ...(isNew ? { opens: { job: call.job, subject: call.subject } } : {}),
    });
    if (call.isFinishing) place.port.post({ kind: 'finish', call: call.number });
  };

  const newest = (): Call | undefined => calls.findLast((c) => c.next < c.pieces.length);

  const feed = (): void => {
    const waiting = calls.reduce((sum, c) => sum + c.pieces.length - c.next, 0);
    const free = places.filter((p) => !p.call).length;
    try {
      for (let n = free; n < waiting && places.length < workers; n++) addPlace();
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      for (const call of [...calls]) refuse(call, new WorkerLostError(reason));
    }
    for (let load = 1; load <= AT_ONCE; load++)
      for (const place of places) {
        const call = newest();
        if (!call) return;
        if (place.pieces.size < load && (!place.call || place.call === call)) give(place, call);
      }
  };

  const runPieces: Pool['runPieces'] = (job, subject, pieces, options = {}) => {
    const { onProgress, onResult, limitMs, patienceMs = PATIENCE_MS } = options;
    let call: Call | undefined;
    const done = new Promise<unknown[]>((resolve, reject) => {
      call = {
        number: count++,
        job,
        subject,
        pieces,
        results: new Array(pieces.length),
        next: 0,
        got: 0,
        isFinishing: false,
        patienceMs,
        onProgress: onProgress as Call['onProgress'],
        onResult: onResult as Call['onResult'],
        resolve,
        reject,
      };
    });
    // a call whose outcome nobody awaits may be refused without a word
    done.catch(() => {});
    const made = call as unknown as Call;
    if (isClosed) made.reject(new PoolClosedError('the pool is closed'));
    else if (pieces.length === 0) made.resolve([]);
    else {
      calls.push(made);
      if (limitMs !== undefined)
        made.limit = setTimeout(
          () => refuse(made, new JobTimeoutError(`it took longer than ${limitMs / 1000} s and was stopped`), 0),
          limitMs,
        );
      feed();
    }
    return {
      done: done as Promise<never>,
      cancel: () => refuse(made, CANCELLED),
      finish: () => {
        made.isFinishing = true;
        for (const place of places) if (place.call === made) place.port.post({ kind: 'finish', call: made.number });
      },
    };
  };

  return {
    runPieces,
    run: (job, subject, options) => {
      const { done, cancel, finish } = runPieces(job, subject, [undefined as never], options);
      const first = done.then(([result]) => result);
      first.catch(() => {});
      return { done: first, cancel, finish };
    },
    close: () => {
      isClosed = true;
      for (const call of [...calls]) refuse(call, new PoolClosedError('the pool is closed'), 0);
      for (const place of [...places]) endPlace(place);
    },
  };
}
