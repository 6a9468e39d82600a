/** What a thread of "--jobs" does: opens one request and computes the pieces it is sent. The main entry starts it. */
import { parentPort, workerData } from 'node:worker_threads';
import {
  type Bar,
  contactFor,
  type MapRequest,
  type MapRow,
  MapRunner,
  type SampleTable,
  type StudyRequest,
  StudyRunner,
} from '../../sim/index.ts';
import { wordBadInput } from './command-error.ts';

export type JobRequest =
  | { readonly kind: 'study'; readonly study: StudyRequest }
  | { readonly kind: 'map'; readonly map: MapRequest };

export type Piece =
  | { readonly kind: 'samples'; readonly from: number; readonly to: number }
  | { readonly kind: 'bar'; readonly index: number }
  | { readonly kind: 'row'; readonly index: number };

export type PieceResult =
  | { readonly kind: 'samples'; readonly table: SampleTable }
  | { readonly kind: 'bar'; readonly bar: Bar }
  | { readonly kind: 'row'; readonly row: MapRow };

export type Reply =
  | { readonly index: number; readonly result: PieceResult }
  | { readonly index: number; readonly bad: string | undefined; readonly fault: string };

/** A function from pieces to results, by one request. */
export async function openJob(request: JobRequest): Promise<(piece: Piece) => PieceResult> {
  if (request.kind === 'map') {
    const runner = new MapRunner(request.map, await contactFor(request.map.spec));
    return (piece) => {
      if (piece.kind !== 'row') throw new RangeError('a map has rows');
      return { kind: 'row', row: runner.row(piece.index) };
    };
  }
  const runner = new StudyRunner(request.study, await contactFor(request.study.spec));
  return (piece) => {
    if (piece.kind === 'samples') return { kind: 'samples', table: runner.samples(piece.from, piece.to) };
    if (piece.kind === 'bar') return { kind: 'bar', bar: runner.bar(piece.index) };
    throw new RangeError('a study has samples and bars');
  };
}

/** Mark of the threads that are ours: the same file is entry of the command and of its threads. */
export const OURS = 'shapeflight-job';

export function serveIfThread(): void {
  const data = workerData as { readonly of?: unknown; readonly request?: JobRequest } | null;
  const port = parentPort;
  if (!port || data?.of !== OURS || !data.request) return;
  let run: Promise<(piece: Piece) => PieceResult> | undefined;
  const { request } = data;
  port.on('message', async ({ index, piece }: { readonly index: number; readonly piece: Piece }) => {
    let reply: Reply;
    try {
      run ??= openJob(request);
      reply = { index, result: (await run)(piece) };
    } catch (error) {
      const fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
      reply = { index, bad: wordBadInput(error), fault };
    }
    port.postMessage(reply);
  });
}
