/**
 * Pieces of a study or a map, computed by one thread or by several; results come back in the order of the pieces, whoever
 * computed them. Threads run the command's own bundle (worker.ts).
 */
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { CommandError } from './command-error.ts';
import { type JobRequest, OURS, openJob, type Piece, type PieceResult, type Reply } from './worker.ts';

export type Tell = (done: number, all: number) => void;

export async function runPieces(
  request: JobRequest,
  pieces: readonly Piece[],
  jobs: number,
  tell?: Tell,
): Promise<PieceResult[]> {
  const threads = Math.min(jobs, pieces.length);
  if (threads <= 1) {
    const run = await openJob(request);
    return pieces.map((piece, i) => {
      const result = run(piece);
      tell?.(i + 1, pieces.length);
      return result;
    });
  }
  const results: PieceResult[] = new Array(pieces.length);
  let next = 0;
  let done = 0;
  const work = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const give = (): void => {
        if (next >= pieces.length) {
          resolve();
          return;
        }
        const index = next++;
        worker.postMessage({ index, piece: pieces[index] });
      };
      worker.on('error', reject);
      worker.on('exit', (code) => reject(new Error(`a thread ended with code ${code}`)));
      worker.on('message', (reply: Reply) => {
        if ('fault' in reply) {
          reject(reply.bad === undefined ? new Error(reply.fault) : new CommandError(reply.bad));
          return;
        }
        results[reply.index] = reply.result;
        done++;
        tell?.(done, pieces.length);
        give();
      });
      give();
    });
  const entry = entryFile();
  const workers = Array.from({ length: threads }, () => new Worker(entry, { workerData: { of: OURS, request } }));
  try {
    await Promise.all(workers.map(work));
  } finally {
    await Promise.all(workers.map((w) => w.terminate()));
  }
  return results;
}

/** The bundle this runs in; from the sources there is none. */
function entryFile(): string {
  const file = fileURLToPath(import.meta.url);
  if (file.endsWith('.ts')) throw new CommandError('--jobs: threads need the built command line; use npx shapeflight');
  return file;
}

/** Spans of samples of about equal length, a few for each thread so that none waits long. */
export function cutSpans(from: number, to: number, jobs: number): Piece[] {
  const size = Math.max(1, Math.min(200, Math.ceil((to - from) / (8 * jobs))));
  const out: Piece[] = [];
  for (let a = from; a < to; a += size) out.push({ kind: 'samples', from: a, to: Math.min(to, a + size) });
  return out;
}

/** How far it is, on a terminal's stderr alone. */
export function tellOnTerminal(what: string): Tell | undefined {
  if (!process.stderr.isTTY) return undefined;
  return (done, all) => {
    process.stderr.write(`\r${what}: ${Math.floor((100 * done) / all)} %${done === all ? '\n' : ''}`);
  };
}
