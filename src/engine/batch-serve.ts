/** The worker's side of a batch: opens the job of a call once and computes the pieces it is sent. */
import {
  type Answer,
  MapRunner,
  makeUnknown,
  type SolveProgress,
  StudyRunner,
  shareOfTries,
  solveSteps,
} from '../../sim/index.ts';
import type {
  BatchAsk,
  BatchJob,
  BatchPiece,
  BatchReply,
  BatchResult,
  SolveRequest,
  ToldAnswer,
  ToldObstacle,
} from './batch-messages.ts';

/** A solve listens for its cancel this often, ms. */
const LISTEN = 30;

type Run = (piece: BatchPiece) => BatchResult | Promise<BatchResult>;

export interface ServeTools {
  readonly post: (reply: BatchReply) => void;
  /** ms */
  readonly clock: () => number;
  /** lets waiting messages in */
  readonly breathe: () => Promise<void>;
}

export function serveBatch({ post, clock, breathe }: ServeTools): (ask: BatchAsk) => Promise<void> {
  let open: { readonly call: number; readonly run: Run } | undefined;
  const cancelled = new Set<number>();

  const solve = async (request: SolveRequest, call: number): Promise<ToldAnswer> => {
    const { spec, unknowns, tries = 0, balance, ...rest } = request;
    const steps = solveSteps({
      ...rest,
      spec,
      unknowns: unknowns.map((u) => makeUnknown(spec, u.input, u.span)),
      ...(tries > 0 ? { margin: (solved) => shareOfTries(solved, tries, balance).share } : {}),
    });
    let listened = clock();
    let isCancelled = false;
    for (;;) {
      const { done, value } = steps.next(isCancelled);
      if (done) return toldOf(value);
      const progress: SolveProgress = value;
      if (clock() - listened < LISTEN) continue;
      post({ kind: 'progress', call, progress });
      await breathe();
      listened = clock();
      isCancelled = cancelled.has(call);
    }
  };

  const openJob = (job: BatchJob, call: number): Run => {
    if (job.kind === 'solve') return async () => ({ kind: 'solve', answer: await solve(job.solve, call) });
    if (job.kind === 'map') {
      const runner = new MapRunner(job.map);
      return (piece) => {
        if (piece.kind !== 'row') throw new RangeError('a map has rows');
        return { kind: 'row', row: runner.row(piece.index) };
      };
    }
    const runner = new StudyRunner(job.study);
    return (piece) => {
      switch (piece.kind) {
        case 'now':
          return { kind: 'now', now: runner.now() };
        case 'samples':
          return { kind: 'samples', table: runner.samples(piece.from, piece.to) };
        case 'bar':
          return { kind: 'bar', bar: runner.bar(piece.index) };
        default:
          throw new RangeError('a study has samples and bars');
      }
    };
  };

  return async (ask) => {
    const { call } = ask;
    if (ask.kind === 'cancel') {
      cancelled.add(call);
      return;
    }
    const { index, piece, job } = ask;
    try {
      if (job && open?.call !== call) open = { call, run: openJob(job, call) };
      if (!open || open.call !== call) throw new RangeError(`call ${call} was not opened here`);
      post({ kind: 'result', call, index, result: await open.run(piece) });
    } catch (error) {
      const { name, message } = error instanceof Error ? error : new Error(String(error));
      post({ kind: 'failed', call, index, name, reason: message });
    }
  };
}

/** Inputs hold functions, which no message can carry. */
function toldOf({ nearest, ...answer }: Answer): ToldAnswer {
  if (!nearest) return answer;
  const obstacles = nearest.obstacles.map((o): ToldObstacle => {
    if (o.kind !== 'bound') return o;
    const { unknown, ...rest } = o;
    const { id, label, unit } = unknown.input;
    return { ...rest, input: id, label, unit };
  });
  return { ...answer, nearest: { ...nearest, obstacles } };
}
