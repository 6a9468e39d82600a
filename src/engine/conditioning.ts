/** How sensitive a result is, from a worker. A newer question cancels the older one. */
import type { ShapeData } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { JobCall, Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

export interface Sensing {
  /** parts of a sentence; rejects with JobCancelledError where a newer question came */
  ask(result: FlightResult): JobCall<readonly string[]>;
}

export function makeSensing(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): Sensing {
  let last: JobCall<readonly string[]> | undefined;
  return {
    ask: ({ file, athlete }) => {
      last?.cancel();
      last = pool.run('conditioning', { file, athlete, shapes });
      return last;
    },
  };
}
