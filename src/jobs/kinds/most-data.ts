/** Searches for the most forgiving and for the most twist beside the page: what they are asked, what they answer. */
import type { forgivingSteps, ShareAfter, twistSteps } from '../../../sim/index.ts';
import type { AnswerResult, SolveRequest } from './solve-data.ts';

type ReportOf<S> = S extends Generator<infer R, unknown, unknown> ? R : never;
export type ForgivingProgress = ReportOf<ReturnType<typeof forgivingSteps>>;
export type TwistProgress = ReportOf<ReturnType<typeof twistSteps>>;

export interface ForgivingRequest extends SolveRequest {
  /** moves tried */
  readonly rounds: number;
}

export interface ForgivingResult {
  /** the most forgiving first, then the answers that it was gone on from */
  readonly answer: AnswerResult;
  /** moves tried, those that met the target again, and those of them that were kept */
  readonly rounds: number;
  readonly met: number;
  readonly kept: number;
  /** before and after, in more tries of another seed: what is found is flattered by the tries it was chosen with */
  readonly again?: { readonly before: ShareAfter; readonly after: ShareAfter };
}

export interface TwistResult {
  /** the schedule with the most twist that was met; where none was, the nearest to the first number that was wanted */
  readonly answer: AnswerResult;
  readonly twists: number;
  /** to the first number beyond it: the nearest, and what is in its way */
  readonly beyond?: AnswerResult;
}
