/** A first draft of a skill from its code: a tenth of a second to several. It reports flights, and has no steps between. */
import { draftOfCode, draftSkill, fileOfDraft, readAthlete, shapeInRadians } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { Drafted, DraftRequest } from './draft-data.ts';

/** Progress is the number of flights flown so far. */
export const draftJob: JobKind<DraftRequest, undefined, number, Drafted> = {
  open: (request) =>
    function* (_, report) {
      const shapes = Object.fromEntries(
        Object.entries(request.shapes).map(([id, shape]) => [id, shapeInRadians(shape)]),
      );
      const draft = draftSkill(draftOfCode(request.code, request.direction), {
        athlete: readAthlete(request.athlete),
        shapes,
        onFlight: report,
      });
      return { file: fileOfDraft(draft, request.ref), falls: draft.falls };
    },
};
