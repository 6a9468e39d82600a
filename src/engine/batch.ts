/** Margins, maps and solves beside the page: cut into pieces for the workers, put together again, handed on as they come. */
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
  ForgivingProgress,
  ForgivingRequest,
  ForgivingResult,
  TwistProgress,
  TwistResult,
} from '../jobs/kinds/most-data.ts';
import type { AnswerResult, SolveRequest } from '../jobs/kinds/solve-data.ts';
import type { StudyPiece } from '../jobs/kinds/study-job.ts';
import type { JobCall, Pool } from '../jobs/pool.ts';

export type { ForgivingResult, TwistResult } from '../jobs/kinds/most-data.ts';
export type { AnswerResult, ObstacleResult, SolveRequest } from '../jobs/kinds/solve-data.ts';

export interface Progress {
  readonly done: number;
  readonly all: number;
}

/** `done` rejects with the reason, and after a cancel; a solve that is cancelled ends with what it has. */
export type BatchCall<T> = Pick<JobCall<T>, 'done' | 'cancel'>;

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
  /** bars of some of the inputs that a study varies, by their places among them */
  bars(
    request: StudyRequest,
    indices: readonly number[],
    onProgress: (progress: Progress) => void,
  ): BatchCall<readonly Bar[]>;
  map(request: MapRequest, on?: MapListener): BatchCall<readonly MapRow[]>;
  solve(request: SolveRequest, onProgress?: (progress: SolveProgress) => void): BatchCall<AnswerResult>;
  forgiving(request: ForgivingRequest, onProgress?: (progress: ForgivingProgress) => void): BatchCall<ForgivingResult>;
  twist(request: SolveRequest, onProgress?: (progress: TwistProgress) => void): BatchCall<TwistResult>;
}

/** Samples in a piece: some 10 to 50 ms of work. */
const SPAN = 25;

export function makeBatch(pool: Pool): Batch {
  return {
    study: (request, { from, to, bars }, on = {}) => {
      const study = openStudy(request);
      const pieces: StudyPiece[] = [{ kind: 'now' }];
      if (bars) pieces.push(...study.spread.parts.map((_, index): StudyPiece => ({ kind: 'bar', index })));
      for (let a = from; a < to; a += SPAN) pieces.push({ kind: 'samples', from: a, to: Math.min(to, a + SPAN) });
      let hits = 0;
      let n = 0;
      let got = 0;
      const { done, cancel } = pool.runPieces('study', request, pieces, {
        onResult: (part) => {
          got++;
          if (part.kind === 'bar') on.bar?.(part.bar);
          if (part.kind === 'samples') {
            const far = distances(study.window, part.table);
            n += part.table.n;
            hits += shareOf(far, far.length).hits;
            on.samples?.(shareOfHits(hits, n), part.table);
          }
          on.progress?.({ done: got, all: pieces.length });
        },
      });
      const whole = done.then((parts): StudyDone => {
        const table = joinTables(parts.flatMap((p) => (p.kind === 'samples' ? [p.table] : [])));
        return {
          now: parts.flatMap((p) => (p.kind === 'now' ? p.now : [])),
          bars: parts.flatMap((p) => (p.kind === 'bar' ? [p.bar] : [])),
          table,
          distance: distances(study.window, table),
          result: studyMargin(table, study.spread, study.window),
        };
      });
      return { done: quiet(whole), cancel };
    },

    bars: (request, indices, onProgress) => {
      let got = 0;
      const pieces = indices.map((index): StudyPiece => ({ kind: 'bar', index }));
      const { done, cancel } = pool.runPieces('study', request, pieces, {
        onResult: () => {
          got++;
          onProgress({ done: got, all: pieces.length });
        },
      });
      return { done: quiet(done.then((parts) => parts.flatMap((p) => (p.kind === 'bar' ? [p.bar] : [])))), cancel };
    },

    map: (request, on = {}) => {
      const all = request.y.count;
      let got = 0;
      return pool.runPieces(
        'map',
        request,
        Array.from({ length: all }, (_, row) => row),
        {
          onResult: (row) => {
            got++;
            on.row?.(row);
            on.progress?.({ done: got, all });
          },
        },
      );
    },

    solve: (request, onProgress) => {
      const { done, finish } = pool.run('solve', request, onProgress ? { onProgress } : {});
      return { done, cancel: finish };
    },
    forgiving: (request, onProgress) => {
      const { done, finish } = pool.run('forgiving', request, onProgress ? { onProgress } : {});
      return { done, cancel: finish };
    },
    twist: (request, onProgress) => {
      const { done, finish } = pool.run('twist', request, onProgress ? { onProgress } : {});
      return { done, cancel: finish };
    },
  };
}

/** Who cancels need not hear of it. */
function quiet<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => {});
  return promise;
}
