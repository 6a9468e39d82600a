/** A first draft of a skill from its code: a tenth of a second to many. It reports flights, and has no steps between. */
import {
  draftSkill,
  fileBeyondStrength,
  fileOfDraft,
  nearSkills,
  readAthlete,
  readFlownCode,
  shapeInRadians,
} from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { Drafted, DraftRequest } from './draft-data.ts';

/** Progress is the number of flights flown so far. */
export const draftJob: JobKind<DraftRequest, undefined, number, Drafted> = {
  open: ({ spec, athlete, ref, shapes }) =>
    function* (_, report) {
      const result = draftSkill(spec, {
        athlete: readAthlete(athlete),
        shapes: Object.fromEntries(Object.entries(shapes).map(([id, shape]) => [id, shapeInRadians(shape)])),
        readCode: readFlownCode,
        nearby: nearSkills,
        onFlight: report,
      });
      if (result.kind === 'flown') return { kind: 'flown', file: fileOfDraft(result, ref) };
      const { beyond, ...refusal } = result;
      return beyond ? { ...refusal, beyond: { file: fileBeyondStrength(beyond, ref), asks: beyond.asks } } : refusal;
    },
};
