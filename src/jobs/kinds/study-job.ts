/** A margin in pieces: spans of its samples, its bars one by one, and the skill as it is. */
import { type Bar, contactFor, type SampleTable, type StudyRequest, StudyRunner } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

export type StudyPiece =
  | { readonly kind: 'now' }
  /** from, up to and not including, to */
  | { readonly kind: 'samples'; readonly from: number; readonly to: number }
  | { readonly kind: 'bar'; readonly index: number };

type StudyPart =
  | { readonly kind: 'now'; readonly now: readonly number[] }
  | { readonly kind: 'samples'; readonly table: SampleTable }
  | { readonly kind: 'bar'; readonly bar: Bar };

export const studyJob: JobKind<StudyRequest, StudyPiece, never, StudyPart> = {
  open: async (request) => {
    const runner = new StudyRunner(request, await loadForJob(() => contactFor(request.spec)));
    // biome-ignore lint/correctness/useYield: a piece is short
    return function* (piece) {
      switch (piece.kind) {
        case 'now':
          return { kind: 'now', now: runner.now() };
        case 'samples':
          return { kind: 'samples', table: runner.samples(piece.from, piece.to) };
        case 'bar':
          return { kind: 'bar', bar: runner.bar(piece.index) };
      }
    };
  },
};
