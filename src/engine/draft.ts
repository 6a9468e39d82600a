/** A skill as it was asked for: the draft is made by a worker and can be stopped. */
import { makePagePool } from '../jobs/browser-port.ts';
import type { Drafted, DraftRequest } from '../jobs/kinds/draft-data.ts';
import type { Pool } from '../jobs/pool.ts';

export interface DraftRun {
  /** rejects with the reason, and after a stop */
  readonly done: Promise<Drafted>;
  stop(): void;
}

export interface Drafting {
  draft(request: DraftRequest, onFlights: (n: number) => void): DraftRun;
}

export function makeDrafting(pool: Pool = makePagePool()): Drafting {
  return {
    draft: (request, onFlights) => {
      // a draft has no steps between: its worker is ended at once
      const { done, cancel } = pool.run('draft', request, { onProgress: onFlights, patienceMs: 0 });
      return { done, stop: cancel };
    },
  };
}
