/**
 * Margins, maps and solves beside the page, over several workers: typed calls with progress, results as they come, and a
 * cancel. A call is cut into pieces; a cancelled one gets no further piece, and what is still on its way is dropped.
 */
import {
  type Bar,
  distances,
  joinTables,
  type MapRequest,
  type MapRow,
  type MarginStudy,
  openStudy,
  type SampleTable,
  type ShareAfter,
  type SolveProgress,
  type StudyRequest,
  shareOf,
  shareOfHits,
  studyMargin,
} from '../../sim/index.ts';
import type {
  BatchAsk,
  BatchJob,
  BatchPiece,
  BatchReply,
  BatchResult,
  SolveRequest,
  ToldAnswer,
} from './batch-messages.ts';

export type { SolveRequest, ToldAnswer, ToldObstacle } from './batch-messages.ts';

/** What a worker is to the batch; a Worker behind an adapter, or anything that answers. */
export interface BatchPort {
  post(ask: BatchAsk): void;
  listen(onReply: (reply: BatchReply) => void, onFault: (reason: string) => void): void;
  close(): void;
}

export interface Progress {
  readonly done: number;
  readonly all: number;
}

export interface BatchCall<T> {
  /** rejects with the reason; never settles after a cancel, but for a solve, which ends with what it has */
  readonly done: Promise<T>;
  cancel(): void;
}

export interface StudyDone {
  readonly now: readonly number[];
  readonly bars: readonly Bar[];
  readonly table: SampleTable;
  /** of each sample, in half widths of the window */
  readonly distance: Float64Array;
  readonly result: MarginStudy;
}

export interface StudyListener {
  progress?(progress: Progress): void;
  /** the share so far, and the samples that just came */
  samples?(share: ShareAfter, table: SampleTable): void;
  bar?(bar: Bar): void;
}
export interface MapListener {
  progress?(progress: Progress): void;
  row?(row: MapRow): void;
}

export interface Batch {
  /** samples `from` up to, not including, `to`; and a bar for each input, first */
  study(
    request: StudyRequest,
    span: { from: number; to: number; bars: boolean },
    on?: StudyListener,
  ): BatchCall<StudyDone>;
  map(request: MapRequest, on?: MapListener): BatchCall<readonly MapRow[]>;
  solve(request: SolveRequest, onProgress?: (progress: SolveProgress) => void): BatchCall<ToldAnswer>;
  close(): void;
}

/** Samples in a piece: some 20 to 50 ms of work. */
const SPAN = 25;

interface Call {
  readonly number: number;
  readonly job: BatchJob;
  readonly pieces: readonly BatchPiece[];
  next: number;
  got: number;
  result(index: number, result: BatchResult): void;
  progress?(progress: SolveProgress): void;
  failed(error: Error): void;
}

interface Place {
  readonly port: BatchPort;
  /** the call it works for, and the last one whose job it was sent */
  busy: boolean;
  opened: number;
}

export function makeBatch(start: () => BatchPort, workers: number): Batch {
  const places: Place[] = [];
  const calls: Call[] = [];
  let count = 0;

  const drop = (call: Call): void => {
    const at = calls.indexOf(call);
    if (at >= 0) calls.splice(at, 1);
  };
  const fail = (call: Call, error: Error): void => {
    drop(call);
    call.failed(error);
  };

  const addPlace = (): void => {
    const place: Place = { port: start(), busy: false, opened: -1 };
    places.push(place);
    place.port.listen(
      (reply) => {
        const call = calls.find((c) => c.number === reply.call);
        if (reply.kind === 'progress') {
          call?.progress?.(reply.progress);
          return;
        }
        place.busy = false;
        if (call && reply.kind === 'failed') fail(call, Object.assign(new Error(reply.reason), { name: reply.name }));
        else if (call && reply.kind === 'result') {
          call.got++;
          if (call.got === call.pieces.length) drop(call);
          call.result(reply.index, reply.result);
        }
        feed();
      },
      (reason) => {
        for (const call of [...calls]) fail(call, new Error(reason));
      },
    );
  };

  /** Newest call first: it is what is looked at. */
  const feed = (): void => {
    for (const place of places) {
      if (place.busy) continue;
      const call = [...calls].reverse().find((c) => c.next < c.pieces.length);
      if (!call) return;
      const index = call.next++;
      place.busy = true;
      place.port.post({
        kind: 'piece',
        call: call.number,
        index,
        piece: call.pieces[index],
        ...(place.opened === call.number ? {} : { job: call.job }),
      });
      place.opened = call.number;
    }
  };

  const begin = (call: Omit<Call, 'number' | 'next' | 'got'>): { cancel(keep: boolean): void } => {
    const made: Call = { ...call, number: count++, next: 0, got: 0 };
    calls.push(made);
    while (places.length < Math.min(workers, Math.max(1, made.pieces.length))) addPlace();
    feed();
    return {
      cancel: (keep) => {
        if (!calls.includes(made)) return;
        for (const { port } of places) port.post({ kind: 'cancel', call: made.number });
        if (!keep) drop(made);
      },
    };
  };

  return {
    study: (request, { from, to, bars }, on = {}) => {
      const study = openStudy(request);
      const pieces: BatchPiece[] = [{ kind: 'now' }];
      if (bars) pieces.push(...study.spread.parts.map((_, index): BatchPiece => ({ kind: 'bar', index })));
      for (let a = from; a < to; a += SPAN) pieces.push({ kind: 'samples', from: a, to: Math.min(to, a + SPAN) });
      const tables: SampleTable[] = [];
      const barList: Bar[] = [];
      let now: readonly number[] = [];
      let hits = 0;
      let n = 0;
      let got = 0;
      let handle: { cancel(keep: boolean): void } | undefined;
      const done = new Promise<StudyDone>((resolve, reject) => {
        handle = begin({
          job: { kind: 'study', study: request },
          pieces,
          failed: reject,
          result: (index, result) => {
            got++;
            if (result.kind === 'now') now = result.now;
            if (result.kind === 'bar') {
              barList[index - 1] = result.bar;
              on.bar?.(result.bar);
            }
            if (result.kind === 'samples') {
              tables.push(result.table);
              const far = distances(study.window, result.table);
              n += result.table.n;
              hits += shareOf(far, far.length).hits;
              on.samples?.(shareOfHits(hits, n), result.table);
            }
            on.progress?.({ done: got, all: pieces.length });
            if (got < pieces.length) return;
            const table = joinTables(tables);
            resolve({
              now,
              bars: barList,
              table,
              distance: distances(study.window, table),
              result: studyMargin(table, study.spread, study.window),
            });
          },
        });
      });
      return { done, cancel: () => handle?.cancel(false) };
    },

    map: (request, on = {}) => {
      const rows: MapRow[] = [];
      let got = 0;
      let handle: { cancel(keep: boolean): void } | undefined;
      const done = new Promise<readonly MapRow[]>((resolve, reject) => {
        handle = begin({
          job: { kind: 'map', map: request },
          pieces: Array.from({ length: request.y.count }, (_, index): BatchPiece => ({ kind: 'row', index })),
          failed: reject,
          result: (index, result) => {
            if (result.kind !== 'row') return;
            rows[index] = result.row;
            got++;
            on.row?.(result.row);
            on.progress?.({ done: got, all: request.y.count });
            if (got === request.y.count) resolve(rows);
          },
        });
      });
      return { done, cancel: () => handle?.cancel(false) };
    },

    solve: (request, onProgress) => {
      let handle: { cancel(keep: boolean): void } | undefined;
      const done = new Promise<ToldAnswer>((resolve, reject) => {
        handle = begin({
          job: { kind: 'solve', solve: request },
          pieces: [{ kind: 'solve' }],
          failed: reject,
          ...(onProgress ? { progress: onProgress } : {}),
          result: (_, result) => {
            if (result.kind === 'solve') resolve(result.answer);
          },
        });
      });
      return { done, cancel: () => handle?.cancel(true) };
    },

    close: () => {
      calls.length = 0;
      for (const { port } of places) port.close();
      places.length = 0;
    },
  };
}

/** Workers of the page: one less than the processors, so that the page keeps one. */
export const startBatch = (): Batch =>
  makeBatch(
    () => {
      const worker = new Worker(new URL('./batch-worker.ts', import.meta.url), { type: 'module' });
      return {
        post: (ask) => worker.postMessage(ask),
        listen: (onReply, onFault) => {
          worker.addEventListener('message', ({ data }: MessageEvent<BatchReply>) => onReply(data));
          worker.addEventListener('error', (event) => onFault(event.message || 'the worker did not start'));
        },
        close: () => worker.terminate(),
      };
    },
    Math.max(1, Math.min(MOST_WORKERS, (navigator.hardwareConcurrency || 2) - 1)),
  );
const MOST_WORKERS = 8;
