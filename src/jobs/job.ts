/** A kind of job: what it is asked, what it gives, and the steps between, at which it reports and can be stopped. */

/** Each step yields a report and receives whether the job should end with what it has. */
export type Steps<Progress, Result> = Generator<Progress, Result, boolean> | AsyncGenerator<Progress, Result, boolean>;

type PieceRun<Piece, Progress, Result> = (
  piece: Piece,
  report: (progress: Progress) => void,
) => Steps<Progress, Result>;

export interface JobKind<Subject, Piece, Progress, Result> {
  /**
   * Called once for each call and thread; gives what computes the pieces. The result of a piece may not depend on what was
   * computed before it. `report` is for work that cannot stop between two steps.
   */
  open(subject: Subject): PieceRun<Piece, Progress, Result> | Promise<PieceRun<Piece, Progress, Result>>;
  /** only the latest report counts: reports are posted, and messages read, at most this often, ms */
  readonly latestEveryMs?: number;
}

/** A part of the program that a job needs (planck, mathjs) could not be loaded. */
class PartNotLoadedError extends Error {
  constructor(cause: unknown) {
    super(`a part of the program could not be loaded: ${cause instanceof Error ? cause.message : String(cause)}`, {
      cause,
    });
    this.name = 'PartNotLoadedError';
  }
}

export const loadForJob = <T>(load: () => Promise<T>): Promise<T> =>
  load().catch((cause: unknown) => {
    throw new PartNotLoadedError(cause);
  });
