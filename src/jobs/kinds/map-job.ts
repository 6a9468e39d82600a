/** A map in pieces: its rows by number. */
import { contactFor, type MapRequest, type MapRow, MapRunner } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

export const mapJob: JobKind<MapRequest, number, never, MapRow> = {
  open: async (request) => {
    const runner = new MapRunner(request, await loadForJob(() => contactFor(request.spec)));
    // biome-ignore lint/correctness/useYield: a row is short
    return function* (row) {
      return runner.row(row);
    };
  },
};
