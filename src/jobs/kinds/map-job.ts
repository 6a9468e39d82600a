/** A map in pieces: its rows by number. */
import { type MapRequest, type MapRow, MapRunner } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';

export const mapJob: JobKind<MapRequest, number, never, MapRow> = {
  open: (request) => {
    const runner = new MapRunner(request);
    // biome-ignore lint/correctness/useYield: a row is short
    return function* (row) {
      return runner.row(row);
    };
  },
};
