/** A skill from its code: the code is read at once, the draft is made by a worker and can be stopped. */
import { type DraftSpec, draftOfCode } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { Drafted, DraftRequest } from '../jobs/kinds/draft-data.ts';
import type { Pool } from '../jobs/pool.ts';

export interface DraftRun {
  /** rejects with the reason, and after a stop */
  readonly done: Promise<Drafted>;
  stop(): void;
}

export interface Drafting {
  /** throws a FieldError with what is allowed */
  readCode(code: string, direction?: DraftSpec['direction']): DraftSpec;
  draft(request: DraftRequest, onFlights: (n: number) => void): DraftRun;
}

export function makeDrafting(pool: Pool = makePagePool()): Drafting {
  return {
    readCode: draftOfCode,
    draft: (request, onFlights) => {
      // a draft has no steps between: its worker is ended at once
      const { done, cancel } = pool.run('draft', request, { onProgress: onFlights, patienceMs: 0 });
      return { done, stop: cancel };
    },
  };
}
