/**
 * Pieces of a study or a map on this thread and, with --jobs, on others. Results come in the order of the pieces, whichever
 * thread computed them; after Ctrl+C those that are complete from the first one on.
 */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PieceOf, ResultOf, SubjectOf } from '../jobs/job-table.ts';
import type { StudyPiece } from '../jobs/kinds/study-job.ts';
import { startNodeThread } from '../jobs/node-port.ts';
import { startOwnThread } from '../jobs/own-thread-port.ts';
import { JobCancelledError, makePool } from '../jobs/pool.ts';
import { CommandError } from './command-error.ts';
import { onInterrupt, yieldToEventLoop } from './interrupt.ts';
import { makeProgressLine, type ProgressLine } from './progress-line.ts';

interface Flown<Result> {
  readonly results: readonly Result[];
  readonly isInterrupted: boolean;
}

export async function runPieces<N extends 'study' | 'map'>(
  job: N,
  subject: SubjectOf<N>,
  pieces: readonly PieceOf<N>[],
  jobs: number,
  line: ProgressLine = makeProgressLine(job),
): Promise<Flown<ResultOf<N>>> {
  const workers = Math.min(jobs, pieces.length);
  const script = workers > 1 ? threadScript() : '';
  const pool = makePool((_, index) => (index === 0 ? startOwnThread(yieldToEventLoop) : startNodeThread(script)), {
    workers,
  });
  const results: (ResultOf<N> | undefined)[] = new Array(pieces.length).fill(undefined);
  let done = 0;
  const call = pool.runPieces(job, subject, pieces, {
    onResult: (result, index) => {
      results[index] = result;
      line.show(++done, pieces.length);
    },
  });
  const unsubscribe = onInterrupt(call.cancel);
  try {
    return { results: await call.done, isInterrupted: false };
  } catch (error) {
    if (!(error instanceof JobCancelledError)) throw error;
    const missing = results.indexOf(undefined);
    const complete = missing < 0 ? results : results.slice(0, missing);
    return { results: complete.filter((r) => r !== undefined), isInterrupted: true };
  } finally {
    unsubscribe();
    line.end();
    pool.close();
  }
}

/** The threads' script lies beside the command's own; from the sources there is none. */
function threadScript(): string {
  const script = path.join(path.dirname(fileURLToPath(import.meta.url)), 'thread.js');
  if (!existsSync(script)) throw new CommandError('--jobs: threads need the built command line; use npx shapeflight');
  return script;
}

/** Spans of samples of about equal length, many for each thread so that none waits long at the end. */
export function cutSpans(from: number, to: number, jobs: number): StudyPiece[] {
  const size = Math.max(1, Math.min(100, Math.ceil((to - from) / (16 * jobs))));
  const out: StudyPiece[] = [];
  for (let a = from; a < to; a += size) out.push({ kind: 'samples', from: a, to: Math.min(to, a + size) });
  return out;
}
