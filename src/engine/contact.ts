/** Whole skills from a worker: before and after the air. A newer question takes the place of an older one. */
import type { Athlete, ChainSensitivity, LateDose, Likelihood, ShapeData, SkillFile } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { CatchWindowResult, WindowResult } from '../jobs/kinds/leg-data.ts';
import type { StudyKind, WholeResult } from '../jobs/kinds/whole-data.ts';
import { type JobCall, JobCancelledError, type Pool } from '../jobs/pool.ts';

interface ContactListener {
  /** of the file that was asked about: while a hand drags, an older one than the last */
  whole(result: WholeResult, of: SkillFile): void;
  /** of the file that was asked about */
  likelihood(result: Likelihood, of: SkillFile): void;
  window(result: WindowResult | undefined): void;
  catchWindow(result: CatchWindowResult | undefined): void;
  sensitivity(result: ChainSensitivity | undefined): void;
  late(result: LateDose | undefined): void;
  failed(reason: string): void;
}

export interface Contacting {
  /** `study`: what is run besides. Returns the way to unsubscribe */
  ask(question: Question, listener: ContactListener): () => void;
}

interface Question {
  /** the whole chain */
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly study: StudyKind | undefined;
  /** the leg that is studied */
  readonly leg: number;
}

export function makeContacting(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): Contacting {
  let newest: Question | undefined;
  let waiting: Question | undefined;
  let listening: ContactListener | undefined;
  /** the question under way, until its whole skill has come */
  let flying: Question | undefined;
  let call: JobCall<unknown> | undefined;

  const next = (): void => {
    flying = undefined;
    if (!waiting) return;
    const question = waiting;
    waiting = undefined;
    start(question);
  };
  const start = (question: Question): void => {
    // studies of an older question are not wanted any more
    call?.cancel();
    flying = question;
    const { file, athlete, study, leg } = question;
    const made = pool.run(
      'whole',
      { file, athlete, shapes, study, leg },
      {
        onProgress: (step) => {
          // while a hand drags, an older answer is better than none
          if (step.kind === 'whole') listening?.whole(step.result, file);
          else if (question !== newest) return;
          else if (step.kind === 'likelihood') listening?.likelihood(step.result, file);
          else if (step.kind === 'window') listening?.window(step.result);
          else if (step.kind === 'sensitivity') listening?.sensitivity(step.result);
          else if (step.kind === 'catchWindow') listening?.catchWindow(step.result);
          if (step.kind === 'whole') next();
        },
      },
    );
    call = made;
    made.done.then(
      (end) => {
        if (end && question === newest) listening?.late(end.late);
      },
      (error: Error) => {
        if (error instanceof JobCancelledError) return;
        if (question === newest) listening?.failed(error.message);
        if (flying === question) next();
      },
    );
  };
  return {
    ask: (question, listener) => {
      newest = question;
      listening = listener;
      if (flying) waiting = question;
      else start(question);
      return () => {
        if (newest !== question) return;
        listening = undefined;
        if (!flying) call?.cancel();
      };
    },
  };
}
